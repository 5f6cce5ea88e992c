/**
 * How long the next step of the oven run may be. Steps shrink where the mold does something that the step before did not
 * announce, grow where nothing does, and stay short against the mold's own lag while it still takes up heat.
 */
import { meanBetween, type Curve } from './curve';
import { halfCode } from './moldVoxels';
import type { HeatCase, HeatOptions } from './heatCase';
import { capacityJPerK, sumOf, type HeatState } from './heatState';

export interface StepLimits {
  /** Surprise that a step may bring, K. */
  readonly toleranceK: number;
  /** While the mold takes up heat, s. */
  readonly longestStepS: number;
  /** While next to nothing changes, s. */
  readonly longestQuietStepS: number;
  /** Surprise under which next to nothing changes, K. */
  readonly quietK: number;
}

/** A run over so many kelvins may use the whole tolerance; a smaller one is held to the same share. */
const fullRangeK = 100;
/**
 * Steps n in the time constant of the mold as one lump. The three sweeps leave cross terms of about 1/(12 n²) of the heat
 * taken up: with twelve, the books balance within 0.1 % also where radiation is stronger than this counts on.
 */
const stepsPerLag = 12;
/** About what radiation adds to the film. */
const radiationAboutWPerM2K = 8;
/** Of the tolerance: what is left to take up is then under a percent of all, and longer steps cannot spoil the books. */
const quietShare = 0.02;
/** Air that moves by more than this over a step is no quiet, K. */
const steadyAirK = 0.5;

export function stepLimits(one: HeatCase, state: HeatState, options: HeatOptions): StepLimits {
  const { filmWPerM2K, emissivity } = one.surface;
  const filmWPerK = (filmWPerM2K + emissivity * radiationAboutWPerM2K) * sumOf(state.exchange.faces.areaM2);
  let capacity = 0;
  one.voxels.half.forEach((half, at) => {
    if (half !== halfCode.outside) capacity += capacityJPerK(state, at);
  });
  const rangeK = one.air.valuesC.reduce((most, valueC) => Math.max(most, Math.abs(valueC - one.startC)), 0);
  const toleranceK = options.toleranceK * Math.min(1, Math.max(0.02, rangeK / fullRangeK));
  return {
    toleranceK,
    longestStepS: Math.min(options.longestStepS, capacity / filmWPerK / stepsPerLag),
    longestQuietStepS: options.longestQuietStepS,
    quietK: quietShare * toleranceK,
  };
}

/** What the step just taken was like. */
export interface StepTaken {
  readonly stepS: number;
  readonly surpriseK: number;
  /** No step after it may be shorter, s. */
  readonly floorS: number;
  /**
   * Drying goes by what the step before held, and the turning of gypsum is straightened over a step: long steps would put
   * either out of the books, so only stone that does neither is ever quiet.
   */
  readonly mayWait: boolean;
}

/** The step after; surprise grows with the square of the step. */
export function nextStepS(limits: StepLimits, { stepS, surpriseK, floorS, mayWait }: StepTaken): number {
  const surprise = Math.max(surpriseK, 1e-9);
  const growth = Math.min(2, Math.max(0.3, 0.9 * Math.sqrt(limits.toleranceK / surprise)));
  const quietS = mayWait
    ? Math.min(limits.longestQuietStepS, stepS * Math.sqrt(limits.quietK / surprise))
    : 0;
  return Math.min(Math.max(limits.longestStepS, quietS), Math.max(floorS, stepS * growth));
}

/** The step with which the run really goes on: no long one into air that is about to move. */
export function intoAirS(limits: StepLimits, air: Curve, timeS: number, stepS: number): number {
  if (stepS <= limits.longestStepS) return stepS;
  const nowC = meanBetween(air, Math.max(0, timeS - limits.longestStepS), timeS);
  const aheadC = meanBetween(air, timeS, timeS + stepS);
  return Math.abs(aheadC - nowC) > steadyAirK ? limits.longestStepS : stepS;
}
