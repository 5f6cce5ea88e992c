/**
 * The checksum that stands in every saved text: a flipped bit can leave valid JSON with another value in it.
 *
 * It is the 32-bit FNV-1a hash, taken over the UTF-16 units of the JSON text of everything beside it. For a given text
 * each step of it can be undone, so a change of one unit, wherever it is, never leaves the checksum as it was.
 */
import type { JsonObject } from './json';

const offsetBasis = 0x811c9dc5;
const prime = 0x01000193;

function checksumOf(value: JsonObject): string {
  const text = JSON.stringify(value);
  let hash = offsetBasis;
  for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), prime);
  return (hash >>> 0).toString(16).padStart(8, '0');
}

export function withChecksum<Value extends JsonObject>(value: Value): Value & { readonly checksum: string } {
  return { ...value, checksum: checksumOf(value) };
}

/** Whether a value is as it was saved. Texts of apps that wrote no checksum pass. */
export function checksumAgrees({ checksum, ...value }: JsonObject): boolean {
  return checksum === undefined || checksum === checksumOf(value);
}

/** Why a text is not taken, within a sentence. */
export const checksumReason = 'something in it was changed, its checksum does not agree';
