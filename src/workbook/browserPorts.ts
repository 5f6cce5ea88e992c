/** The workbook's ports over the real browser. */
import { missingPartWords } from '../core/missingPart';
import { Problem } from '../core/problem';
import { browserLocks } from './lockPort';
import { browserStorage } from './storagePort';
import type { WorkbookPorts } from './workbookApi';

/** Random enough never to meet another; `randomUUID` is missing on pages that are not served securely. */
export function newId(source: Crypto): string {
  if (typeof source.randomUUID === 'function') return source.randomUUID();
  const bytes = source.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

function listen(target: EventTarget, type: string, listener: (event: Event) => void): () => void {
  target.addEventListener(type, listener);
  return () => target.removeEventListener(type, listener);
}

/** @throws Problem `app.missingPart` */
async function loadDemoSeeds() {
  try {
    return await import('./demoSeeds');
  } catch {
    throw new Problem('app.missingPart', missingPartWords);
  }
}

export function browserPorts(): WorkbookPorts {
  return {
    storage: browserStorage(() => window.localStorage),
    locks: browserLocks('locks' in navigator ? navigator.locks : undefined),
    nowMs: () => Date.now(),
    pageMs: () => performance.now(),
    newId: () => newId(crypto),
    // Its meshes and the codec are fetched only when the demo is put in.
    demoSeeds: async () => (await loadDemoSeeds()).demoSeeds(),
    onHidden: (listener) => {
      // A page that is put away on a phone gets only the first, a closed tab sometimes only the second.
      const stops = [
        listen(document, 'visibilitychange', () => {
          if (document.visibilityState === 'hidden') listener();
        }),
        listen(window, 'pagehide', listener),
      ];
      return () => stops.forEach((stop) => stop());
    },
    onOtherTabWrote: (listener) =>
      listen(window, 'storage', (event) => {
        if (event instanceof StorageEvent && event.storageArea !== window.sessionStorage) listener(event.key);
      }),
  };
}
