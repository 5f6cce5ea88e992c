/** The closed mold as small bricks: which half's stone fills each one, and how much laminate runs through it. */
import type { Vec3 } from '../mesh/types';
import { keepWithin } from '../counts';
import { Problem } from '../problem';

/** What `half` holds. */
export const halfCode = { outside: 0, negative: 1, positive: 2 } as const;

/**
 * Voxel (i, j, k) has index i + nx (j + ny k) in every array. Axes of the pull frame: z runs along the pull, so the
 * negative's stone stands over the laminate and the positive's under it.
 */
export interface MoldVoxels {
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
  /** Edges of one voxel; they need not be equal, so that the outside of the mold is met exactly. */
  readonly sizeMm: Vec3;
  /** Low corner of voxel (0, 0, 0). */
  readonly originMm: Vec3;
  /** One of `halfCode`: whose stone fills what the laminate leaves; outside holds nothing. */
  readonly half: Uint8Array;
  /** Share of what fills the voxel that is laminate, 0 to 1. */
  readonly laminateShare: Float32Array;
  /** Volume that fills the voxel over its own: 1 but at the edge of a mold that is no brick. */
  readonly filledShare: Float32Array;
  /** Real outside area over that of the voxel faces, by the axis the faces are normal to; 1 for a brick-shaped mold. */
  readonly faceAreaFactor: Vec3;
}

/** Under this share a voxel only grazes the laminate: a tenth of a millimeter in the widest voxels still counts. */
export const leastLaminateShare = 0.002;

export const voxelCount = ({ nx, ny, nz }: MoldVoxels): number => nx * ny * nz;

/**
 * How many voxels of about `voxelMm` a box takes along each axis, and their edges.
 * @throws Problem `cure.voxels`
 */
export function voxelsAlong(boxMm: Vec3, voxelMm: number): { readonly counts: Vec3; readonly sizeMm: Vec3 } {
  if (!boxMm.every((mm) => mm > 0 && Number.isFinite(mm)) || !(voxelMm > 0))
    throw new Problem('cure.voxels', 'The mold and its voxels need sizes above zero.');
  const counts = boxMm.map((mm) => Math.max(1, Math.round(mm / voxelMm))) as unknown as Vec3;
  keepWithin(
    'voxels',
    counts[0] * counts[1] * counts[2],
    'cure.voxels',
    `Voxels of ${voxelMm} mm are too many for a mold of ${boxMm.map((mm) => mm.toFixed(0)).join(' × ')} mm: take larger ones, or check the unit of the file.`,
  );
  return { counts, sizeMm: [boxMm[0] / counts[0], boxMm[1] / counts[1], boxMm[2] / counts[2]] };
}

/** A flat laminate in the middle of a block of stone. */
export interface BlockMold {
  /** Outside of the closed mold, z along the pull. */
  readonly blockMm: Vec3;
  /** Length, width and thickness of the laminate. */
  readonly laminateMm: Vec3;
  /** Wanted edge of a voxel. */
  readonly voxelMm: number;
}

/** The block round a flat part with this much stone on every side of it. */
export function blockRound(partMm: Vec3, coverMm: number): Vec3 {
  return [partMm[0] + 2 * coverMm, partMm[1] + 2 * coverMm, partMm[2] + 2 * coverMm];
}

/** @throws Problem `cure.voxels` */
export function boxMoldVoxels({ blockMm, laminateMm, voxelMm }: BlockMold): MoldVoxels {
  if (laminateMm.some((mm, axis) => !(mm >= 0 && mm <= blockMm[axis]!)))
    throw new Problem('cure.voxels', 'The laminate does not fit into the block of stone.');
  const { counts, sizeMm } = voxelsAlong(blockMm, voxelMm);
  const [nx, ny, nz] = counts;
  const covered = counts.map((count, axis) =>
    sharesWithin(count, sizeMm[axis]!, blockMm[axis]! / 2, laminateMm[axis]! / 2),
  );
  const half = new Uint8Array(nx * ny * nz);
  const laminateShare = new Float32Array(nx * ny * nz);
  for (let k = 0; k < nz; k++)
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++) {
        const at = i + nx * (j + ny * k);
        half[at] = 2 * k + 1 >= nz ? halfCode.negative : halfCode.positive;
        laminateShare[at] = covered[0]![i]! * covered[1]![j]! * covered[2]![k]!;
      }
  const filledShare = new Float32Array(half.length).fill(1);
  return {
    nx,
    ny,
    nz,
    sizeMm,
    originMm: [0, 0, 0],
    half,
    laminateShare,
    filledShare,
    faceAreaFactor: [1, 1, 1],
  };
}

/** Share of each of `count` cells that lies within `reachMm` of `middleMm`. */
function sharesWithin(count: number, cellMm: number, middleMm: number, reachMm: number): number[] {
  return Array.from({ length: count }, (_, i) => {
    const from = Math.max(i * cellMm, middleMm - reachMm);
    const until = Math.min((i + 1) * cellMm, middleMm + reachMm);
    return Math.max(0, until - from) / cellMm;
  });
}
