import { sortByValue } from './sortByValue';
import type { WallQuantiles } from './types';

/** Values in ascending order with the weight up to and including each. */
export interface WeightedDistribution {
  readonly values: Float32Array<ArrayBuffer>;
  readonly cumulativeWeight: Float64Array<ArrayBuffer>;
}

/**
 * Sorts values with their weights. NaN values and values without weight are left out.
 * @param take 1 for the entries to take; all when left out
 */
export function distribute(
  values: Float32Array,
  weights: Float32Array,
  take?: Uint8Array,
): WeightedDistribution {
  const sorted = sortByValue(values, weights, take);
  const cumulativeWeight = new Float64Array(sorted.values.length);
  let running = 0;
  for (let i = 0; i < cumulativeWeight.length; i++) {
    running += sorted.weights[i]!;
    cumulativeWeight[i] = running;
  }
  return { values: sorted.values, cumulativeWeight };
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
