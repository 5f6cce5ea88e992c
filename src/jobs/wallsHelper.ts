/** The helper worker's entry: measures the slices that the bench worker hands to it. */
import { expose } from 'comlink';
import { transferred } from './transferred';
import { findHealth } from '../core/mesh/health';
import type { KernelPiece } from '../core/mesh/kernel/wallKernel';
import { surfaceFromData, type SurfaceData } from '../core/mesh/surfaceIndex';
import type { IndexedMesh, MeshHealth, Vec3 } from '../core/mesh/types';
import { WallsBench, type WallSlice } from './wallsBench';

let loaded: { readonly part: number; readonly bench: WallsBench } | null = null;

function benchOf(part: number): WallsBench {
  if (loaded?.part !== part) throw new Error('the walls helper was asked of a part that it does not have');
  return loaded.bench;
}

const helper = {
  findHealth(mesh: IndexedMesh): MeshHealth {
    return transferred(findHealth(mesh));
  },
  load(part: number, data: SurfaceData): void {
    loaded = null; // never the part before, if this one can't be taken
    loaded = { part, bench: new WallsBench(surfaceFromData(data)) };
  },
  /** Gives the array back, for the next piece. */
  take(part: number, piece: KernelPiece, bytes: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
    benchOf(part).index.kernel.take(piece, bytes);
    return transferred(bytes);
  },
  measure(part: number, from: number, to: number, pull: Vec3, withWalls: boolean): WallSlice {
    const bench = benchOf(part);
    bench.measure(from, to, pull, withWalls);
    return transferred(bench.slice(from, to, withWalls));
  },
};
export type WallsHelperWorker = typeof helper;

expose(helper);
