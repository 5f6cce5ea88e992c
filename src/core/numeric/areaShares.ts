/** Area shares of a sorted distribution, by bisection: instant for any limits the maker tries. */

export interface AreaShares {
  /** Shares of the area, 0 to 1, that add up to 1. */
  readonly under: number;
  readonly within: number;
  readonly over: number;
}

/** Number of entries below `limit` (`orEqual`: at or below). `sorted` ascending. */
function countBelow(sorted: ArrayLike<number>, limit: number, orEqual: boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    const value = sorted[middle]!;
    if (value < limit || (orEqual && value === limit)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Shares of area with a value under `low`, from `low` to `high` (both included), and over `high`.
 * `values` ascending, `cumulativeArea[i]` the area up to and including entry i. null when there is no area.
 * Limits are compared at the precision of the stored values (float32), so a wall drawn exactly at a limit is within.
 */
export function areaShares(
  values: Float32Array,
  cumulativeArea: Float64Array,
  low: number,
  high: number,
): AreaShares | null {
  const total = cumulativeArea[cumulativeArea.length - 1] ?? 0;
  if (!(total > 0)) return null;
  const areaOf = (count: number) => (count === 0 ? 0 : cumulativeArea[count - 1]!);
  const underArea = areaOf(countBelow(values, Math.fround(low), false));
  const notOverArea = Math.max(underArea, areaOf(countBelow(values, Math.fround(high), true)));
  return {
    under: underArea / total,
    within: (notOverArea - underArea) / total,
    over: (total - notOverArea) / total,
  };
}
