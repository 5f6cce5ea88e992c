/**
 * The work of a step that goes through every voxel: heat capacities, the turning of gypsum, conduction, and what the rise
 * does to the voxel. What it is and the numbers of its law; kernel/ does it.
 */
import type { AdiSystem } from './adiSystem';
import { boilingC, evaporationJPerKg } from './waterVapor';

/** A boiling voxel takes up heat as if it were this many times heavier; what it took then leaves as steam. */
export const boilingCapacity = 1e4;
export const boilingJPerKg = evaporationJPerKg(boilingC);
/** A voxel this warm counts as boiling, °C. */
export const boilsFromC = boilingC - 1e-3;
/** A boiling voxel that stops in a step may end by so much under 100 °C, K: it gave off heat as if it were held there. */
export const mostFallK = 2;

/** What the work reads and changes, one number per voxel. */
export interface VoxelArrays {
  readonly temperatureC: Float64Array;
  /** In the step before, K/s. */
  readonly risePerS: Float32Array;
  /** Free water, kg. */
  readonly heldKg: Float64Array;
  /** Without its free water, J/K. */
  readonly dryCapacityJPerK: Float64Array;
  /** Heat of turning all of the voxel's gypsum back to plaster, J; 0 where there is none. */
  readonly dehydrationJ: Float64Array;
  /** Share of it that has turned, 0 to 1. */
  readonly turnedShare: Float64Array;
  /** Scratch of the step: share that turns, and how much more for each kelvin. */
  readonly turnBase: Float64Array;
  readonly turnPerK: Float64Array;
  /** Highest temperature so far. */
  readonly peakC: Float32Array;
  readonly system: AdiSystem;
}

export interface VoxelStep {
  readonly stepS: number;
  /** Heat of the water held now, J/(kg K), less what will have left by the middle of the step. */
  readonly waterJPerKgK: number;
  readonly wet: boolean;
}

/** What a step did to all voxels together. */
export interface VoxelsTaken {
  readonly storedJ: number;
  readonly dehydratedJ: number;
  readonly boiledKg: number;
}

export interface VoxelWork {
  /** Fills `system.mass` and `system.source`, turning gypsum included. */
  prepare(step: VoxelStep): void;
  /** Fills `system.rise`. */
  conduct(): void;
  /** By how much the rise differs from a plain going-on of the step before, K. */
  surpriseK(stepS: number): number;
  /**
   * Whether a boiling voxel would end where nothing drives it: boiled dry by more than `besidesK` over `airC` and every
   * voxel's temperature before, or by more than `mostFallK` under 100 °C.
   */
  leapsPast(airC: number, besidesK: number): boolean;
  /** Takes the step; `system.rise` is then what each voxel really rose. */
  take(step: VoxelStep): VoxelsTaken;
}
