import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distribute, quantile, wallQuantiles } from '../../../src/core/mesh/quantiles';
import { sortByValue } from '../../../src/core/mesh/sortByValue';
import { propertySeed } from '../../support/propertySeed';

describe(`quantiles (seed ${propertySeed})`, () => {
  it('are the smallest value whose weight reaches the share', () => {
    const walls = distribute(Float32Array.of(3, 1, 2, NaN), Float32Array.of(1, 2, 1, 9));
    expect([...walls.values]).toEqual([1, 2, 3]);
    expect([...walls.cumulativeWeight]).toEqual([2, 3, 4]);
    expect(quantile(walls, 0.05)).toBe(1);
    expect(quantile(walls, 0.5)).toBe(1);
    expect(quantile(walls, 0.51)).toBe(2);
    expect(quantile(walls, 0.75)).toBe(2);
    expect(quantile(walls, 1)).toBe(3);
    expect(wallQuantiles(walls, 13)).toEqual({ p5: 1, median: 1, p95: 3, min: 1, max: 3, hitShare: 4 / 13 });
  });

  it('are null, not NaN, when nothing was hit', () => {
    const none = distribute(Float32Array.of(NaN), Float32Array.of(1));
    expect(wallQuantiles(none, 1)).toEqual({
      p5: null,
      median: null,
      p95: null,
      min: null,
      max: null,
      hitShare: 0,
    });
  });

  it('leave out what is not asked for and what has no weight', () => {
    const walls = distribute(Float32Array.of(1, 2, 3), Float32Array.of(1, 0, 1), Uint8Array.of(0, 1, 1));
    expect([...walls.values]).toEqual([3]);
  });

  it('sort any values as a comparison would, and keep the order of equal ones', () => {
    fc.assert(
      fc.property(fc.array(fc.float()), (numbers) => {
        const values = Float32Array.from(numbers);
        const weights = values.map((_, entry) => entry + 1);
        const expected = [...values.keys()]
          .filter((entry) => !Number.isNaN(values[entry]))
          .sort((a, b) => {
            const [one, other] = [values[a]!, values[b]!];
            if (one !== other) return one - other;
            return Object.is(one, other) ? a - b : Object.is(one, -0) ? -1 : 1;
          });
        const sorted = sortByValue(values, weights);
        expect([...sorted.values]).toEqual(expected.map((entry) => values[entry]));
        expect([...sorted.weights]).toEqual(expected.map((entry) => entry + 1));
      }),
    );
  });
});
