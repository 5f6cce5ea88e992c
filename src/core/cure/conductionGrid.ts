/** Conductances between neighboring voxels, and the faces that look into the oven. */
import type { HeatRoom } from './heatRoom';
import type { LaminateHeat, StoneHeat } from './moldMaterials';
import { halfCode, voxelCount, type MoldVoxels } from './moldVoxels';
import type { FaceSide } from './surfaceChoices';

/** Half the conductance, W/K, from each voxel to its next one along x, y and z; 0 where there is none. */
export interface Conductances {
  readonly halfX: Float32Array;
  readonly halfY: Float32Array;
  readonly halfZ: Float32Array;
}

export function emptyConductances(voxels: MoldVoxels, room: HeatRoom): Conductances {
  const count = voxelCount(voxels);
  return { halfX: room.float32(count), halfY: room.float32(count), halfZ: room.float32(count) };
}

/** Conductivity of one voxel, W/(m K): by volume, the stone between dry and wet by the free water it still holds. */
export function conductivityOf(
  laminateShare: number,
  wetShare: number,
  stone: StoneHeat,
  laminate: LaminateHeat,
): number {
  const stoneW =
    stone.dryConductivityWPerMK + wetShare * (stone.wetConductivityWPerMK - stone.dryConductivityWPerMK);
  return laminateShare * laminate.conductivityWPerMK + (1 - laminateShare) * stoneW;
}

/** Fills `into` from the conductivity of each voxel: two half voxels in series, so the flux across a face is one flux. */
export function fillConductances(
  { nx, ny, nz, sizeMm, half }: MoldVoxels,
  conductivity: Float32Array,
  into: Conductances,
): void {
  const [dx, dy, dz] = sizeMm.map((mm) => mm / 1000) as [number, number, number];
  const join = (at: number, stride: number, isLast: boolean, areaOverLengthM: number): number => {
    if (isLast || half[at] === halfCode.outside || half[at + stride] === halfCode.outside) return 0;
    const one = conductivity[at]!;
    const other = conductivity[at + stride]!;
    return (areaOverLengthM * one * other) / (one + other);
  };
  const [alongX, alongY, alongZ] = [(dy * dz) / dx, (dx * dz) / dy, (dx * dy) / dz];
  let at = 0;
  for (let k = 0; k < nz; k++)
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++, at++) {
        into.halfX[at] = join(at, 1, i + 1 === nx, alongX);
        into.halfY[at] = join(at, nx, j + 1 === ny, alongY);
        into.halfZ[at] = join(at, nx * ny, k + 1 === nz, alongZ);
      }
}

/** `side` of each face as a number. A face along the pull that is not on the block's end is a step of a side that leans. */
export const faceSides: readonly FaceSide[] = ['low z', 'high z', 'sides'];

/** Faces of the mold that look outside. */
export interface OpenFaces {
  readonly cell: Int32Array;
  /** 0, 1, 2: the axis a face is normal to. */
  readonly axis: Uint8Array;
  /** Index into `faceSides`. */
  readonly side: Uint8Array;
  readonly areaM2: Float64Array;
  /** From the middle of the voxel to its face, m, by axis. */
  readonly depthM: readonly [number, number, number];
}

export function openFaces({ nx, ny, nz, sizeMm, half, faceAreaFactor }: MoldVoxels): OpenFaces {
  const [dx, dy, dz] = sizeMm.map((mm) => mm / 1000) as [number, number, number];
  const area = [dy * dz * faceAreaFactor[0], dx * dz * faceAreaFactor[1], dx * dy * faceAreaFactor[2]];
  const counts = [nx, ny, nz];
  const strides = [1, nx, nx * ny];
  const cell: number[] = [];
  const axisOf: number[] = [];
  const side: number[] = [];
  const areaM2: number[] = [];
  for (let at = 0; at < half.length; at++) {
    if (half[at] === halfCode.outside) continue;
    for (let axis = 0; axis < 3; axis++) {
      const stride = strides[axis]!;
      const place = Math.floor(at / stride) % counts[axis]!;
      for (const high of [false, true]) {
        const atEdge = high ? place === counts[axis]! - 1 : place === 0;
        if (!atEdge && half[high ? at + stride : at - stride] !== halfCode.outside) continue;
        cell.push(at);
        axisOf.push(axis);
        side.push(axis < 2 || !atEdge ? 2 : high ? 1 : 0);
        areaM2.push(area[axis]!);
      }
    }
  }
  return {
    cell: Int32Array.from(cell),
    axis: Uint8Array.from(axisOf),
    side: Uint8Array.from(side),
    areaM2: Float64Array.from(areaM2),
    depthM: [dx / 2, dy / 2, dz / 2],
  };
}
