/**
 * The wall band that the ply stack allows, and what the view looks for with it. Sheets, headless report and step
 * reports all take it from here, so map, patches and verdict speak of the same limits.
 */
import type { PatchBand } from '../core/mesh/types';
import type { ProjectInputs } from './inputs';
import { resolveStack } from './plies/stack';

export interface WallBand {
  /** Cured stack less the tolerance under it. */
  readonly lowMm: number;
  /** Stack as laid plus the tolerance over it. */
  readonly highMm: number;
  readonly curedMm: number;
  readonly laidMm: number;
}

/** null when the stack is not known; `resolveStack` says why. */
export function wallBand(inputs: ProjectInputs): WallBand | null {
  const stack = resolveStack(inputs.plies);
  if (!stack.known) return null;
  const { curedMm, laidMm } = stack.total;
  return {
    // A caliper may find plies thinner as laid than the card's cured thickness; the band stays the span of both.
    lowMm: Math.max(0, Math.min(curedMm, laidMm) - inputs.walls.underMm),
    highMm: Math.max(curedMm, laidMm) + inputs.walls.overMm,
    curedMm,
    laidMm,
  };
}

/**
 * The tightest inside corner that the stack is trusted to follow: its own thickness as laid (common practice).
 * null when the stack is not known.
 */
export function leastCornerRadiusMm(inputs: ProjectInputs): number | null {
  return wallBand(inputs)?.laidMm ?? null;
}

/** What counts as a patch for these inputs; without a stack no wall is thick or thin, so only draft and locks show. */
export function patchBand(inputs: ProjectInputs): PatchBand {
  const band = wallBand(inputs);
  return {
    measure: inputs.walls.measure,
    lowMm: band?.lowMm ?? 0,
    highMm: band?.highMm ?? Number.POSITIVE_INFINITY,
    leastDraftDeg: inputs.walls.leastDraftDeg,
    leastCornerRadiusMm: band?.laidMm ?? null,
  };
}
