/** The digest against its standard's own examples (FIPS 180-2, appendix B) and against Node's digest. */
import { createHash } from 'node:crypto';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { propertySeed } from '../support/propertySeed';

const ascii = (text: string) => new TextEncoder().encode(text);

test.each([
  ['one block', ascii('abc'), 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'two blocks',
    ascii('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq'),
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  [
    'a million letters',
    ascii('a'.repeat(1_000_000)),
    'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0',
  ],
])('%s', (_name, bytes, digest) => {
  expect(bytesToHex(sha256(bytes))).toBe(digest);
});

test(`agrees with the runtime at every length round the block edges (seed ${propertySeed})`, () => {
  fc.assert(
    fc.property(fc.uint8Array({ minLength: 0, maxLength: 200 }), (bytes) => {
      expect(bytesToHex(sha256(bytes))).toBe(createHash('sha256').update(bytes).digest('hex'));
    }),
  );
});
