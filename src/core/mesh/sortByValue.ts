import { bitsOf, isNanBits, keyOfBits } from './floatKeys';

const digitBits = 11;
const digitCount = 1 << digitBits;
const digitMask = digitCount - 1;
/** Turned over, keys sort as if they had no sign. */
const signBit = 1 << 31;
const shifts = [0, digitBits, 2 * digitBits] as const;

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
  const valueBits = bitsOf(values);
  const weightBits = bitsOf(weights);
  let keys = new Int32Array(values.length);
  let carried = new Int32Array(values.length);
  /** How many keys have each digit, for the three digits in turn. */
  const counts = new Int32Array(shifts.length * digitCount);
  let count = 0;
  for (let entry = 0; entry < valueBits.length; entry++) {
    const bits = valueBits[entry]!;
    if (isNanBits(bits) || !(weights[entry]! > 0) || (take && take[entry] === 0)) continue;
    const key = keyOfBits(bits) ^ signBit;
    keys[count] = key;
    carried[count++] = weightBits[entry]!;
    const low = key & digitMask;
    const middle = digitCount + ((key >>> digitBits) & digitMask);
    const high = 2 * digitCount + (key >>> (2 * digitBits));
    counts[low] = counts[low]! + 1;
    counts[middle] = counts[middle]! + 1;
    counts[high] = counts[high]! + 1;
  }
  let nextKeys = new Int32Array(count);
  let nextCarried = new Int32Array(count);
  for (const [pass, shift] of shifts.entries()) {
    const starts = counts.subarray(pass * digitCount, (pass + 1) * digitCount);
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
  for (let i = 0; i < count; i++) keys[i] = keyOfBits(keys[i]! ^ signBit);
  return {
    values: new Float32Array(keys.buffer, 0, count).slice(),
    weights: new Float32Array(carried.buffer, 0, count).slice(),
  };
}
