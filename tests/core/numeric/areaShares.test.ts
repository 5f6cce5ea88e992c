import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areaShares } from '../../../src/core/numeric/areaShares';
import { propertySeed } from '../../support/propertySeed';

const walls = Float32Array.of(0.5, 0.8, 0.8, 1.2);
const areas = Float64Array.of(10, 30, 60, 100);

describe('area shares', () => {
  test('by hand: 10 under, 50 within, 40 over', () => {
    expect(areaShares(walls, areas, 0.6, 1)).toEqual({ under: 0.1, within: 0.5, over: 0.4 });
  });

  test('a wall exactly at a limit is within, although the limit is no single-precision number', () => {
    expect(areaShares(walls, areas, 0.8, 0.8)).toEqual({ under: 0.1, within: 0.5, over: 0.4 });
    expect(areaShares(walls, areas, 0.5, 1.2)).toEqual({ under: 0, within: 1, over: 0 });
  });

  test('no area, no shares', () => {
    expect(areaShares(new Float32Array(0), new Float64Array(0), 0, 1)).toBeNull();
    expect(areaShares(Float32Array.of(1), Float64Array.of(0), 0, 1)).toBeNull();
  });

  test(`agrees with counting one by one, and adds up to all of it (seed ${propertySeed})`, () => {
    const piece = fc.tuple(
      fc.float({ min: 0, max: 5, noNaN: true }),
      fc.double({ min: 0.01, max: 100, noNaN: true }),
    );
    const limit = fc.double({ min: 0, max: 5, noNaN: true });
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1 }), limit, limit, (pieces, one, other) => {
        const [low, high] = one < other ? [one, other] : [other, one];
        const sorted = pieces.toSorted((a, b) => a[0] - b[0]);
        let sum = 0;
        const cumulative = Float64Array.from(sorted, ([, area]) => (sum += area));
        const shares = areaShares(
          Float32Array.from(sorted, ([wall]) => wall),
          cumulative,
          low,
          high,
        );
        const underArea = sorted
          .filter(([wall]) => wall < Math.fround(low))
          .reduce((total, [, area]) => total + area, 0);
        expect(shares?.under).toBeCloseTo(underArea / sum, 9);
        expect((shares?.under ?? 0) + (shares?.within ?? 0) + (shares?.over ?? 0)).toBeCloseTo(1, 9);
        expect(
          Math.min(shares?.under ?? -1, shares?.within ?? -1, shares?.over ?? -1),
        ).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
