import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaHistogram } from '../../src/core/mesh/areaHistogram';
import { propertySeed } from '../support/propertySeed';

/** Values and areas as a distribution. */
function distribution(entries: readonly (readonly [value: number, area: number])[]) {
  const sorted = [...entries].sort(([a], [b]) => a - b);
  let area = 0;
  return {
    values: Float64Array.from(sorted, ([value]) => value),
    cumulative: Float64Array.from(sorted, ([, own]) => (area += own)),
  };
}

describe('area histogram', () => {
  it('puts values on an edge into the bin above, and the last edge into the last bin', () => {
    const { values, cumulative } = distribution([
      [0, 1],
      [1, 2],
      [1.5, 4],
      [2, 8],
      [2.1, 16],
      [-0.1, 32],
    ]);
    const histogram = areaHistogram(values, cumulative, 0, 2, 2);
    expect(histogram.bins).toEqual([
      { from: 0, to: 1, areaMm2: 1 },
      { from: 1, to: 2, areaMm2: 14 },
    ]);
    expect(histogram.belowMm2).toBe(32);
    expect(histogram.aboveMm2).toBe(16);
  });

  it(`sums to the whole area whatever the range (seed ${propertySeed})`, () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: 0, max: 1000 }))),
        fc.integer({ min: -50, max: 50 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 30 }),
        (entries, from, width, binCount) => {
          const { values, cumulative } = distribution(entries);
          const { bins, belowMm2, aboveMm2, totalMm2 } = areaHistogram(
            values,
            cumulative,
            from,
            from + width,
            binCount,
          );
          const inBins = bins.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
          expect(inBins + belowMm2 + aboveMm2).toBe(totalMm2);
          expect(totalMm2).toBe(entries.reduce((sum, [, area]) => sum + area, 0));
          expect(bins.length).toBe(binCount);
        },
      ),
    );
  });

  it('refuses an empty range', () => {
    expect(() => areaHistogram([1], [1], 2, 2, 10)).toThrow('lower to a higher');
    expect(() => areaHistogram([1], [1], Number.NaN, 2, 10)).toThrow('lower to a higher');
  });
});
