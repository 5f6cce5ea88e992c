/** Where in the laminate a thermocouple sits, and which place of a prediction stands for it. */
import type { IndexedMesh, Vec3 } from '../mesh/types';
import { intoFrame, pullFrame } from '../stone/pours/pullFrame';
import { extremePlaces, type LaminateRecord } from './laminateRecord';
import type { MoldVoxels } from './moldVoxels';

export type LaminatePlace =
  | { readonly kind: 'coldest' }
  | { readonly kind: 'hottest' }
  /** On the laminate that lies highest along the pull, in the middle of its plan. */
  | { readonly kind: 'show middle' }
  | { readonly kind: 'point'; readonly atMm: Vec3 };

/** Further than this from all laminate a point was meant for something else, mm. */
export const mostPlaceOffMm = 6;

/** A point of the part's own axes, where the mold has it. */
export function placeInPullFrame(mesh: IndexedMesh, pull: Vec3, place: LaminatePlace): LaminatePlace {
  if (place.kind !== 'point') return place;
  const [x, y, z] = intoFrame(pullFrame(mesh, pull), Float64Array.from(place.atMm));
  return { kind: 'point', atMm: [x!, y!, z!] };
}

/** Middle of a voxel, pull frame. */
export function voxelMiddleMm({ nx, ny, sizeMm, originMm }: MoldVoxels, voxel: number): Vec3 {
  const [i, j, k] = [voxel % nx, Math.floor(voxel / nx) % ny, Math.floor(voxel / (nx * ny))];
  return [
    originMm[0] + (i + 0.5) * sizeMm[0],
    originMm[1] + (j + 0.5) * sizeMm[1],
    originMm[2] + (k + 0.5) * sizeMm[2],
  ];
}

export interface PlaceFound {
  /** Index into the laminate record. */
  readonly place: number;
  /** From a given point to the nearest laminate; 0 inside its voxel and for every other kind of place. */
  readonly offMm: number;
}

/** @param place a point in the pull frame */
export function findPlace(voxels: MoldVoxels, record: LaminateRecord, place: LaminatePlace): PlaceFound {
  if (place.kind === 'coldest' || place.kind === 'hottest')
    return { place: extremePlaces(record)[place.kind], offMm: 0 };
  const middles = Array.from(record.voxels, (voxel) => voxelMiddleMm(voxels, voxel));
  if (place.kind === 'show middle') return { place: middleOfShow(middles), offMm: 0 };
  const [found, offMm] = nearest(middles, ([x, y, z]) =>
    Math.hypot(
      ...[x, y, z].map((mm, axis) =>
        Math.max(0, Math.abs(mm - place.atMm[axis]!) - voxels.sizeMm[axis]! / 2),
      ),
    ),
  );
  return { place: found, offMm };
}

function middleOfShow(middles: readonly Vec3[]): number {
  const mean = (axis: 0 | 1) => middles.reduce((sum, middle) => sum + middle[axis], 0) / middles.length;
  const [x, y] = [mean(0), mean(1)];
  const [, offMm] = nearest(middles, (at) => Math.hypot(at[0] - x, at[1] - y));
  const closeEnoughMm = 1e-6;
  return nearest(middles, (at) =>
    Math.hypot(at[0] - x, at[1] - y) <= offMm + closeEnoughMm ? -at[2] : Infinity,
  )[0];
}

function nearest(middles: readonly Vec3[], distance: (middle: Vec3) => number): [number, number] {
  let [found, least] = [0, Infinity];
  middles.forEach((middle, at) => {
    const far = distance(middle);
    if (far < least) [found, least] = [at, far];
  });
  return [found, least];
}
