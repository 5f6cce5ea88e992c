/** Spring clamps lose their force while the mold leans; one that has lost all of it is not held by anything. */
import { expect, test } from 'vitest';
import { bedCurve } from '../../../src/core/closing/bedCurve';
import { wovenBed } from '../../../src/core/closing/fiberBed';
import { tiltedBalance } from '../../../src/core/closing/tiltedBalance';
import { histogramOf, plate } from '../../support/closingHands';

const samples = histogramOf(plate(120, 80, 12, () => 0.6));
const solve = (rateNPerMm: number, u: number, forceN = 1200) =>
  tiltedBalance({
    samples,
    curve: bedCurve([{ bed: wovenBed, solidFiberMm: 1.2 / 1.77 }]),
    clamps: [{ forceN, atOpeningMm: 0, rateNPerMm, planMm: [u, 0] }],
    lands: { outlineHalfMm: [70, 50], shimMm: 0 },
    halfSizeMm: [60, 40],
    sealedAtMm: null,
  });

test.each([0, 64])('clamps far outside tip the mold, with a spring rate of %d N/mm too', (rateNPerMm) => {
  expect(solve(rateNPerMm, 400).outcome).toBe('tips');
});

test('clamps over the part do not', () => {
  expect(solve(64, 10).outcome).not.toBe('tips');
});

test('clamps that press on nothing when shut do not tip it either', () => {
  expect(
    tiltedBalance({
      samples: histogramOf(plate(120, 80, 12, () => 5)),
      curve: bedCurve([{ bed: wovenBed, solidFiberMm: 1.2 / 1.77 }]),
      clamps: [{ forceN: 100, atOpeningMm: 50, rateNPerMm: 8, planMm: [0, 0] }],
      lands: { outlineHalfMm: [70, 50], shimMm: 0 },
      halfSizeMm: [60, 40],
      sealedAtMm: null,
    }).outcome,
  ).toBe('shut unloaded');
});
