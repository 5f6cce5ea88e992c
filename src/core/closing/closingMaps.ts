/** What the view draws: the answer of the balance for every facet. */
import { pressureAt, type BedCurve } from './bedCurve';
import { classOf, type ClassLimits } from './classes';
import type { ClosingSamples } from './closingTypes';
import { gapMm, type ClosingPosition } from './tiltedBalance';

/** One entry per facet; NaN (class 255) where the facet takes no part. */
export interface ClosingMaps {
  readonly gapMm: Float32Array;
  readonly fiberFraction: Float32Array;
  readonly pressureKpa: Float32Array;
  /** `closingClass` value. */
  readonly closingClass: Uint8Array;
  /** What the wall wants to become the wanted wall: positive is "print it thicker", mm. */
  readonly wallChangeMm: Float32Array;
}

export const noClosingClass = 255;

/** `wantedWallMm`: the wall that the stack wants. `evenedMm`: gaps as resin has evened them out, per facet. */
export function closingMaps(
  samples: ClosingSamples,
  position: ClosingPosition,
  curve: BedCurve,
  limits: ClassLimits,
  wantedWallMm: number,
  evenedMm: ArrayLike<number> | null = null,
): ClosingMaps {
  const count = samples.areaMm2.length;
  const maps: ClosingMaps = {
    gapMm: new Float32Array(count).fill(NaN),
    fiberFraction: new Float32Array(count).fill(NaN),
    pressureKpa: new Float32Array(count).fill(NaN),
    closingClass: new Uint8Array(count).fill(noClosingClass),
    wallChangeMm: new Float32Array(count).fill(NaN),
  };
  for (let facet = 0; facet < count; facet++) {
    if (samples.areaMm2[facet] === 0) continue;
    const gap = gapMm(samples, position, facet);
    maps.gapMm[facet] = gap;
    // A gap that closes on itself holds no laminate: it is choked, with no fraction to show.
    maps.fiberFraction[facet] = gap > curve.solidFiberMm ? curve.solidFiberMm / gap : 1;
    maps.pressureKpa[facet] = 1000 * pressureAt(curve, gap);
    maps.closingClass[facet] = classOf(gap, limits, evenedMm?.[facet] ?? gap);
    maps.wallChangeMm[facet] = wantedWallMm - samples.wallMm[facet]!;
  }
  return maps;
}
