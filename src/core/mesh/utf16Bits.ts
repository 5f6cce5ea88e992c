/**
 * Bytes as text for localStorage, which counts UTF-16 units: 15 bits per unit, in U+0100 to U+80FF. That range holds
 * no control characters and no surrogates, so every store and file encoding keeps it unchanged.
 */
import { Problem } from '../problem';

const firstUnit = 0x0100;
const lastUnit = 0x80ff;
/** Units turned into text at a time; bounded by how many arguments a call may take. */
const unitsPerCall = 8192;

/** Units that `byteCount` bytes take. */
export function unitsFor(byteCount: number): number {
  return Math.ceil((8 * byteCount) / 15);
}

export function bytesToUnits(bytes: Uint8Array): string {
  const units = new Uint16Array(unitsFor(bytes.length));
  let held = 0;
  let heldBits = 0;
  let next = 0;
  for (const byte of bytes) {
    held = (held << 8) | byte;
    heldBits += 8;
    if (heldBits >= 15) {
      heldBits -= 15;
      units[next++] = firstUnit + (held >>> heldBits);
      held &= (1 << heldBits) - 1;
    }
  }
  if (heldBits > 0) units[next] = firstUnit + (held << (15 - heldBits));
  const parts: string[] = [];
  for (let i = 0; i < units.length; i += unitsPerCall) {
    parts.push(String.fromCharCode(...units.subarray(i, i + unitsPerCall)));
  }
  return parts.join('');
}

/**
 * @param from first unit to read
 * @throws Problem `pack.damaged` when a unit outside the range stands in the text
 */
export function unitsToBytes(text: string, from: number): Uint8Array {
  const bytes = new Uint8Array(Math.floor((15 * (text.length - from)) / 8));
  let held = 0;
  let heldBits = 0;
  let next = 0;
  for (let i = from; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    if (unit < firstUnit || unit > lastUnit) {
      throw new Problem(
        'pack.damaged',
        'The saved model is damaged: it holds characters that do not belong there.',
      );
    }
    held = (held << 15) | (unit - firstUnit);
    heldBits += 15;
    while (heldBits >= 8) {
      heldBits -= 8;
      bytes[next++] = held >>> heldBits;
      held &= (1 << heldBits) - 1;
    }
  }
  return bytes;
}
