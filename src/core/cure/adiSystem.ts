/** What a step of conduction is worked out from, flat arrays of one number per voxel; kernel/ takes the step. */
import type { Conductances } from './conductionGrid';
import type { HeatRoom } from './heatRoom';
import { voxelCount, type MoldVoxels } from './moldVoxels';

export interface AdiSystem {
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
  readonly conductances: Conductances;
  /** Half of what a face takes less per kelvin that its voxel is warmer, W/K, by the axis of the face. */
  readonly filmX: Float32Array;
  readonly filmY: Float32Array;
  readonly filmZ: Float32Array;
  /** Heat capacity over the step, W/K; above zero everywhere. */
  readonly mass: Float64Array;
  /** Heat set free in the voxel or brought through its open faces at the temperature before the step, W. */
  readonly source: Float64Array;
  /** Result: rise over the step, K. */
  readonly rise: Float64Array;
  /** Scratch of the eliminations. */
  readonly scratch: Float64Array;
}

/** Arrays for the steps of one mold, all zero but `mass`. */
export function adiWorkspace(voxels: MoldVoxels, conductances: Conductances, room: HeatRoom): AdiSystem {
  const { nx, ny, nz } = voxels;
  const count = voxelCount(voxels);
  return {
    nx,
    ny,
    nz,
    conductances,
    filmX: room.float32(count),
    filmY: room.float32(count),
    filmZ: room.float32(count),
    mass: room.float64(count).fill(1),
    source: room.float64(count),
    rise: room.float64(count),
    scratch: room.float64(count),
  };
}
