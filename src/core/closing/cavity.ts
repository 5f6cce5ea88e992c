/**
 * The cavity of the closed mold against the volume of the stack: what is laminate, what is air, and where. Exact volume
 * balance of a rigid cavity (`rigidCavity` in core/sources).
 */
import { compensatedSum } from '../numeric/compensatedSum';
import type { ClosingHistogram, ClosingSamples } from './closingTypes';
import { gapMm, type ClosingPosition } from './tiltedBalance';

export interface Cavity {
  /** Mid-surface, Σ dA. */
  readonly areaMm2: number;
  /** Σ g dA. */
  readonly cavityMm3: number;
  /** Fiber and resin in it: t0 A, or all of the cavity where that is less. */
  readonly laminateMm3: number;
  /** cavity − laminate. */
  readonly airMm3: number;
  /** v = max(0, 1 − t0 A / Σ g dA): what stays air even when resin travels everywhere. */
  readonly voidShare: number;
  /** t0 A − laminate: what must have left. */
  readonly pressedOutMm3: number;
}

const roundingShare = 1e-9;

/** Where the mold stands, with a stack of `voidFreeMm` (t0). */
export function cavityOf(samples: ClosingSamples, position: ClosingPosition, voidFreeMm: number): Cavity {
  const { areaMm2 } = samples;
  const areas: number[] = [];
  const volumes: number[] = [];
  for (let place = 0; place < areaMm2.length; place++) {
    const area = areaMm2[place]!;
    if (area === 0) continue;
    areas.push(area);
    volumes.push(area * Math.max(0, gapMm(samples, position, place)));
  }
  const area = compensatedSum(areas);
  const cavityMm3 = compensatedSum(volumes);
  const laidInMm3 = voidFreeMm * area;
  // A mold on its resin holds just what was laid in; what differs then is rounding of the balance, no air and no bleed.
  const exact = Math.abs(cavityMm3 - laidInMm3) <= roundingShare * laidInMm3;
  const laminateMm3 = exact ? cavityMm3 : Math.min(laidInMm3, cavityMm3);
  return {
    areaMm2: area,
    cavityMm3,
    laminateMm3,
    airMm3: cavityMm3 - laminateMm3,
    voidShare: cavityMm3 > laminateMm3 ? 1 - laminateMm3 / cavityMm3 : 0,
    pressedOutMm3: exact ? 0 : laidInMm3 - laminateMm3,
  };
}

/** Gaps as resin has evened them out. */
export interface EvenedGaps {
  /** Per bin, mm. */
  readonly ofBinMm: Float64Array;
  /** At any point of the part. */
  readonly atMm: (x: number, y: number, z: number) => number;
}

/**
 * Resin evens out what lies within its flow length: over cells of that size the laminate shares one mean gap, and a length
 * over the part gives the mean of the whole. null for no length: every place is left to itself.
 */
export function evenedGaps(
  histogram: ClosingHistogram,
  position: ClosingPosition,
  flowLengthMm: number,
): EvenedGaps | null {
  if (!(flowLengthMm > 0)) return null;
  const { areaMm2, centerMm } = histogram;
  const cellAt = cells(histogram, flowLengthMm);
  const sums = new Map<number, { area: number; volume: number }>();
  const cellOf = (bin: number) => cellAt(centerMm[3 * bin]!, centerMm[3 * bin + 1]!, centerMm[3 * bin + 2]!);
  for (let bin = 0; bin < areaMm2.length; bin++) {
    const area = areaMm2[bin]!;
    if (area === 0) continue;
    const cell = cellOf(bin);
    const sum = sums.get(cell) ?? { area: 0, volume: 0 };
    sums.set(cell, sum);
    sum.area += area;
    sum.volume += area * Math.max(0, gapMm(histogram, position, bin));
  }
  const meanOf = (cell: number) => {
    const sum = sums.get(cell);
    return sum === undefined ? NaN : sum.volume / sum.area;
  };
  return {
    ofBinMm: Float64Array.from(areaMm2, (_, bin) => meanOf(cellOf(bin))),
    atMm: (x, y, z) => meanOf(cellAt(x, y, z)),
  };
}

/** Number of the cell of about `lengthMm` that a point lies in; points outside count to the cell next to them. */
function cells(
  { centerMm, areaMm2 }: ClosingHistogram,
  lengthMm: number,
): (x: number, y: number, z: number) => number {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let at = 0; at < 3 * areaMm2.length; at++) {
    low[at % 3] = Math.min(low[at % 3]!, centerMm[at]!);
    high[at % 3] = Math.max(high[at % 3]!, centerMm[at]!);
  }
  const counts = low.map((from, axis) => Math.max(1, Math.ceil((high[axis]! - from) / lengthMm)));
  const along = (value: number, axis: number) => {
    const span = high[axis]! - low[axis]! || 1;
    const count = counts[axis]!;
    return Math.min(count - 1, Math.max(0, Math.floor(((value - low[axis]!) / span) * count)));
  };
  return (x, y, z) => (along(x, 0) * counts[1]! + along(y, 1)) * counts[2]! + along(z, 2);
}

/** Shares of the area, 0 to 1, by how much of the gap there stays air. */
export interface VoidShares {
  /** Over the voids that are still looked at. */
  readonly overLook: number;
  /** Over those that are bad wherever they stand. */
  readonly bad: number;
  /** The worst place that is more than `noticedShare` of the area; null where nothing is wider than the stack fills. */
  readonly worst: { readonly voidShare: number; readonly bin: number } | null;
}

/** Places of less area than this, together, are crumbs of the mesh (common practice). */
const noticedShare = 0.005;
/** A gap wider by less than this is no air: the balance itself is no finer, mm. */
const crumbMm = 1e-5;

/** Voids place by place, in gaps as drawn and opened or, where resin travels, as it has evened them out. */
export function voidShares(
  histogram: ClosingHistogram,
  position: ClosingPosition,
  voidFreeMm: number,
  evened: EvenedGaps | null,
  limits: { readonly lookVoidShare: number; readonly badVoidShare: number },
): VoidShares {
  const { areaMm2 } = histogram;
  let [whole, overLook, bad] = [0, 0, 0];
  const found: { bin: number; voidShare: number; area: number }[] = [];
  for (let bin = 0; bin < areaMm2.length; bin++) {
    const area = areaMm2[bin]!;
    if (area === 0) continue;
    whole += area;
    const gap = evened === null ? gapMm(histogram, position, bin) : evened.ofBinMm[bin]!;
    if (gap <= voidFreeMm + crumbMm) continue;
    const voidShare = 1 - voidFreeMm / gap;
    if (voidShare > limits.lookVoidShare) overLook += area;
    if (voidShare > limits.badVoidShare) bad += area;
    found.push({ bin, voidShare, area });
  }
  if (whole === 0) return { overLook: 0, bad: 0, worst: null };
  return { overLook: overLook / whole, bad: bad / whole, worst: worstOf(found, noticedShare * whole) };
}

function worstOf(
  found: { readonly bin: number; readonly voidShare: number; readonly area: number }[],
  noticedMm2: number,
): VoidShares['worst'] {
  found.sort((a, b) => b.voidShare - a.voidShare);
  let passed = 0;
  for (const { bin, voidShare, area } of found) {
    passed += area;
    if (passed >= noticedMm2) return { bin, voidShare };
  }
  return null;
}
