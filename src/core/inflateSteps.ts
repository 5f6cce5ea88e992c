import { Inflate } from 'fflate';

/** Bytes handed to the inflater at once; a block of blanks grows a thousandfold, so this bounds one step. */
const stepBytes = 1 << 14;

/**
 * Inflates a little at a time, so that what grows too much is stopped before it fills the memory. What a packing says of its
 * own size is never believed.
 * @param onGrowth told the bytes just added and all so far; stops by throwing
 * @returns null when the packing breaks off
 * @throws what `onGrowth` throws, and an error of the inflater's own for bytes that are no packing
 */
export function inflateSteps(
  packed: Uint8Array,
  onGrowth: (addedBytes: number, wholeBytes: number) => void,
): Uint8Array | null {
  const chunks: Uint8Array[] = [];
  let wholeBytes = 0;
  let done = false;
  const inflater = new Inflate((chunk, final) => {
    wholeBytes += chunk.length;
    onGrowth(chunk.length, wholeBytes);
    chunks.push(chunk);
    done = final;
  });
  for (let at = 0; at < packed.length; at += stepBytes)
    inflater.push(packed.subarray(at, at + stepBytes), at + stepBytes >= packed.length);
  if (!done) return null;
  const whole = new Uint8Array(wholeBytes);
  let to = 0;
  for (const chunk of chunks) {
    whole.set(chunk, to);
    to += chunk.length;
  }
  return whole;
}
