/** When a half counts as dry, and how warm it may be dried. */
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

/** Share of the free water that may be left in a half called dry (common practice). */
export const dryShareLeft = 0.01;

/** What may be left, g: a share of the free water, but no less than the scale shows. */
export function dryToleranceG(freeWaterG: number, scaleStepG: number): number {
  return Math.max(dryShareLeft * freeWaterG, scaleStepG);
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
