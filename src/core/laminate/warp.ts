/**
 * Curvature in words a maker can check on a flat table: bow, radius, kind of shape. Small curvature: the bow is
 * within 1 % of the arc's own as long as it stays under a tenth of the length.
 */
import type { Vector3 } from '../numeric/matrix3';
import { Problem } from '../problem';

/**
 * `hyer1981` in core/sources: a real thin plate that the theory makes a saddle is often a cylinder, and may snap
 * from one to another.
 */
export type WarpShape = 'flat' | 'cylinder' | 'bowl' | 'saddle';

export interface Warp {
  readonly shape: WarpShape;
  /** The strongest curvature of any direction, sign kept (positive hollows the show face), 1/m. */
  readonly strongestPerM: number;
  /** The curvature at right angles to it, 1/m. */
  readonly otherPerM: number;
  /** From x towards y, the direction that curves most, −90 to 90; null when all directions curve alike. */
  readonly directionDeg: number | null;
  /** Of the strongest curvature; null when flat. */
  readonly radiusMm: number | null;
}

/** A second curvature below this share of the first is no more than a cylinder's. */
const cylinderShare = 0.02;

/** Principal curvatures of κx, κy, κxy (1/m; κxy is twice the twist, as in the theory). */
export function warpOf(curvaturePerM: Vector3): Warp {
  const [x, y, xy] = curvaturePerM;
  const mean = (x + y) / 2;
  const swing = Math.hypot((x - y) / 2, xy / 2);
  const [strongestPerM, otherPerM] = mean >= 0 ? [mean + swing, mean - swing] : [mean - swing, mean + swing];
  if (strongestPerM === 0)
    return { shape: 'flat', strongestPerM, otherPerM, directionDeg: null, radiusMm: null };
  const share = otherPerM / strongestPerM;
  const even = swing <= 1e-9 * Math.abs(strongestPerM);
  const towardsMost = ((Math.atan2(xy, x - y) / 2) * 180) / Math.PI;
  const across = towardsMost > 0 ? towardsMost - 90 : towardsMost + 90;
  return {
    shape: Math.abs(share) < cylinderShare ? 'cylinder' : share > 0 ? 'bowl' : 'saddle',
    strongestPerM,
    otherPerM,
    directionDeg: even ? null : mean >= 0 ? towardsMost : across,
    radiusMm: 1000 / Math.abs(strongestPerM),
  };
}

/** How far the middle of a part `lengthMm` long stands off the line between its ends, mm: |κ| L² / 8. */
export function bowMm(curvaturePerM: number, lengthMm: number): number {
  if (!(lengthMm > 0))
    throw new Problem('laminate.notPositive', 'The length to bow over must be more than zero.');
  return (Math.abs(curvaturePerM) / 1000) * (lengthMm ** 2 / 8);
}
