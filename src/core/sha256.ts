/**
 * SHA-256 of bytes, synchronous (FIPS 180-4, section 6.2). The browser's own digest is asynchronous and missing
 * outside secure pages; the headless command and the worker need the same answer in the same place.
 */

/** First 32 bits of the fractional parts of the cube roots of the first 64 primes (FIPS 180-4, 4.2.2). */
const roundConstants = Int32Array.from([
  0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5, 0xd807aa98,
  0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786,
  0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da, 0x983e5152, 0xa831c66d, 0xb00327c8,
  0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13,
  0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85, 0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819,
  0xd6990624, 0xf40e3585, 0x106aa070, 0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a,
  0x5b9cca4f, 0x682e6ff3, 0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7,
  0xc67178f2,
]);

const initialState = [
  0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19,
];

/** Mixes the 64-byte block at `from` into `state`; `schedule` is 64 words of scratch. */
function mixBlock(state: Int32Array, bytes: Uint8Array, from: number, schedule: Int32Array): void {
  for (let i = 0; i < 16; i++) {
    const at = from + 4 * i;
    schedule[i] = (bytes[at]! << 24) | (bytes[at + 1]! << 16) | (bytes[at + 2]! << 8) | bytes[at + 3]!;
  }
  for (let i = 16; i < 64; i++) {
    const w2 = schedule[i - 2]!;
    const w15 = schedule[i - 15]!;
    const sigma1 = ((w2 >>> 17) | (w2 << 15)) ^ ((w2 >>> 19) | (w2 << 13)) ^ (w2 >>> 10);
    const sigma0 = ((w15 >>> 7) | (w15 << 25)) ^ ((w15 >>> 18) | (w15 << 14)) ^ (w15 >>> 3);
    schedule[i] = (sigma1 + schedule[i - 7]! + sigma0 + schedule[i - 16]!) | 0;
  }
  let a = state[0]!;
  let b = state[1]!;
  let c = state[2]!;
  let d = state[3]!;
  let e = state[4]!;
  let f = state[5]!;
  let g = state[6]!;
  let h = state[7]!;
  for (let i = 0; i < 64; i++) {
    const sum1 = ((e >>> 6) | (e << 26)) ^ ((e >>> 11) | (e << 21)) ^ ((e >>> 25) | (e << 7));
    const t1 = (h + sum1 + ((e & f) ^ (~e & g)) + roundConstants[i]! + schedule[i]!) | 0;
    const sum0 = ((a >>> 2) | (a << 30)) ^ ((a >>> 13) | (a << 19)) ^ ((a >>> 22) | (a << 10));
    const t2 = (sum0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + t2) | 0;
  }
  state[0] = state[0]! + a;
  state[1] = state[1]! + b;
  state[2] = state[2]! + c;
  state[3] = state[3]! + d;
  state[4] = state[4]! + e;
  state[5] = state[5]! + f;
  state[6] = state[6]! + g;
  state[7] = state[7]! + h;
}

/** Lower-case hex, 64 characters. */
export function sha256(bytes: Uint8Array): string {
  const state = Int32Array.from(initialState);
  const schedule = new Int32Array(64);
  const whole = bytes.length - (bytes.length % 64);
  for (let from = 0; from < whole; from += 64) mixBlock(state, bytes, from, schedule);

  const rest = bytes.length - whole;
  const tail = new Uint8Array(rest < 56 ? 64 : 128);
  tail.set(bytes.subarray(whole));
  tail[rest] = 0x80;
  const lengthField = new DataView(tail.buffer, tail.length - 8);
  lengthField.setUint32(0, Math.floor(bytes.length / 0x2000_0000));
  lengthField.setUint32(4, (bytes.length * 8) >>> 0);
  for (let from = 0; from < tail.length; from += 64) mixBlock(state, tail, from, schedule);
  return Array.from(state, (word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
}
