/** The mold during a run: what each voxel is, what it holds, and how warm it stands. Arrays of one number per voxel. */
import { adiWorkspace } from './adiSystem';
import { conductivityOf, emptyConductances, fillConductances, openFaces } from './conductionGrid';
import { dehydrationJPerKg } from './dehydration';
import type { HeatCase } from './heatCase';
import { waterHeatJPerKgK } from './moldMaterials';
import { halfCode, leastLaminateShare, voxelCount } from './moldVoxels';
import { surfaceExchange, type SurfaceExchange } from './surfaceExchange';
import type { HeatRoom } from './heatRoom';
import type { VoxelArrays } from './voxelWork';

export interface HeatState extends VoxelArrays {
  /** Free water that the mix leaves, kg: what `heldKg` is measured against. */
  readonly fullKg: Float32Array;
  /** Share of its free water that the mold dried off per second in the last step. */
  dryingPerS: number;
  /** Whether any voxel boiled in the last step taken. */
  boiling: boolean;
  readonly conductivityWPerMK: Float32Array;
  /** Voxels that count as places of the laminate. */
  readonly laminateVoxels: Uint32Array;
  /** Resin in them, g. */
  readonly resinG: Float64Array;
  readonly degreeOfCure: Float64Array;
  readonly exchange: SurfaceExchange;
}

/** @param room where the arrays of one number per voxel are laid */
export function heatState(one: HeatCase, room: HeatRoom): HeatState {
  const { voxels, stone, laminate, water } = one;
  const { half, laminateShare, filledShare, sizeMm } = voxels;
  const count = voxelCount(voxels);
  const voxelM3 = sizeMm[0] * sizeMm[1] * sizeMm[2] * 1e-9;
  const state: HeatState = {
    temperatureC: room.float64(count).fill(one.startC),
    risePerS: room.float32(count),
    heldKg: room.float64(count),
    fullKg: room.float32(count),
    dryCapacityJPerK: room.float64(count).fill(1),
    dehydrationJ: room.float64(count),
    turnedShare: room.float64(count),
    turnBase: room.float64(count),
    turnPerK: room.float64(count),
    dryingPerS: 0,
    boiling: false,
    peakC: room.float32(count).fill(one.startC),
    conductivityWPerMK: room.float32(count).fill(1),
    laminateVoxels: Uint32Array.from(placesOfLaminate(half, laminateShare)),
    resinG: new Float64Array(0),
    degreeOfCure: new Float64Array(0),
    system: adiWorkspace(voxels, emptyConductances(voxels, room), room),
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

/** Four sums side by side: one alone would wait for itself at every voxel. */
export function sumOf(values: Float64Array | Float32Array): number {
  let [a, b, c, d] = [0, 0, 0, 0];
  let at = 0;
  for (; at + 4 <= values.length; at += 4) {
    a += values[at]!;
    b += values[at + 1]!;
    c += values[at + 2]!;
    d += values[at + 3]!;
  }
  for (; at < values.length; at++) a += values[at]!;
  return a + b + (c + d);
}
