import { sortedOrder } from './sortedOrder';
import type { WallDistribution, WallQuantiles } from './types';

/** Values in ascending order with the weight up to and including each. */
export interface WeightedDistribution {
  readonly values: Float32Array<ArrayBuffer>;
  readonly cumulativeWeight: Float64Array<ArrayBuffer>;
}

/**
 * Sorts values with their weights. NaN values and values without weight are left out.
 * @param order entries to take in ascending order of value, when that is known already
 * @param take 1 for the entries to take; all when left out
 */
export function distribute(
  values: Float32Array,
  weights: Float32Array,
  take?: Uint8Array,
  order: Uint32Array = sortedOrder(values, take),
): WeightedDistribution {
  const sorted = new Float32Array(order.length);
  const cumulativeWeight = new Float64Array(order.length);
  let count = 0;
  let running = 0;
  for (const entry of order) {
    const weight = weights[entry]!;
    if (!(weight > 0) || (take && take[entry] === 0)) continue;
    running += weight;
    sorted[count] = values[entry]!;
    cumulativeWeight[count++] = running;
  }
  return { values: sorted.slice(0, count), cumulativeWeight: cumulativeWeight.slice(0, count) };
}

/** First place in an ascending array whose entry is at least `atLeast`; its length when there is none. */
function firstAtLeast(ascending: Float64Array | Float32Array, atLeast: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (ascending[middle]! < atLeast) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The smallest value whose cumulative weight reaches `share` of the whole, no interpolation; null when empty. */
export function quantile(distribution: WeightedDistribution, share: number): number | null {
  const { values, cumulativeWeight } = distribution;
  const count = values.length;
  if (count === 0) return null;
  const at = firstAtLeast(cumulativeWeight, share * cumulativeWeight[count - 1]!);
  return values[Math.min(at, count - 1)]!;
}

/**
 * The quantiles that a wall is told by.
 * @param distribution walls of the facets that were hit, weighted by area
 * @param wholeAreaMm2 area of all facets asked, hit or not
 */
export function wallQuantiles(distribution: WeightedDistribution, wholeAreaMm2: number): WallQuantiles {
  const { values, cumulativeWeight } = distribution;
  const hitArea = cumulativeWeight.at(-1) ?? 0;
  return {
    p5: quantile(distribution, 0.05),
    median: quantile(distribution, 0.5),
    p95: quantile(distribution, 0.95),
    min: values[0] ?? null,
    max: values.at(-1) ?? null,
    hitShare: wholeAreaMm2 > 0 ? Math.min(1, hitArea / wholeAreaMm2) : 0,
  };
}

/** Area shares, 0 to 1, of a wall distribution against a band. */
export interface BandShares {
  /** wall < lowMm */
  readonly underShare: number;
  readonly insideShare: number;
  /** wall > highMm */
  readonly overShare: number;
}

/** Shares of the area under, inside (limits included) and over a band; null when the distribution is empty. */
export function bandShares(walls: WallDistribution, lowMm: number, highMm: number): BandShares | null {
  const { wallMm, cumulativeAreaMm2 } = walls;
  const whole = cumulativeAreaMm2.at(-1);
  if (whole === undefined) return null;
  const upTo = (count: number) => (count === 0 ? 0 : cumulativeAreaMm2[count - 1]! / whole);
  let notOver = firstAtLeast(wallMm, highMm);
  while (notOver < wallMm.length && wallMm[notOver]! <= highMm) notOver++;
  const underShare = upTo(firstAtLeast(wallMm, lowMm));
  const overShare = 1 - upTo(notOver);
  return { underShare, insideShare: Math.max(0, 1 - underShare - overShare), overShare };
}
