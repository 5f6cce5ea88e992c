/**
 * SHA-256 in plain TypeScript: the browser's own is asynchronous and absent on pages served without encryption.
 *
 * Source: NIST FIPS PUB 180-4, Secure Hash Standard (2015), sections 4.1.2, 4.2.2, 5.1.1, 5.3.3 and 6.2.2.
 */

const blockBytes = 64;

/** First 32 bits of the fractional part of a root, as the standard draws its constants from the first primes. */
function fractionBits(root: number): number {
  return ((root - Math.floor(root)) * 2 ** 32) | 0;
}

function firstPrimes(count: number): number[] {
  const primes: number[] = [];
  for (let n = 2; primes.length < count; n++) if (primes.every((prime) => n % prime !== 0)) primes.push(n);
  return primes;
}

const roundConstants = Int32Array.from(firstPrimes(64), (prime) => fractionBits(Math.cbrt(prime)));
const startState = Int32Array.from(firstPrimes(8), (prime) => fractionBits(Math.sqrt(prime)));

/** SHA-256 of the bytes, as 64 lower-case hexadecimal digits. */
export function sha256Hex(bytes: Uint8Array): string {
  return [...sha256(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** SHA-256 of the bytes, 32 bytes. */
export function sha256(bytes: Uint8Array): Uint8Array {
  const state = startState.slice();
  const schedule = new Int32Array(64);
  const wholeBytes = bytes.length - (bytes.length % blockBytes);
  for (let at = 0; at < wholeBytes; at += blockBytes) addBlock(state, schedule, bytes, at);
  const tail = paddedTail(bytes, wholeBytes);
  for (let at = 0; at < tail.length; at += blockBytes) addBlock(state, schedule, tail, at);
  const digest = new Uint8Array(32);
  const view = new DataView(digest.buffer);
  state.forEach((word, i) => view.setInt32(4 * i, word));
  return digest;
}

/** What is left after the whole blocks, then a one bit, zeros, and the length in bits as 64-bit number. */
function paddedTail(bytes: Uint8Array, from: number): Uint8Array {
  const left = bytes.length - from;
  const tail = new Uint8Array(left + 9 > blockBytes ? 2 * blockBytes : blockBytes);
  tail.set(bytes.subarray(from));
  tail[left] = 0x80;
  const view = new DataView(tail.buffer);
  view.setUint32(tail.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(tail.length - 4, (bytes.length * 8) >>> 0);
  return tail;
}

function addBlock(state: Int32Array, w: Int32Array, bytes: Uint8Array, at: number): void {
  for (let t = 0; t < 16; t++) {
    const i = at + 4 * t;
    w[t] =
      ((bytes[i] as number) << 24) |
      ((bytes[i + 1] as number) << 16) |
      ((bytes[i + 2] as number) << 8) |
      (bytes[i + 3] as number);
  }
  for (let t = 16; t < 64; t++) {
    const x = w[t - 15] as number;
    const y = w[t - 2] as number;
    const s0 = ((x >>> 7) | (x << 25)) ^ ((x >>> 18) | (x << 14)) ^ (x >>> 3);
    const s1 = ((y >>> 17) | (y << 15)) ^ ((y >>> 19) | (y << 13)) ^ (y >>> 10);
    w[t] = ((w[t - 16] as number) + s0 + (w[t - 7] as number) + s1) | 0;
  }
  let a = state[0] as number;
  let b = state[1] as number;
  let c = state[2] as number;
  let d = state[3] as number;
  let e = state[4] as number;
  let f = state[5] as number;
  let g = state[6] as number;
  let h = state[7] as number;
  for (let t = 0; t < 64; t++) {
    const sum1 = ((e >>> 6) | (e << 26)) ^ ((e >>> 11) | (e << 21)) ^ ((e >>> 25) | (e << 7));
    const choice = (e & f) ^ (~e & g);
    const t1 = (h + sum1 + choice + (roundConstants[t] as number) + (w[t] as number)) | 0;
    const sum0 = ((a >>> 2) | (a << 30)) ^ ((a >>> 13) | (a << 19)) ^ ((a >>> 22) | (a << 10));
    const majority = (a & b) ^ (a & c) ^ (b & c);
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + sum0 + majority) | 0;
  }
  const words = [a, b, c, d, e, f, g, h];
  for (let i = 0; i < 8; i++) state[i] = ((state[i] as number) + (words[i] as number)) | 0;
}
