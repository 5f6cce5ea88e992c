import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { bytesToUnits, unitsFor, unitsToBytes } from '../../../src/core/mesh/utf16Bits';

test('all 32,768 units stand for themselves, none of them a control character or a surrogate', () => {
  // 15 bits of every value in turn, written as one run of bits.
  const bits = Array.from({ length: 2 ** 15 }, (_, value) => value.toString(2).padStart(15, '0')).join('');
  const bytes = Uint8Array.from({ length: bits.length / 8 }, (_, i) =>
    Number.parseInt(bits.slice(8 * i, 8 * i + 8), 2),
  );
  const text = bytesToUnits(bytes);
  expect(text.length).toBe(2 ** 15);
  for (let value = 0; value < 2 ** 15; value++) expect(text.charCodeAt(value)).toBe(0x0100 + value);
  expect(unitsToBytes(text, 0)).toEqual(bytes);
  expect(new TextDecoder().decode(new TextEncoder().encode(text))).toBe(text);
});

test('any bytes come back, with at most one byte of filling behind', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      const text = bytesToUnits(bytes);
      expect(text.length).toBe(unitsFor(bytes.length));
      const back = unitsToBytes(text, 0);
      expect(back.length - bytes.length).toBeLessThanOrEqual(1);
      expect(back.subarray(0, bytes.length)).toEqual(bytes);
    }),
  );
});

test('a unit outside the range is refused', () => {
  for (const text of ['\u00ff', '\u8100', 'ÿ', '\u0100A'])
    expect(() => unitsToBytes(text, 0)).toThrow('damaged');
});
