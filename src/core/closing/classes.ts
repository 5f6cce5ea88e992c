/** What the laminate is in each place of the closed mold. */
import type { ClosingSamples } from './closingTypes';
import { gapMm, type ClosingPosition } from './tiltedBalance';

/** Values of a class map, in the order in which they are asked. */
export const closingClass = {
  /** More fiber than the stack takes: dry spots, and it holds the mold open. */
  choked: 0,
  /** Filled, with no more voids than are good. */
  packed: 1,
  /** Filled but for some voids: hardly any pressure in the resin. */
  light: 2,
  /** More air than can be accepted. */
  loose: 3,
} as const;
export type ClosingClass = keyof typeof closingClass;

/** Gaps at which one class becomes the next, mm; asked in order, since the first may lie over the second. */
export interface ClassLimits {
  readonly chokedUnderMm: number;
  readonly packedUpToMm: number;
  readonly lightUpToMm: number;
}

export type ClassShares = Readonly<Record<ClosingClass, number>>;

/** `evenedGap`: the gap as resin has evened it out, which tells how well it is filled; fibers go by the gap itself. */
export function classOf(gap: number, limits: ClassLimits, evenedGap = gap): number {
  if (gap < limits.chokedUnderMm) return closingClass.choked;
  if (evenedGap <= limits.packedUpToMm) return closingClass.packed;
  return evenedGap <= limits.lightUpToMm ? closingClass.light : closingClass.loose;
}

/** Walls within a bin are taken as spread evenly between its least and largest. */
interface WallSpread {
  readonly wallLowMm?: Float64Array;
  readonly wallHighMm?: Float64Array;
}

/** Area shares, 0 to 1, that add up to 1; all loose for no area. `evenedMm`: see `classOf`, per place. */
export function classShares(
  samples: ClosingSamples & WallSpread,
  position: ClosingPosition,
  limits: ClassLimits,
  evenedMm: ArrayLike<number> | null = null,
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
    if (evenedMm !== null) {
      const choked =
        high > low ? shareUnder(low, high, limits.chokedUnderMm) : Number(low < limits.chokedUnderMm);
      area[0]! += own * choked;
      area[classOf(Infinity, limits, evenedMm[place])]! += own * (1 - choked);
      continue;
    }
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
