import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distribute, quantile } from '../../../src/core/mesh/quantiles';
import { selectQuantiles } from '../../../src/core/mesh/selectQuantiles';
import { propertySeed } from '../../support/propertySeed';

const shares = [0, 0.05, 0.5, 0.95, 1];

describe(`quantiles without sorting, seed ${propertySeed}`, () => {
  it('are those of the sorted distribution', () => {
    const value = fc.oneof(
      fc.float({ noDefaultInfinity: true }),
      fc.integer({ min: -3, max: 3 }),
      fc.constant(NaN),
    );
    // Whole weights sum without rounding, so that both reach a share at the same entry.
    const entry = fc.tuple(value, fc.integer({ min: 0, max: 1000 }), fc.boolean());
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 200 }), (entries) => {
        const values = Float32Array.from(entries, ([one]) => one + 0);
        const weights = Float32Array.from(entries, ([, weight]) => weight);
        const take = Uint8Array.from(entries, ([, , taken]) => Number(taken));
        const sorted = distribute(values, weights, take);
        const { at, min, max, wholeWeight } = selectQuantiles(values, weights, shares, take);
        expect(at).toEqual(shares.map((share) => quantile(sorted, share)));
        expect(min).toBe(sorted.values[0] ?? null);
        expect(max).toBe(sorted.values.at(-1) ?? null);
        expect(wholeWeight).toBe(sorted.cumulativeWeight.at(-1) ?? 0);
      }),
      { seed: propertySeed },
    );
  });
});
