const signBit = 0x8000_0000;
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
  const bits = new Uint32Array(values.buffer, values.byteOffset, values.length);
  const upper = new Float64Array(halfCount);
  let min = Infinity;
  let max = -Infinity;
  let wholeWeight = 0;
  for (let entry = 0; entry < values.length; entry++) {
    const value = values[entry]!;
    const weight = weights[entry]!;
    if (Number.isNaN(value) || !(weight > 0) || (take && take[entry] === 0)) continue;
    if (value < min) min = value;
    if (value > max) max = value;
    upper[keyOf(bits[entry]!) >>> halfBits]! += weight;
    wholeWeight += weight;
  }
  if (wholeWeight === 0) return { at: shares.map(() => null), min: null, max: null, wholeWeight };

  const targets = shares.map((share) => ({ ...binAt(upper, share * wholeWeight), share }));
  const wanted = [...new Set(targets.map(({ bin }) => bin))];
  const lower = wanted.map(() => new Float64Array(halfCount));
  /** Place in `wanted` of each upper bin, plus one; 0 for the bins that no share falls into. */
  const place = new Uint8Array(halfCount);
  wanted.forEach((bin, at) => (place[bin] = at + 1));
  for (let entry = 0; entry < values.length; entry++) {
    const key = keyOf(bits[entry]!);
    const at = place[key >>> halfBits]!;
    if (at === 0) continue;
    const weight = weights[entry]!;
    if (Number.isNaN(values[entry]) || !(weight > 0) || (take && take[entry] === 0)) continue;
    lower[at - 1]![key & (halfCount - 1)]! += weight;
  }
  const at = targets.map(({ bin, before, share }) => {
    const within = binAt(lower[place[bin]! - 1]!, share * wholeWeight - before);
    return valueOf(((bin << halfBits) | within.bin) >>> 0);
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

/** Unsigned numbers that sort as the values do: negative ones upside down and first. */
const keyOf = (bits: number): number => (bits & signBit ? ~bits : bits | signBit) >>> 0;

function valueOf(key: number): number {
  const bits = key & signBit ? key ^ signBit : ~key;
  return new Float32Array(Uint32Array.of(bits).buffer)[0]!;
}
