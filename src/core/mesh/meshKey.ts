/** The name of a saved mesh. Apart from the codecs, so that those who only compare names need not load them. */
import { sha256Hex } from '../sha256';

/** Name of the packed mesh by its content, 32 hexadecimal digits. */
export function meshKey(packed: string): string {
  const units = Uint16Array.from({ length: packed.length }, (_, i) => packed.charCodeAt(i));
  return sha256Hex(new Uint8Array(units.buffer)).slice(0, 32);
}
