import { registerSW } from 'virtual:pwa-register';

export interface OfflineCopy {
  /** True once a newer version waits; it takes over only when the maker says so. */
  readonly newVersion: boolean;
}

type Listener = () => void;

const listeners = new Set<Listener>();
let copy: OfflineCopy = { newVersion: false };
let takeOver: (() => Promise<void>) | null = null;

/** Keeps a copy of the page in the browser, so that it opens without a network. A page without service workers works on. */
export function keepOfflineCopy(): void {
  if (!('serviceWorker' in navigator)) return;
  takeOver = registerSW({
    onNeedRefresh() {
      copy = { newVersion: true };
      listeners.forEach((tell) => tell());
    },
  });
}

export const offlineCopy = (): OfflineCopy => copy;

export function onOfflineCopy(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Loads the newer version; the page reloads by itself then. */
export async function loadNewVersion(): Promise<void> {
  await takeOver?.();
}
