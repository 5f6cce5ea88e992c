/**
 * What no mold in an oven can be: hotter than the hottest air by more than the resin could warm itself, or colder than the
 * coldest air by more than drying cools. A run that gets there has come apart in its steps, and nothing of it may be shown.
 */
import { Problem } from '../problem';
import { highestC } from './curve';
import type { HeatCase } from './heatCase';
import type { HeatState } from './heatState';

export interface HeatBounds {
  readonly coldestC: number;
  readonly hottestC: number;
}

/** Time steps may carry a temperature so far past where it goes, K. */
const stepK = 0.5;
/** Wet faces in dry air stand under it by less than this, K. */
const dryingK = 30;

/** What the resin that has not yet cured would warm its voxel by if no heat left it, K; 0 without kinetics. */
export function adiabaticRiseK({ kinetics }: HeatCase, state: HeatState): number {
  if (kinetics === null) return 0;
  const { laminateVoxels, resinG, dryCapacityJPerK } = state;
  const leftJPerG = kinetics.heatJPerG * (1 - kinetics.startCure);
  return laminateVoxels.reduce(
    (most, at, place) => Math.max(most, (resinG[place]! * leftJPerG) / dryCapacityJPerK[at]!),
    0,
  );
}

export function heatBounds(one: HeatCase, state: HeatState): HeatBounds {
  const coldestAirC = one.air.valuesC.reduce((low, valueC) => Math.min(low, valueC), one.startC);
  return {
    coldestC: coldestAirC - (one.water.heldShare > 0 ? dryingK : 0) - stepK,
    hottestC: Math.max(one.startC, highestC(one.air)) + adiabaticRiseK(one, state) + stepK,
  };
}

/** @throws Problem `cure.notFollowed` where a temperature is none that this mold can have */
export function checkWithin({ coldestC, hottestC }: HeatBounds, ...temperaturesC: readonly number[]): void {
  if (temperaturesC.every((temperatureC) => temperatureC >= coldestC && temperatureC <= hottestC)) return;
  throw new Problem(
    'cure.notFollowed',
    'The oven run could not be followed: some place came out hotter or colder than oven and resin can make it, so no figure of it is shown. Take another voxel size, or leave out the heat of reaction; a thermocouple cast in tells the rest.',
  );
}
