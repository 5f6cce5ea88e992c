import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { compensatedSum } from '../../../src/core/numeric/compensatedSum';
import { propertySeed } from '../../support/propertySeed';

test('keeps what a plain sum loses', () => {
  expect(compensatedSum([1, 1e100, 1, -1e100])).toBe(2);
  expect(compensatedSum(Array.from({ length: 10 }, () => 0.1))).toBe(1);
  expect(compensatedSum([])).toBe(0);
});

test(`whole numbers add up exactly in any order (seed ${propertySeed})`, () => {
  fc.assert(
    fc.property(fc.array(fc.integer()), (terms) => {
      const exact = terms.reduce((sum, term) => sum + BigInt(term), 0n);
      expect(compensatedSum(terms) + 0).toBe(Number(exact));
      expect(compensatedSum(terms.toReversed()) + 0).toBe(Number(exact));
    }),
  );
});
