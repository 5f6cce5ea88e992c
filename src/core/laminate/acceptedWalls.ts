/**
 * The walls that a stack accepts: one function of its volume, its fibers and the voids one accepts. Wider than the
 * void-free thickness t0 the difference is air; narrower, resin must leave and then the fibers carry.
 */
import type { StackVolume } from './stackVolume';
import { voidShareInGap } from './stackVolume';

/** Common practice; inputs of the Walls step. Shares and fractions from 0 to 1. */
export interface WallLimits {
  /** Voids up to here are good, up to `lookVoidShare` to be looked at. */
  readonly goVoidShare: number;
  readonly lookVoidShare: number;
  /** Bad wherever it stands. */
  readonly badVoidShare: number;
  /** How far under t0 the wall should be drawn, for print and stone are never exact, mm. null: 4 % of t0. */
  readonly toleranceMm: number | null;
  /** Separator film between stone and laminate, both faces together, mm: it takes its part of the wall. */
  readonly filmMm: number;
}

/** Print and stone together leave about this share of the wall uncertain (common practice). */
export const usualTolerance = 0.04;

/** Gaps at which the fibers of the whole stack reach their limits, mm: Σ fiber thickness / limit of each ply's kind. */
export interface FiberGaps {
  readonly goMm: number;
  readonly lookMm: number;
}

export interface AcceptedWalls {
  /** t0. */
  readonly voidFreeMm: number;
  readonly fiberMm: number;
  /** t0 less the tolerance, and the film; all walls below have the film in them. */
  readonly wantedMm: number;
  readonly toleranceMm: number;
  readonly filmMm: number;
  /** From here to `goHighMm` a wall is right. */
  readonly goLowMm: number;
  readonly goHighMm: number;
  /** Within these it is to be looked at; outside it is wrong. */
  readonly lookLowMm: number;
  readonly lookHighMm: number;
  /** Wider than this is bad wherever it stands. */
  readonly badHighMm: number;
}

/** Valid for any stack; where its own fiber at t0 is over the limit, `goLowMm` lies over `goHighMm` and no wall is right. */
export function acceptedWalls(
  { voidFreeMm, fiberMm }: Pick<StackVolume, 'voidFreeMm' | 'fiberMm'>,
  fibers: FiberGaps,
  limits: WallLimits,
): AcceptedWalls {
  const { filmMm } = limits;
  const toleranceMm = limits.toleranceMm ?? usualTolerance * voidFreeMm;
  return {
    voidFreeMm,
    fiberMm,
    wantedMm: Math.max(fiberMm, voidFreeMm - toleranceMm) + filmMm,
    toleranceMm,
    filmMm,
    goLowMm: fibers.goMm + filmMm,
    goHighMm: voidFreeMm / (1 - limits.goVoidShare) + filmMm,
    lookLowMm: fibers.lookMm + filmMm,
    lookHighMm: voidFreeMm / (1 - limits.lookVoidShare) + filmMm,
    badHighMm: voidFreeMm / (1 - limits.badVoidShare) + filmMm,
  };
}

export type WallWord = 'go' | 'look again' | 'stop';

/** Rounding crumbs: a wall drawn exactly at a limit meets it, mm. */
const crumbMm = 1e-6;

/** What one wall is for the stack. */
export function wallWord(walls: AcceptedWalls, wallMm: number): WallWord {
  if (wallMm < walls.lookLowMm - crumbMm || wallMm > walls.lookHighMm + crumbMm) return 'stop';
  return wallMm < walls.goLowMm - crumbMm || wallMm > walls.goHighMm + crumbMm ? 'look again' : 'go';
}

/** A wall as the stack fills it. */
export interface FilledWall {
  readonly voidShare: number;
  /** Of the gap's volume. */
  readonly fiberFraction: number;
}

export function filledWall(
  { voidFreeMm, fiberMm, filmMm }: Pick<AcceptedWalls, 'voidFreeMm' | 'fiberMm' | 'filmMm'>,
  wallMm: number,
): FilledWall {
  const gapMm = Math.max(wallMm - filmMm, 1e-6);
  return { voidShare: voidShareInGap(voidFreeMm, gapMm), fiberFraction: Math.min(1, fiberMm / gapMm) };
}
