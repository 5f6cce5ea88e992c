const zero = 0x30;
const nine = 0x39;
const point = 0x2e;
const comma = 0x2c;
const minus = 0x2d;
const plus = 0x2b;
/** Up to here another digit still fits a float64 integer exactly. */
const mantissaRoom = 9e14;
/** Powers of ten that float64 holds exactly. */
const exactPowers = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
/** Tokens up to this length are handed to the platform when the quick way would round twice. */
const longestForPlatform = 64;

/**
 * Reads decimal numbers straight from bytes, correctly rounded; numbers with more digits than any drawing has are read
 * to about 15 digits, in time linear in their length.
 */
export class DecimalReader {
  /** A comma stood where the decimal point belongs. */
  sawComma = false;

  /** The number between two offsets; NaN when the bytes are not one number ("nan" and "inf" included). */
  read(bytes: Uint8Array, start: number, end: number): number {
    let at = start;
    let negative = false;
    if (bytes[at] === minus || bytes[at] === plus) negative = bytes[at++] === minus;
    let mantissa = 0;
    let power = 0;
    let digits = 0;
    let cutOff = false;
    let afterPoint = false;
    for (; at < end; at++) {
      const byte = bytes[at]!;
      if (byte >= zero && byte <= nine) {
        digits++;
        if (mantissa < mantissaRoom) {
          mantissa = mantissa * 10 + (byte - zero);
          if (afterPoint) power--;
        } else {
          if (!afterPoint) power++;
          if (byte !== zero) cutOff = true;
        }
      } else if ((byte === point || byte === comma) && !afterPoint) {
        afterPoint = true;
        if (byte === comma) this.sawComma = true;
      } else {
        break;
      }
    }
    if (digits === 0) return NaN;
    if (at < end) {
      if ((bytes[at]! | 0x20) !== 0x65) return NaN;
      const exponent = readExponent(bytes, at + 1, end);
      if (Number.isNaN(exponent)) return NaN;
      power += exponent;
    }
    if (mantissa === 0) return 0;
    if ((cutOff || Math.abs(power) > 22) && end - start <= longestForPlatform) {
      return Number(String.fromCharCode(...bytes.subarray(start, end)).replace(',', '.'));
    }
    const size =
      Math.abs(power) <= 22
        ? power < 0
          ? mantissa / exactPowers[-power]!
          : mantissa * exactPowers[power]!
        : mantissa * 10 ** power;
    return negative ? -size : size;
  }
}

/** Integer exponent, held to a size that is far beyond every float64; NaN when it is not an integer. */
function readExponent(bytes: Uint8Array, start: number, end: number): number {
  let at = start;
  let negative = false;
  if (bytes[at] === minus || bytes[at] === plus) negative = bytes[at++] === minus;
  if (at >= end) return NaN;
  let size = 0;
  for (; at < end; at++) {
    const byte = bytes[at]!;
    if (byte < zero || byte > nine) return NaN;
    if (size < 100_000) size = size * 10 + (byte - zero);
  }
  return negative ? -size : size;
}
