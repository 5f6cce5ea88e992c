/** What would let the mold close on a pressed laminate: forces, heights and walls worked out. */
import { bedForceN } from './balance';
import { pressureAt, type BedCurve } from './bedCurve';
import type { ClosingSamples } from './closingTypes';
import { steepCosine } from './sliding';
import { gapMm, type ClosingPosition } from './tiltedBalance';

/** Means over the faces that clamps can press: those nearer to across the pull than to along it. */
export interface PressedFaces {
  readonly areaMm2: number;
  readonly wallMm: number;
  readonly pullCosine: number;
}

/** null when every wall is steep. */
export function pressedFaces(samples: ClosingSamples): PressedFaces | null {
  const { areaMm2, wallMm, pullCosine } = samples;
  let [area, wall, cosine] = [0, 0, 0];
  for (let place = 0; place < areaMm2.length; place++) {
    const c = pullCosine[place]!;
    if (c <= steepCosine) continue;
    area += areaMm2[place]!;
    wall += areaMm2[place]! * wallMm[place]!;
    cosine += areaMm2[place]! * c;
  }
  return area > 0 ? { areaMm2: area, wallMm: wall / area, pullCosine: cosine / area } : null;
}

/** Stand-off at which those faces have, in the mean, a wanted gap, mm; negative asks for lower lands. */
export function standOffForGapMm(faces: PressedFaces, wantedGapMm: number): number {
  return (wantedGapMm - faces.wallMm) / faces.pullCosine;
}

/** Clamp force along the pull that holds the mold at a stand-off against the bed, N. */
export function forceToReachN(samples: ClosingSamples, curve: BedCurve, standOffMm: number): number {
  return bedForceN(samples, curve, standOffMm);
}

/** Mean wall of the places that carry, weighted by what they push along the pull, mm; null when nothing carries. */
export function carryingWallMm(
  samples: ClosingSamples,
  position: ClosingPosition,
  curve: BedCurve,
): number | null {
  let push = 0;
  let wall = 0;
  for (let place = 0; place < samples.areaMm2.length; place++) {
    const area = samples.areaMm2[place]!;
    if (area === 0) continue;
    const own = pressureAt(curve, gapMm(samples, position, place)) * samples.pullCosine[place]! * area;
    push += own;
    wall += own * samples.wallMm[place]!;
  }
  return push > 0 ? wall / push : null;
}

/** Area-weighted means over the places where the fibers push back. */
export interface ContactMeans {
  readonly fiberFraction: number;
  readonly pressureKpa: number;
  /** Of the show face. */
  readonly areaShare: number;
}

/** null when no place is in contact. */
export function contactMeans(
  samples: ClosingSamples,
  position: ClosingPosition,
  curve: BedCurve,
): ContactMeans | null {
  let [all, area, fraction, pressure] = [0, 0, 0, 0];
  for (let place = 0; place < samples.areaMm2.length; place++) {
    const own = samples.areaMm2[place]!;
    all += own;
    if (own === 0) continue;
    const gap = gapMm(samples, position, place);
    const here = pressureAt(curve, gap);
    if (here === 0) continue;
    area += own;
    fraction += own * Math.min(1, curve.solidFiberMm / Math.max(gap, curve.solidFiberMm));
    pressure += own * here;
  }
  if (area === 0) return null;
  return { fiberFraction: fraction / area, pressureKpa: (1000 * pressure) / area, areaShare: area / all };
}

/** Area-weighted median wall, mm; null without area. */
export function medianWallMm({ areaMm2, wallMm }: ClosingSamples): number | null {
  const order = Array.from(areaMm2.keys())
    .filter((place) => areaMm2[place]! > 0)
    .sort((a, b) => wallMm[a]! - wallMm[b]!);
  let half = order.reduce((sum, place) => sum + areaMm2[place]!, 0) / 2;
  for (const place of order) {
    half -= areaMm2[place]!;
    if (half <= 0) return wallMm[place]!;
  }
  return null;
}

/** Area of the show face seen along the pull, mm². */
export function planAreaMm2({ areaMm2, pullCosine }: ClosingSamples): number {
  let plan = 0;
  for (let place = 0; place < areaMm2.length; place++) plan += areaMm2[place]! * pullCosine[place]!;
  return plan;
}
