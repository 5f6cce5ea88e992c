/** The last delete of this tab, kept in memory so that it can be undone. */
import type { Records, StoredTexts } from './records';
import type { ListedProject } from './state';
import type { Project } from './project';

export interface Deleted {
  readonly listed: ListedProject;
  /** The newest version; null for one that cannot be read (damaged, or saved by a newer app). */
  readonly project: Project | null;
  readonly texts: StoredTexts;
}

/** Takes a project out of storage. */
export function takeOutProject(
  records: Records,
  listed: ListedProject,
  waiting: Project | undefined,
): Deleted {
  const loaded = waiting === undefined && listed.condition === 'ok' ? records.read(listed.id) : null;
  const read = loaded !== null && 'project' in loaded ? loaded.project : null;
  return { listed, project: waiting ?? read, texts: records.takeOut(listed.id) };
}
