/**
 * 32-bit floats as whole numbers that sort as the floats do. Signed ones throughout: whole numbers above 2^31 are floats
 * to a JavaScript engine, and loops over them took twice as long.
 */
const belowSign = 0x7fff_ffff;
const infinityBits = 0x7f80_0000;

/** The bits of `values`, which lie in the same memory. */
export function bitsOf(values: Float32Array): Int32Array {
  return new Int32Array(values.buffer, values.byteOffset, values.length);
}

export const isNanBits = (bits: number): boolean => (bits & belowSign) > infinityBits;

/** Key of the float with these bits, and the bits of the float with this key: negative ones are turned upside down. */
export const keyOfBits = (bits: number): number => bits ^ ((bits >> 31) & belowSign);
