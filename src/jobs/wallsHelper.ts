/** The helper worker's entry: measures the slices that the bench worker hands to it. */
import { expose } from 'comlink';
import { transferred } from './transferred';
import { findHealth } from '../core/mesh/health';
import type { IndexedMesh, MeshHealth, Vec3 } from '../core/mesh/types';
import { WallsBench, type WallSlice } from './wallsBench';

let bench: WallsBench | null = null;

const helper = {
  findHealth(mesh: IndexedMesh): MeshHealth {
    return transferred(findHealth(mesh));
  },
  load(mesh: IndexedMesh): void {
    bench = null; // never the part before, if this one can't be taken
    bench = new WallsBench(mesh);
  },
  measure(from: number, to: number, pull: Vec3, withWalls: boolean): WallSlice {
    if (bench === null) throw new Error('the walls helper was asked before it had a part');
    bench.measure(from, to, pull, withWalls);
    return transferred(bench.slice(from, to, withWalls));
  },
};
export type WallsHelperWorker = typeof helper;

expose(helper);
