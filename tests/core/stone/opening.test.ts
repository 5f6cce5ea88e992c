import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { liftToFreeMm, steepestDraftDeg } from '../../../src/core/stone/opening';
import { propertySeed } from '../../support/propertySeed';

const drafts = (...pieces: readonly (readonly [draftDeg: number, areaMm2: number])[]) => {
  let sum = 0;
  return {
    draftDeg: Float32Array.from(pieces, ([draft]) => draft),
    cumulativeAreaMm2: Float64Array.from(pieces, ([, areaMm2]) => (sum += areaMm2)),
  };
};

describe(`opening a mold that grips its part (seed ${propertySeed})`, () => {
  test('by hand: 0.078 mm at 2° of draft are free after 1.12 mm', () => {
    expect(liftToFreeMm(13e-6 * 50 * 120, 2)).toBeCloseTo(0.078 / (2 * 0.0349208), 4);
    expect(liftToFreeMm(-0.078, 2)).toBe(liftToFreeMm(0.078, 2));
  });

  test('two walls that lean outward stand a part apart exactly when it is lifted that far', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 300, noNaN: true }),
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        fc.double({ min: 0.2, max: 20, noNaN: true }),
        (lengthMm, mismatchMm, draftDeg) => {
          const perMm = Math.tan((draftDeg * Math.PI) / 180);
          const liftMm = liftToFreeMm(mismatchMm, draftDeg);
          // At any height the cavity is `mismatchMm` narrower than the part; lifted, the part sees it that much wider.
          const cavityMm = (heightMm: number) => lengthMm - mismatchMm + 2 * perMm * heightMm;
          expect(Math.abs(cavityMm(liftMm) - lengthMm)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  test('no draft and undercuts are told', () => {
    expect(() => liftToFreeMm(0.1, 0)).toThrow('rub all the way');
    expect(() => liftToFreeMm(0.1, -1)).toThrow('Give them draft');
  });

  test('the steepest walls count: not their crumbs, nor faces across the pull', () => {
    expect(steepestDraftDeg(drafts([0.5, 3], [2, 97], [90, 5000]))).toBe(2);
    expect(steepestDraftDeg(drafts([0.5, 10], [2, 90], [90, 5000]))).toBe(0.5);
    expect(steepestDraftDeg(drafts([90, 5000]))).toBeNull();
    expect(steepestDraftDeg(drafts())).toBeNull();
  });
});
