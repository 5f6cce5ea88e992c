/** The mold during a run: what each voxel is, what it holds, and how warm it stands. Arrays of one number per voxel. */
import { adiWorkspace, type AdiSystem } from './adiStep';
import { conductivityOf, emptyConductances, fillConductances, openFaces } from './conductionGrid';
import { dehydrationJPerKg } from './dehydration';
import type { HeatCase } from './heatCase';
import { waterHeatJPerKgK } from './moldMaterials';
import { halfCode, leastLaminateShare, voxelCount } from './moldVoxels';
import { surfaceExchange, type SurfaceExchange } from './surfaceExchange';

export interface HeatState {
  readonly temperatureC: Float64Array;
  /** In the step before, K/s. */
  readonly risePerS: Float32Array;
  /** Free water, kg. */
  readonly heldKg: Float64Array;
  /** Free water that the mix leaves, kg: what `heldKg` is measured against. */
  readonly fullKg: Float32Array;
  /** Without its free water, J/K. */
  readonly dryCapacityJPerK: Float64Array;
  /** Heat of turning all of the voxel's gypsum back to plaster, J; 0 where there is none. */
  readonly dehydrationJ: Float64Array;
  /** Share of it that has turned, 0 to 1. */
  readonly turnedShare: Float64Array;
  /** Scratch of the step: share that turns, and how much more for each kelvin. */
  readonly turnBase: Float64Array;
  readonly turnPerK: Float64Array;
  /** Share of its free water that the mold dried off per second in the last step. */
  dryingPerS: number;
  /** Whether any voxel boiled in the last step taken. */
  boiling: boolean;
  /** Highest temperature so far. */
  readonly peakC: Float32Array;
  readonly conductivityWPerMK: Float32Array;
  /** Voxels that count as places of the laminate. */
  readonly laminateVoxels: Uint32Array;
  /** Resin in them, g. */
  readonly resinG: Float64Array;
  readonly degreeOfCure: Float64Array;
  readonly system: AdiSystem;
  readonly exchange: SurfaceExchange;
}

export function heatState(one: HeatCase): HeatState {
  const { voxels, stone, laminate, water } = one;
  const { half, laminateShare, filledShare, sizeMm } = voxels;
  const count = voxelCount(voxels);
  const voxelM3 = sizeMm[0] * sizeMm[1] * sizeMm[2] * 1e-9;
  const state: HeatState = {
    temperatureC: new Float64Array(count).fill(one.startC),
    risePerS: new Float32Array(count),
    heldKg: new Float64Array(count),
    fullKg: new Float32Array(count),
    dryCapacityJPerK: new Float64Array(count).fill(1),
    dehydrationJ: new Float64Array(count),
    turnedShare: new Float64Array(count),
    turnBase: new Float64Array(count),
    turnPerK: new Float64Array(count),
    dryingPerS: 0,
    boiling: false,
    peakC: new Float32Array(count).fill(one.startC),
    conductivityWPerMK: new Float32Array(count).fill(1),
    laminateVoxels: Uint32Array.from(placesOfLaminate(half, laminateShare)),
    resinG: new Float64Array(0),
    degreeOfCure: new Float64Array(0),
    system: adiWorkspace(voxels, emptyConductances(voxels)),
    exchange: surfaceExchange(openFaces(voxels), one.surface, one.startC),
  };
  for (let at = 0; at < count; at++) {
    if (half[at] === halfCode.outside) continue;
    const filledM3 = voxelM3 * filledShare[at]!;
    const laminateM3 = filledM3 * laminateShare[at]!;
    const stoneM3 = filledM3 - laminateM3;
    const stoneKg = stoneM3 * stone.dryDensityKgM3;
    state.fullKg[at] = stoneM3 * stone.freeWaterKgM3;
    state.heldKg[at] = stoneM3 * stone.freeWaterKgM3 * water.heldShare;
    state.dryCapacityJPerK[at] =
      stoneKg * stone.dryHeatJPerKgK + laminateM3 * laminate.densityKgM3 * laminate.heatJPerKgK;
    state.dehydrationJ[at] = stoneKg * stone.dihydrateShare * dehydrationJPerKg;
  }
  refreshConductivity(one, state);
  const resinGPerM3 = 1000 * laminate.densityKgM3 * laminate.resinMassFraction;
  const { laminateVoxels } = state;
  return {
    ...state,
    resinG: Float64Array.from(
      laminateVoxels,
      (at) => voxelM3 * filledShare[at]! * laminateShare[at]! * resinGPerM3,
    ),
    degreeOfCure: new Float64Array(laminateVoxels.length).fill(one.kinetics?.startCure ?? 0),
  };
}

function placesOfLaminate(half: Uint8Array, laminateShare: Float32Array): number[] {
  const places: number[] = [];
  laminateShare.forEach((share, at) => {
    if (share >= leastLaminateShare && half[at] !== halfCode.outside) places.push(at);
  });
  return places;
}

/** Conductivities and conductances for the water that is held now. */
export function refreshConductivity({ voxels, stone, laminate }: HeatCase, state: HeatState): void {
  const { heldKg, fullKg, conductivityWPerMK } = state;
  for (let at = 0; at < heldKg.length; at++) {
    const wetShare = fullKg[at]! > 0 ? Math.min(1, heldKg[at]! / fullKg[at]!) : 0;
    conductivityWPerMK[at] = conductivityOf(voxels.laminateShare[at]!, wetShare, stone, laminate);
  }
  fillConductances(voxels, conductivityWPerMK, state.system.conductances);
}

/** Share of the water held now that will be there in the middle of a step, if drying goes on as it did. */
export const heldMidway = ({ dryingPerS }: HeatState, stepS: number): number =>
  Math.max(0, 1 - 0.5 * stepS * dryingPerS);

/** Heat capacity of a voxel with the water it holds, J/K. */
export const capacityJPerK = (state: HeatState, at: number): number =>
  state.dryCapacityJPerK[at]! + state.heldKg[at]! * waterHeatJPerKgK;

export function sumOf(values: Float64Array | Float32Array): number {
  let sum = 0;
  for (let at = 0; at < values.length; at++) sum += values[at]!;
  return sum;
}
