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
  for (const share of [shares.negative, shares.positive, shares.laminate])
    for (let at = 0; at < total; at++) share[at]! /= columnsIn[at % (nx * ny)]!;
  handInward(shares, counts);
  const half = new Uint8Array(total);
  const laminateShare = new Float32Array(total);
  const filledShare = new Float32Array(total).fill(1);
  let filled = 0;
  for (let at = 0; at < total; at++) {
    const all = filledOf(shares, at);
    if (all === 0) continue;
    filled++;
    half[at] = shares.negative[at]! >= shares.positive[at]! ? halfCode.negative : halfCode.positive;
    laminateShare[at] = shares.laminate[at]! / all;
    filledShare[at] = all;
  }
  if (filled === 0) throw new Problem('cure.columns', 'There is no mold in these columns.');
  const { originMm, faceAreaFactor = [1, 1, 1] } = mold;
  return { nx, ny, nz, sizeMm, originMm, half, laminateShare, filledShare, faceAreaFactor };
}

/** A voxel filled to less than this is outside. */
const leastFilled = 0.5;

const filledOf = ({ negative, positive, laminate }: Shares, at: number): number =>
  negative[at]! + positive[at]! + laminate[at]!;

/** Of the way from the middle to the edge, signed. */
const offMiddle = (place: number, middle: number): number => (middle === 0 ? 0 : (place - middle) / middle);

/**
 * What voxels on the mold's edge hold that are less than half filled goes to the next one toward the middle of the plan, so
 * that no stone is lost and none is added. From the outermost inward: slivers add up until they fill a voxel.
 */
function handInward(shares: Shares, [nx, ny, nz]: Vec3): void {
  const layer = nx * ny;
  const [middleX, middleY] = [(nx - 1) / 2, (ny - 1) / 2];
  const plan = Array.from({ length: layer }, (_, foot) => {
    const [x, y] = [offMiddle(foot % nx, middleX), offMiddle(Math.floor(foot / nx), middleY)];
    const inward = Math.abs(x) >= Math.abs(y) ? -Math.sign(x) : -nx * Math.sign(y);
    return { foot, inward, away: x * x + y * y };
  }).toSorted((a, b) => b.away - a.away);
  for (const { foot, inward } of plan)
    for (let at = foot; at < layer * nz; at += layer) {
      if (filledOf(shares, at) >= leastFilled) continue;
      for (const share of [shares.negative, shares.positive, shares.laminate]) {
        if (inward !== 0) share[at + inward]! += share[at]!;
        share[at] = 0;
      }
    }
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
