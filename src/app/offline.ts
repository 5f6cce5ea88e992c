/** The copy of the page in the browser, and the newer version that may wait behind it. */
export interface OfflineCopy {
  /** True once a newer version waits; this tab takes it only when the maker says so here. */
  readonly newVersion: boolean;
}

type Listener = () => void;

const listeners = new Set<Listener>();
let copy: OfflineCopy = { newVersion: false };
let registration: ServiceWorkerRegistration | null = null;

function tellNewVersion(): void {
  copy = { newVersion: true };
  listeners.forEach((tell) => tell());
}

/** Keeps a copy of the page in the browser, so that it opens without a network. A page without service workers works on. */
export async function keepOfflineCopy(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  // The very first version waits for nobody and is no news.
  if (serviceWorker.controller !== null) serviceWorker.addEventListener('controllerchange', tellNewVersion);
  const kept = await serviceWorker.register('./sw.js').catch(() => null);
  if (kept === null) return;
  registration = kept;
  if (kept.waiting !== null) tellNewVersion();
  kept.addEventListener('updatefound', () => {
    const coming = kept.installing;
    coming?.addEventListener('statechange', () => {
      if (coming.state === 'installed' && kept.active !== null) tellNewVersion();
    });
  });
}

export const offlineCopy = (): OfflineCopy => copy;

export function onOfflineCopy(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Loads the newer version in this tab; the others go on with theirs and keep saying that a newer one waits. */
export function loadNewVersion(): void {
  const waiting = registration?.waiting ?? null;
  if (waiting === null) {
    // Another tab has loaded it already.
    window.location.reload();
    return;
  }
  waiting.addEventListener('statechange', () => {
    if (waiting.state === 'activated') window.location.reload();
  });
  waiting.postMessage({ type: 'SKIP_WAITING' }, []);
}
