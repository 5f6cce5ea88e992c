/**
 * The walls that the ply stack accepts, and what the view looks for with them. Sheets, headless report and step reports
 * all take them from here, so map, patches, pairing and verdicts speak of the same limits.
 */
import {
  acceptedWalls,
  type AcceptedWalls,
  type FiberGaps,
  type WallLimits,
} from '../../core/laminate/acceptedWalls';
import type { MeanPly } from '../../core/laminate/pairing';
import type { PatchBand } from '../../core/mesh/types';
import { compensatedSum } from '../../core/numeric/compensatedSum';
import type { ProjectInputs } from '../inputs/project';
import type { Material } from '../inputs/material';
import { resolveStack, type KnownStack } from './stack';
import type { WallsInputs } from '../inputs/walls';

/** Film on one face or both takes its part of every wall. */
export function filmInWallMm({ filmFaces, filmMm }: WallsInputs): number {
  return { none: 0, one: 1, both: 2 }[filmFaces] * filmMm;
}

export function wallLimits(walls: WallsInputs): WallLimits {
  return {
    goVoidShare: walls.goVoidPercent / 100,
    lookVoidShare: walls.lookVoidPercent / 100,
    badVoidShare: walls.badVoidPercent / 100,
    toleranceMm: walls.toleranceMm,
    filmMm: filmInWallMm(walls),
  };
}

/** Gaps at which the fibers of some plies reach their limits, each kind its own. */
export function fiberGaps(
  cards: readonly Pick<Material, 'weave' | 'arealWeightGsm' | 'fiberDensityGCm3'>[],
  walls: WallsInputs,
): FiberGaps {
  const gap = (woven: number, aligned: number) =>
    compensatedSum(
      cards.map(
        ({ weave, arealWeightGsm, fiberDensityGCm3 }) =>
          arealWeightGsm / (1000 * fiberDensityGCm3) / (weave === 'woven' ? woven : aligned),
      ),
    );
  return {
    goMm: gap(walls.wovenGoFraction, walls.alignedGoFraction),
    lookMm: gap(walls.wovenLookFraction, walls.alignedLookFraction),
  };
}

/** Walls that a known stack accepts. */
export function wallsFor(stack: KnownStack, walls: WallsInputs): AcceptedWalls {
  const cards = stack.plies.map(({ card }) => card);
  return acceptedWalls(stack.volume, fiberGaps(cards, walls), wallLimits(walls));
}

/** null when the stack is not known; `resolveStack` says why. */
export function wallBand({ plies, walls }: ProjectInputs): AcceptedWalls | null {
  const stack = resolveStack(plies);
  return stack.known ? wallsFor(stack, walls) : null;
}

/** The mean ply of a stack, for questions about another number of plies. */
export function meanPly(stack: KnownStack, walls: WallsInputs): MeanPly {
  const count = stack.total.plies;
  const fibers = fiberGaps(
    stack.plies.map(({ card }) => card),
    walls,
  );
  return {
    voidFreeMm: stack.volume.voidFreeMm / count,
    fiberMm: stack.volume.fiberMm / count,
    fiberGoMm: fibers.goMm / count,
    fiberLookMm: fibers.lookMm / count,
  };
}

/** What counts as a patch for these inputs; without a stack no wall is thick or thin, so only draft and locks show. */
export function patchBand(inputs: ProjectInputs): PatchBand {
  const band = wallBand(inputs);
  const { measure, leastDraftDeg, leastInnerRadiusMm } = inputs.walls;
  return {
    measure,
    lowMm: band?.goLowMm ?? 0,
    highMm: band?.goHighMm ?? Number.POSITIVE_INFINITY,
    leastDraftDeg,
    leastCornerRadiusMm: leastInnerRadiusMm,
    leastOuterEdgeRadiusMm: leastOuterEdgeRadiusMm(inputs),
  };
}

/**
 * Outer edges of the show face: hollow corners of the half that the plies are pressed into by hand when that is the
 * negative; else at least the inside radius and the plies over it (common practice).
 */
export function leastOuterEdgeRadiusMm(inputs: ProjectInputs): number {
  const { laidIn, leastOuterRadiusMm, leastInnerRadiusMm } = inputs.walls;
  const overInner = leastInnerRadiusMm + (wallBand(inputs)?.voidFreeMm ?? 0);
  return laidIn === 'negative' ? Math.max(leastOuterRadiusMm, overInner) : overInner;
}
