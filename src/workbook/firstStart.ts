/** The demo: put in once, on the very first start, and again whenever the maker asks for it. */
import type { WorkbookCore } from './core';
import { startedKey, startLockName } from './keys';
import { refused } from './outcome';
import { addSeed } from './projectList';
import type { Workbook } from './workbookApi';

export function createFirstStart(core: WorkbookCore): Pick<Workbook, 'start' | 'restoreDemo'> {
  const { storage, store, ports } = core;

  const restoreDemo: Workbook['restoreDemo'] = async () => {
    try {
      const seeds = await ports.demoSeeds();
      return { done: true, ids: seeds.map((seed) => addSeed(core, seed)) };
    } catch (error) {
      const what = error instanceof Error ? error.message : String(error);
      return refused(`The demo could not be made: ${what}`);
    }
  };

  return {
    restoreDemo,

    async start() {
      if (storage.getItem(startedKey) !== null) return [];
      const release = await ports.locks.tryHold(startLockName);
      // Another tab is at its first start and puts the demo in.
      if (release === null) return [];
      let seeded: readonly string[] = [];
      try {
        if (storage.getItem(startedKey) !== null) return [];
        if (store.getState().projects.length === 0) {
          const restored = await restoreDemo();
          if (!restored.done) {
            core.addNote(restored.reason);
            return [];
          }
          seeded = restored.ids;
        }
        storage.setItem(startedKey, core.now());
      } catch {
        core.addNote('The browser had no room to note the first start: the demo may come back next time.');
      } finally {
        release();
      }
      return seeded;
    },
  };
}
