/** What the laminate is in each place of the closed mold. */
import type { BedCurve } from './bedCurve';
import type { ClosingSamples } from './closingTypes';
import { gapMm, type ClosingPosition } from './tiltedBalance';

/** Values of a class map, in the order in which they are asked. */
export const closingClass = {
  /** Past the fiber limit: dry spots, and it holds the mold open. */
  choked: 0,
  /** At or under the cured thickness: resin is pressed out. */
  packed: 1,
  /** Between cured and laid: pressed little, air may stay. */
  light: 2,
  /** Wider than the stack as laid: no pressure at all. */
  loose: 3,
} as const;
export type ClosingClass = keyof typeof closingClass;

/** Gaps at which one class becomes the next, mm. h0 < h1 is not guaranteed, so they are asked in order. */
export interface ClassLimits {
  readonly chokedUnderMm: number;
  readonly packedUpToMm: number;
  readonly lightUpToMm: number;
}

export type ClassShares = Readonly<Record<ClosingClass, number>>;

/** `tolerance`: half a caliper step, so that a wall drawn exactly at the stack is not called loose for its last decimal. */
export function classLimits(
  curve: Pick<BedCurve, 'limitGapMm'>,
  curedMm: number,
  laidMm: number,
  toleranceMm: number,
): ClassLimits {
  return {
    chokedUnderMm: curve.limitGapMm,
    packedUpToMm: curedMm,
    lightUpToMm: laidMm + toleranceMm,
  };
}

export function classOf(gap: number, limits: ClassLimits): number {
  if (gap < limits.chokedUnderMm) return closingClass.choked;
  if (gap <= limits.packedUpToMm) return closingClass.packed;
  return gap <= limits.lightUpToMm ? closingClass.light : closingClass.loose;
}

/** Walls within a bin are taken as spread evenly between its least and largest. */
interface WallSpread {
  readonly wallLowMm?: Float64Array;
  readonly wallHighMm?: Float64Array;
}

/** Area shares, 0 to 1, that add up to 1; all loose for no area. */
export function classShares(
  samples: ClosingSamples & WallSpread,
  position: ClosingPosition,
  limits: ClassLimits,
): ClassShares {
  const { areaMm2, wallMm, wallLowMm, wallHighMm } = samples;
  const area = [0, 0, 0, 0];
  let all = 0;
  for (let place = 0; place < areaMm2.length; place++) {
    const own = areaMm2[place]!;
    if (own === 0) continue;
    const gap = gapMm(samples, position, place);
    const low = gap - (wallMm[place]! - (wallLowMm?.[place] ?? wallMm[place]!));
    const high = gap + ((wallHighMm?.[place] ?? wallMm[place]!) - wallMm[place]!);
    all += own;
    const lowClass = classOf(low, limits);
    if (lowClass === classOf(high, limits)) {
      area[lowClass]! += own;
      continue;
    }
    const choked = shareUnder(low, high, limits.chokedUnderMm);
    const packed = Math.max(choked, shareUnder(low, high, limits.packedUpToMm));
    const light = Math.max(packed, shareUnder(low, high, limits.lightUpToMm));
    area[0]! += own * choked;
    area[1]! += own * (packed - choked);
    area[2]! += own * (light - packed);
    area[3]! += own * (1 - light);
  }
  if (all === 0) return { choked: 0, packed: 0, light: 0, loose: 1 };
  return {
    choked: area[0]! / all,
    packed: area[1]! / all,
    light: area[2]! / all,
    loose: area[3]! / all,
  };
}

function shareUnder(low: number, high: number, limit: number): number {
  return Math.min(1, Math.max(0, (limit - low) / (high - low)));
}
