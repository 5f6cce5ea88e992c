import { wrap } from 'comlink';
import type { SurfaceIndex } from '../core/mesh/surfaceIndex';
import type { IndexedMesh, MeshHealth, Vec3 } from '../core/mesh/types';
import { handOver } from './handOver';
import type { WallSlice } from './wallsBench';
import type { WallsHelperWorker } from './wallsHelper';

/** A second pair of hands for health, walls and reach. Rejects when it has failed; the caller then does the work itself. */
export interface WallsHelper {
  findHealth(mesh: IndexedMesh): Promise<MeshHealth>;
  /** Takes a part under a number; it holds one part at a time. Resolves when it may be asked of it. */
  load(part: number, index: SurfaceIndex): Promise<void>;
  /** Rejects when that part is not the one it holds. */
  measure(part: number, from: number, to: number, pull: Vec3, withWalls: boolean): Promise<WallSlice>;
  /** Gives its memory back; it must not be asked anything more. */
  end(): void;
}

/** The helper in a worker of its own, started from the bench worker and ended with it. */
export function startWallsHelper(onEnd: () => void): WallsHelper {
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
    findHealth: (mesh) => Promise.race([failed, remote.findHealth(mesh)]),
    load: (part, index) => Promise.race([failed, handOver(remote, part, index)]),
    measure: (part, from, to, pull, withWalls) =>
      Promise.race([failed, remote.measure(part, from, to, pull, withWalls)]),
    end() {
      worker.terminate();
      onEnd();
    },
  };
}
