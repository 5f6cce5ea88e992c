/**
 * When a half counts as dry, and how warm it may be dried. Dry takes two things together: the weight no longer falls, over
 * hours and not minutes, and it is the weight expected from the mix. Stone in damp air or behind sealed faces stops
 * falling with most of its water still in.
 */
import { Problem } from '../problem';
import type { StoneMix } from './stoneMix';

/** °C. Limits of drying; a maker's drying guide (published) and workshop habit. */
export const dryingLimitsC = {
  /** Keep the stone itself below this (common practice; the guide runs the inside of a dryer here). */
  usual: 49,
  /** Set stone turns chalky at its surface from about here (from memory). */
  chalky: 55,
  /** Hottest air entering a dryer while the stone is damp and so stays cool (published guide). */
  enteringAir: 66,
} as const;

/** A weight is steady when it falls by no more than this share of the free water ... (common practice). */
const steadyShare = 0.01;
/** ... over at least this many hours (common practice). */
export const steadyHours = 4;
/** A dry half lies within this share of its free water of the weight expected from the mix (common practice). */
export const expectedShare = 0.15;

/** By how much a steady weight may still fall, g: a share of the free water, but no less than the scale shows. */
export function dryToleranceG(freeWaterG: number, scaleStepG: number): number {
  return Math.max(steadyShare * freeWaterG, scaleStepG);
}

/**
 * Dry weight of a half from its own fresh weight, before any water has left: fresh (1 + bound) / (1 + W/P). Needs no
 * volume, so cover, air and spills do not matter.
 * @throws Problem `stone.weighings`
 */
export function dryTargetFromFreshG(freshG: number, mix: StoneMix): number {
  if (!(freshG > 0)) throw new Problem('stone.weighings', 'The fresh weight must be above zero.');
  return (freshG * (1 + mix.boundWaterGPerG)) / (1 + mix.waterPowderRatio);
}

/**
 * Free water of a half as it came from the box, g, from its fresh weight: fresh (W/P - bound) / (1 + W/P).
 * @throws Problem `stone.weighings`
 */
export function freeWaterFromFreshG(freshG: number, mix: StoneMix): number {
  return freshG - dryTargetFromFreshG(freshG, mix);
}
