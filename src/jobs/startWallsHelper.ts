import { wrap, type Remote } from 'comlink';
import { bytesPerPiece } from '../core/mesh/kernel/wallKernel';
import { surfaceData, type SurfaceIndex } from '../core/mesh/surfaceIndex';
import type { IndexedMesh, MeshHealth, Vec3 } from '../core/mesh/types';
import type { WallSlice } from './wallsBench';
import { transferred } from './transferred';
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

/** Pieces on their way at a time: enough that a kernel of 300,000 facets goes in one go. */
const carrierCount = 18;

/**
 * Pieces travel in the same few arrays to and fro. With an array for each the whole of a large kernel would be there once
 * more: they lie about until the collector comes by, which large arrays don't hurry. Resolves when all is on its way; the
 * helper takes it before whatever it is asked next.
 */
async function handOver(remote: Remote<WallsHelperWorker>, part: number, index: SurfaceIndex): Promise<void> {
  const { kernel } = index;
  const load = remote.load(part, transferred(surfaceData(index)));
  if (kernel === null) return load;
  load.catch(() => undefined); // it is asked for pieces and walls in vain, then
  let next = 0;
  const carry = async () => {
    let carrier = Promise.resolve(new Uint8Array(bytesPerPiece));
    for (let piece = kernel.pieces[next++]; piece !== undefined; piece = kernel.pieces[next++]) {
      const bytes = await carrier;
      kernel.give(piece, bytes);
      carrier = remote.take(part, piece, transferred(bytes));
      carrier.catch(() => undefined);
    }
  };
  await Promise.all(Array.from({ length: carrierCount }, carry));
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
