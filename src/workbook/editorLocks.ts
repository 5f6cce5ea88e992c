/** Which projects this tab may edit: it holds one lock per project that is open here or still has unsaved changes. */
import { editorLockName } from './keys';
import type { LockPort, Release } from './lockPort';

export function createEditorLocks(port: LockPort) {
  const held = new Map<string, Release>();
  let wait: AbortController | null = null;

  /** Asked for and not answered yet: a second request of this tab must not be refused by its own first one. */
  const asked = new Map<string, Promise<boolean>>();

  /** True when this tab is now the editor of the project. */
  async function take(id: string): Promise<boolean> {
    if (held.has(id)) return true;
    const earlier = asked.get(id);
    if (earlier !== undefined) return earlier;
    const request = ask(id).finally(() => asked.delete(id));
    asked.set(id, request);
    return request;
  }

  async function ask(id: string): Promise<boolean> {
    const release = await port.tryHold(editorLockName(id));
    if (release === null) return false;
    held.set(id, release);
    return true;
  }

  function letGo(id: string): void {
    held.get(id)?.();
    held.delete(id);
  }

  function stopWaiting(): void {
    wait?.abort();
    wait = null;
  }

  return {
    available: port.available,
    take,
    letGo,
    stopWaiting,

    /** Calls back once the other tab lets go; at most one project is waited for. */
    async takeOver(id: string, onTaken: () => void): Promise<void> {
      stopWaiting();
      const waiting = new AbortController();
      wait = waiting;
      const release = await port.waitFor(editorLockName(id), waiting.signal);
      if (release === null) return;
      if (waiting.signal.aborted) {
        release();
        return;
      }
      held.set(id, release);
      onTaken();
    },

    /** Lets go of every project that `isNeeded` does not name. */
    releaseIdle(isNeeded: (id: string) => boolean): void {
      for (const id of held.keys()) if (!isNeeded(id)) letGo(id);
    },

    /** Runs an action on a project that may be open in another tab; null when it is. */
    async during<Result>(id: string, action: () => Result): Promise<Result | null> {
      const mine = held.has(id);
      if (!(await take(id))) return null;
      try {
        return action();
      } finally {
        if (!mine) letGo(id);
      }
    },
  };
}
