import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** What every runtime has of it, and pages only on a safe connection. */
interface Digests {
  digest(algorithm: 'SHA-256', bytes: Uint8Array<ArrayBuffer>): Promise<ArrayBuffer>;
}

/**
 * SHA-256 of the bytes in lower-case hex, by the platform's own code where the page may use it (it then runs beside
 * the reading of the file), else by plain code.
 */
export async function hashOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const { subtle } = (globalThis as { crypto?: { subtle?: Digests } }).crypto ?? {};
  if (subtle === undefined) return bytesToHex(sha256(bytes));
  return bytesToHex(new Uint8Array(await subtle.digest('SHA-256', bytes)));
}
