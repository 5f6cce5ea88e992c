/** The place where the bed pushes must be the place where the clamps act, as long as nothing else holds the mold. */
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { bedCurve } from '../../../src/core/closing/bedCurve';
import { bedReaction } from '../../../src/core/closing/bedReaction';
import { wovenBed } from '../../../src/core/closing/fiberBed';
import { tiltedBalance } from '../../../src/core/closing/tiltedBalance';
import { cup, histogramOf, plate } from '../../support/closingHands';
import { propertySeed } from '../../support/propertySeed';

const curve = bedCurve([{ bed: wovenBed, solidFiberMm: 0.6 / 1.77 }]);
const level = { standOffMm: 0, tiltURad: 0, tiltVRad: 0 };

test('a level plate of one wall pushes in its middle, with pressure times area', () => {
  const reaction = bedReaction(histogramOf(plate(80, 50, 8, () => 0.6)), level, curve);
  expect(reaction?.planMm[0]).toBeCloseTo(0, 9);
  expect(reaction?.planMm[1]).toBeCloseTo(0, 9);
  expect(reaction?.forceN).toBeGreaterThan(0);
});

test('a plate that is tight at one end pushes there', () => {
  const reaction = bedReaction(histogramOf(plate(80, 50, 8, (u) => (u > 0.5 ? 0.6 : 2))), level, curve);
  expect(reaction?.planMm[0]).toBeGreaterThan(20);
  expect(reaction?.planMm[1]).toBeCloseTo(0, 9);
});

test('nothing pushes where every wall is wider than the stack', () => {
  expect(bedReaction(histogramOf(plate(80, 50, 8, () => 2)), level, curve)).toBeNull();
});

test(`standing off on the laminate alone, bed and clamps have one line of action (seed ${propertySeed})`, () => {
  fc.assert(
    fc.property(
      fc.double({ min: -15, max: 15, noNaN: true }),
      fc.double({ min: -8, max: 8, noNaN: true }),
      fc.integer({ min: 200, max: 3000 }),
      (u, v, forceN) => {
        const histogram = histogramOf(cup(80, 50, 12, 20, 6, 0.6, 0.6));
        const solution = tiltedBalance({
          samples: histogram,
          curve,
          clamps: [{ forceN, atOpeningMm: 0, rateNPerMm: 0, planMm: [u, v] }],
          lands: null,
          halfSizeMm: histogram.frame.halfSizeMm,
          sealedAtMm: null,
        });
        expect(solution.outcome).toBe('stands off');
        const reaction = bedReaction(histogram, solution, curve);
        expect(reaction?.forceN).toBeCloseTo(forceN, 3);
        expect(reaction?.planMm[0]).toBeCloseTo(u, 3);
        expect(reaction?.planMm[1]).toBeCloseTo(v, 3);
      },
    ),
    { numRuns: 40 },
  );
});
