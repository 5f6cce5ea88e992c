import { wrap } from 'comlink';
import type { IndexedMesh } from '../core/mesh/types';
import type { SlotTask, WallSlice } from '../pipeline/wallsBench';
import type { WallsHelperWorker } from './wallsHelper';

/** A second pair of hands for walls and reach. Rejects when it has failed; the caller then does the work itself. */
export interface WallsHelper {
  /** Takes a part, in place of the one before. */
  load(mesh: IndexedMesh): Promise<void>;
  measure(from: number, to: number, task: SlotTask): Promise<WallSlice>;
  /** Gives its memory back; it must not be asked anything more. */
  end(): void;
}

/** The helper in a worker of its own, started from the bench worker and ended with it. */
export function startWallsHelper(): WallsHelper {
  const worker = new Worker(new URL('./wallsHelper.ts', import.meta.url), { type: 'module', name: 'walls' });
  const remote = wrap<WallsHelperWorker>(worker);
  const failed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      reject(new Error(event.message));
    });
  });
  // Handled where it is raced against; unheard when nothing is being asked.
  failed.catch(() => undefined);
  return {
    load: (mesh) => Promise.race([failed, remote.load(mesh)]),
    measure: (from, to, task) => Promise.race([failed, remote.measure(from, to, task)]),
    end: () => worker.terminate(),
  };
}
