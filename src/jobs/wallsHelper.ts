/** The helper worker's entry: measures the slices of slots that the bench worker hands to it. */
import { expose } from 'comlink';
import { buildSurfaceIndex } from '../core/mesh/surfaceIndex';
import type { IndexedMesh } from '../core/mesh/types';
import { WallsBench, type SlotTask, type WallSlice } from '../pipeline/wallsBench';
import { transferred } from './transferred';

let bench: WallsBench | null = null;

const helper = {
  load(mesh: IndexedMesh): void {
    bench = null; // never the part before, if this one can't be taken
    bench = new WallsBench(buildSurfaceIndex(mesh));
  },
  measure(from: number, to: number, task: SlotTask): WallSlice {
    if (bench === null) throw new Error('the walls helper has no part');
    bench.measure(from, to, task);
    return transferred(bench.slice(from, to, task));
  },
};
export type WallsHelperWorker = typeof helper;

expose(helper);
