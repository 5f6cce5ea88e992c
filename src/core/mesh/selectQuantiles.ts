import { bitsOf, isNanBits, keyOfBits } from './floatKeys';

const halfBits = 16;
const halfCount = 1 << halfBits;

/** Values at given shares of the whole weight, without sorting. */
export interface SelectedQuantiles {
  /** In the order of the shares; null when no entry counts. */
  readonly at: readonly (number | null)[];
  readonly min: number | null;
  readonly max: number | null;
  readonly wholeWeight: number;
}

/**
 * The smallest values whose cumulative weight reaches each share of the whole, as `quantile` of a sorted distribution
 * gives them (up to the rounding of the sum where a share is reached exactly), in two passes: the upper half of the
 * bits of a value sorts it into one of 65,536 bins, and the bin that a share falls into is told apart by the lower half (at most 255 shares).
 * NaN values and entries without weight are left out.
 * @param take 1 for the entries to take; all when left out
 */
export function selectQuantiles(
  values: Float32Array,
  weights: Float32Array,
  shares: readonly number[],
  take?: Uint8Array,
): SelectedQuantiles {
  const bits = bitsOf(values);
  const upper = new Float64Array(halfCount);
  let min = Infinity;
  let max = -Infinity;
  let wholeWeight = 0;
  for (let entry = 0; entry < bits.length; entry++) {
    const own = bits[entry]!;
    const weight = weights[entry]!;
    if (isNanBits(own) || !(weight > 0) || (take && take[entry] === 0)) continue;
    const value = values[entry]!;
    if (value < min) min = value;
    if (value > max) max = value;
    const bin = upperHalf(keyOfBits(own));
    upper[bin] = upper[bin]! + weight;
    wholeWeight += weight;
  }
  if (wholeWeight === 0) return { at: shares.map(() => null), min: null, max: null, wholeWeight };

  const targets = shares.map((share) => ({ ...binAt(upper, share * wholeWeight), share }));
  const wanted = [...new Set(targets.map(({ bin }) => bin))];
  /** Bins of the lower half, for each wanted upper bin in turn. */
  const lower = new Float64Array(halfCount * wanted.length);
  /** Place in `wanted` of each upper bin, plus one; 0 for the bins that no share falls into. */
  const place = new Uint8Array(halfCount);
  wanted.forEach((bin, at) => (place[bin] = at + 1));
  for (let entry = 0; entry < bits.length; entry++) {
    const own = bits[entry]!;
    const key = keyOfBits(own);
    const at = place[upperHalf(key)]!;
    if (at === 0) continue;
    const weight = weights[entry]!;
    if (isNanBits(own) || !(weight > 0) || (take && take[entry] === 0)) continue;
    const bin = (at - 1) * halfCount + (key & (halfCount - 1));
    lower[bin] = lower[bin]! + weight;
  }
  const at = targets.map(({ bin, before, share }) => {
    const from = (place[bin]! - 1) * halfCount;
    const within = binAt(lower.subarray(from, from + halfCount), share * wholeWeight - before);
    return valueOf(((bin - halfCount / 2) << halfBits) | within.bin);
  });
  return { at, min, max, wholeWeight };
}

/** First bin at whose end the running weight reaches `weight`, else the last that holds any; and the weight before it. */
function binAt(bins: Float64Array, weight: number): { bin: number; before: number } {
  let running = 0;
  let found = { bin: 0, before: 0 };
  for (let bin = 0; bin < bins.length; bin++) {
    const own = bins[bin]!;
    if (own === 0) continue;
    found = { bin, before: running };
    running += own;
    if (running >= weight) break;
  }
  return found;
}

/** Number of the bin, 0 or more. */
const upperHalf = (key: number): number => (key >> halfBits) + halfCount / 2;

function valueOf(key: number): number {
  return new Float32Array(Int32Array.of(keyOfBits(key)).buffer)[0]!;
}
