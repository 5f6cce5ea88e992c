import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { invertPositiveDefinite } from '../../../src/core/numeric/invertPositiveDefinite';
import { Problem } from '../../../src/core/problem';
import { propertySeed } from '../../support/propertySeed';

describe(`inverse of a symmetric positive definite matrix (seed ${propertySeed})`, () => {
  test('a matrix worked by hand', () => {
    expect(invertPositiveDefinite([[4]])).toEqual([[0.25]]);
    const [first, second] = invertPositiveDefinite([
      [2, 1],
      [1, 2],
    ]) as [number[], number[]];
    expect(first[0]).toBeCloseTo(2 / 3, 14);
    expect(first[1]).toBeCloseTo(-1 / 3, 14);
    expect(second[0]).toBeCloseTo(-1 / 3, 14);
    expect(second[1]).toBeCloseTo(2 / 3, 14);
  });

  test('matrix times inverse is the unit matrix, for G Gᵀ + 1 of random G and very unlike scales', () => {
    const entry = fc.double({ min: -1, max: 1, noNaN: true });
    const grid = fc.array(fc.array(entry, { minLength: 6, maxLength: 6 }), { minLength: 6, maxLength: 6 });
    const exponents = fc.array(fc.integer({ min: -4, max: 4 }), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(grid, exponents, (g, powers) => {
        const matrix = g.map((row, i) =>
          g.map((other, j) => {
            const dot = row.reduce((sum, value, k) => sum + value * other[k]!, i === j ? 1 : 0);
            return dot * 10 ** (powers[i]! + powers[j]!);
          }),
        );
        const inverse = invertPositiveDefinite(matrix);
        matrix.forEach((row, i) =>
          row.forEach((_, j) => {
            const product = row.reduce((sum, value, k) => sum + value * inverse[k]![j]!, 0);
            const unscaled = product * 10 ** (powers[j]! - powers[i]!);
            expect(unscaled).toBeCloseTo(i === j ? 1 : 0, 10);
          }),
        );
      }),
    );
  });

  test.each([
    [
      'a direction that needs no work',
      [
        [1, 1],
        [1, 1],
      ],
    ],
    [
      'a direction that gives work',
      [
        [1, 2],
        [2, 1],
      ],
    ],
    ['a negative diagonal', [[-1]]],
    ['no number', [[Number.NaN]]],
  ])('refuses %s', (_what, matrix) => {
    expect(() => invertPositiveDefinite(matrix)).toThrow(Problem);
  });
});
