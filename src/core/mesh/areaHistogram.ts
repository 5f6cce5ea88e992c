import { isFew } from '../counts';
import { Problem } from '../problem';

/** Area of the facets whose value lies in `from <= value < to`; the last bin takes its upper edge too. */
export interface HistogramBin {
  readonly from: number;
  readonly to: number;
  readonly areaMm2: number;
}

export interface AreaHistogram {
  readonly bins: readonly HistogramBin[];
  /** Area below the first and above the last bin. */
  readonly belowMm2: number;
  readonly aboveMm2: number;
  readonly totalMm2: number;
}

/**
 * Area-weighted histogram of a sorted distribution, e.g. of `PartSummary.showWall`. Bins and the two outer areas sum to
 * the whole area. Costs two searches per bin, so it can follow a slider.
 *
 * @param sorted values ascending and the running area up to and including each
 * @throws Problem `histogram.range` unless `from < to` and there are 1 to 1000 bins
 */
export function areaHistogram(
  sorted: ArrayLike<number>,
  cumulativeAreaMm2: ArrayLike<number>,
  from: number,
  to: number,
  binCount: number,
): AreaHistogram {
  if (!(from < to) || !Number.isInteger(binCount) || binCount < 1 || !isFew('histogramBins', binCount)) {
    throw new Problem(
      'histogram.range',
      'A histogram needs a range from a lower to a higher value, and 1 to 1000 bars.',
    );
  }
  const count = sorted.length;
  const areaBefore = (end: number) => (end === 0 ? 0 : cumulativeAreaMm2[end - 1]!);
  const edge = (i: number) => from + ((to - from) * i) / binCount;
  const bins: HistogramBin[] = [];
  let begin = firstFrom(sorted, from, false);
  const belowMm2 = areaBefore(begin);
  for (let i = 0; i < binCount; i++) {
    const last = i === binCount - 1;
    const upper = last ? to : edge(i + 1);
    const end = firstFrom(sorted, upper, last);
    bins.push({ from: edge(i), to: upper, areaMm2: areaBefore(end) - areaBefore(begin) });
    begin = end;
  }
  const totalMm2 = areaBefore(count);
  return { bins, belowMm2, aboveMm2: totalMm2 - areaBefore(begin), totalMm2 };
}

/** Place of the first value that is at least `limit` (more than it when `past`). */
function firstFrom(sorted: ArrayLike<number>, limit: number, past: boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const value = sorted[middle]!;
    if (value < limit || (past && value === limit)) low = middle + 1;
    else high = middle;
  }
  return low;
}
