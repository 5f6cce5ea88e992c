/** Voxels of a real mold from what stands over each point of a grid across the pull. */
import type { Vec3 } from '../mesh/types';
import { Problem } from '../problem';
import { halfCode, voxelsAlong, type MoldVoxels } from './moldVoxels';

/** What fills an interval of a column. */
export const columnFill = { negativeStone: 1, positiveStone: 2, laminate: 3 } as const;

/**
 * Columns on a grid of `columns[0]` × `columns[1]` cells; column (i, j) has number i + columns[0] j and stands on the
 * middle of its cell. Its intervals are numbers `start[c]` to `start[c + 1] − 1`, in any order, without overlap; what no
 * interval covers is outside the mold.
 */
export interface MoldColumns {
  readonly columns: readonly [number, number];
  readonly pitchMm: readonly [number, number];
  /** Low corner of the grid and of the box along the pull. */
  readonly originMm: Vec3;
  /** Of the box, along the pull. */
  readonly heightMm: number;
  readonly start: Uint32Array;
  readonly fromMm: Float32Array;
  readonly untilMm: Float32Array;
  readonly fill: Uint8Array;
  /** Real outside area over area of stepped sides, by axis; 1 for a brick. */
  readonly faceAreaFactor?: Vec3;
}

/** Shares of one voxel while columns are gathered. */
interface Shares {
  readonly negative: Float32Array;
  readonly positive: Float32Array;
  readonly laminate: Float32Array;
}

/**
 * `voxelMm` should be no smaller than the pitch of the columns.
 * @throws Problem `cure.columns` when nothing stands in the columns, and `cure.voxels`
 */
export function voxelsFromColumns(mold: MoldColumns, voxelMm: number): MoldVoxels {
  const [across, along] = mold.columns;
  const boxMm: Vec3 = [across * mold.pitchMm[0], along * mold.pitchMm[1], mold.heightMm];
  const { counts, sizeMm } = voxelsAlong(boxMm, voxelMm);
  const [nx, ny, nz] = counts;
  if (nx > across || ny > along)
    throw new Problem(
      'cure.voxels',
      'The voxels are smaller than the pitch of the columns: take larger ones.',
    );
  const total = nx * ny * nz;
  const shares: Shares = {
    negative: new Float32Array(total),
    positive: new Float32Array(total),
    laminate: new Float32Array(total),
  };
  const columnsIn = new Float32Array(nx * ny);
  for (let j = 0; j < along; j++)
    for (let i = 0; i < across; i++) {
      const foot = Math.floor(((i + 0.5) * nx) / across) + nx * Math.floor(((j + 0.5) * ny) / along);
      columnsIn[foot]! += 1;
      gather(mold, i + across * j, shares, foot, nx * ny, nz, sizeMm[2]);
    }
  const half = new Uint8Array(total);
  const laminateShare = new Float32Array(total);
  let filled = 0;
  for (let at = 0; at < total; at++) {
    const perColumn = 1 / columnsIn[at % (nx * ny)]!;
    const negative = shares.negative[at]! * perColumn;
    const positive = shares.positive[at]! * perColumn;
    const laminate = shares.laminate[at]! * perColumn;
    const all = negative + positive + laminate;
    if (all < 0.5) continue;
    filled++;
    half[at] = negative >= positive ? halfCode.negative : halfCode.positive;
    laminateShare[at] = laminate / all;
  }
  if (filled === 0) throw new Problem('cure.columns', 'There is no mold in these columns.');
  const { originMm, faceAreaFactor = [1, 1, 1] } = mold;
  return { nx, ny, nz, sizeMm, originMm, half, laminateShare, faceAreaFactor };
}

/** Adds one column's intervals to the voxels over its foot. */
function gather(
  { start, fromMm, untilMm, fill, originMm }: MoldColumns,
  column: number,
  shares: Shares,
  foot: number,
  layer: number,
  nz: number,
  cellMm: number,
): void {
  for (let one = start[column]!; one < start[column + 1]!; one++) {
    const from = (fromMm[one]! - originMm[2]) / cellMm;
    const until = (untilMm[one]! - originMm[2]) / cellMm;
    const into =
      fill[one] === columnFill.laminate
        ? shares.laminate
        : fill[one] === columnFill.negativeStone
          ? shares.negative
          : shares.positive;
    for (let k = Math.max(0, Math.floor(from)); k < Math.min(nz, Math.ceil(until)); k++)
      into[foot + layer * k]! += Math.max(0, Math.min(until, k + 1) - Math.max(from, k));
  }
}
