/** One editor per project across tabs: a named lock that is held while the project is open. */
export type Release = () => void;

export interface LockPort {
  /** False when the browser has no locks: every tab then may edit, and a note says so. */
  readonly available: boolean;
  /** Takes the lock if it is free, else null. */
  tryHold(name: string): Promise<Release | null>;
  /** Resolves once the lock is ours; null when the wait was given up through the signal. */
  waitFor(name: string, signal: AbortSignal): Promise<Release | null>;
}

/** No locks: every request is granted. */
export const noLocks: LockPort = {
  available: false,
  tryHold: () => Promise.resolve(() => {}),
  waitFor: () => Promise.resolve(() => {}),
};

/** Over the browser's lock manager, which frees the locks of a closed or crashed tab by itself. */
export function browserLocks(manager: LockManager | undefined): LockPort {
  if (manager === undefined) return noLocks;
  const request = (name: string, options: LockOptions): Promise<Release | null> =>
    new Promise((resolve, reject) => {
      manager
        .request(name, options, (lock) => {
          if (lock === null) {
            resolve(null);
            return undefined;
          }
          return new Promise<void>((release) => resolve(release));
        })
        .catch((error: unknown) => {
          if (options.signal?.aborted) resolve(null);
          else reject(error instanceof Error ? error : new Error(String(error)));
        });
    });
  return {
    available: true,
    tryHold: (name) => request(name, { ifAvailable: true }),
    waitFor: (name, signal) => request(name, { signal }),
  };
}
