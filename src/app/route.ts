/** Where the reader is: `#/` is the list of projects, `#/shelf` what the shop has, `#/p/<project id>/<step id>` one sheet of a project. */
import { useSyncExternalStore } from 'react';

export type Route =
  | { readonly page: 'projects' }
  | { readonly page: 'shelf' }
  | { readonly page: 'project'; readonly projectId: string; readonly stepId: string | null };

/** The text as it stands where its percent signs encode nothing: a link may come torn, and must still lead somewhere. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** Takes any text; what names no project is the list. Whether there is such a project or step is for the page to say. */
export function parseRoute(hash: string): Route {
  const [kind, projectId, stepId] = hash.replace(/^#\/?/u, '').split('/').map(decoded);
  if (kind === 'shelf') return { page: 'shelf' };
  if (kind !== 'p' || !projectId) return { page: 'projects' };
  return { page: 'project', projectId, stepId: stepId || null };
}

export const projectsHref = '#/';
export const shelfHref = '#/shelf';

export function projectHref(projectId: string, stepId = ''): string {
  return `#/p/${encodeURIComponent(projectId)}/${stepId}`;
}

function onHashChange(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

export function useRoute(): Route {
  return parseRoute(useSyncExternalStore(onHashChange, () => window.location.hash));
}

export function goTo(href: string): void {
  window.location.hash = href;
}
