/** The name of a saved mesh. Apart from the codecs, so that those who only compare names need not load them. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** Name of the packed mesh by its content, 32 hexadecimal digits. */
export function meshKey(packed: string): string {
  const units = Uint16Array.from({ length: packed.length }, (_, i) => packed.charCodeAt(i));
  return bytesToHex(sha256(new Uint8Array(units.buffer))).slice(0, 32);
}
