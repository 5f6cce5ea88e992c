import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exactPairMm, nearestPlies, pairWallsWithStacks } from '../../../src/core/laminate/pairing';
import {
  curedThicknessMm,
  fiberFractionInGap,
  fiberVolumeFraction,
  laidPlyThicknessMm,
  prepregArealMassGsm,
  type PlyMaterial,
} from '../../../src/core/laminate/plyThickness';
import { stackThickness } from '../../../src/core/laminate/stackThickness';
import { Problem } from '../../../src/core/problem';
import { propertySeed } from '../../support/propertySeed';

const twill: PlyMaterial = {
  arealWeightGsm: 200,
  fiberDensityGCm3: 1.77,
  resinDensityGCm3: 1.2,
  resinMassFraction: 0.42,
  laidThicknessMm: 0.3,
};

const anyCard = fc.record({
  arealWeightGsm: fc.double({ min: 50, max: 800, noNaN: true }),
  fiberDensityGCm3: fc.double({ min: 1.2, max: 2.7, noNaN: true }),
  resinDensityGCm3: fc.double({ min: 1, max: 1.4, noNaN: true }),
  resinMassFraction: fc.double({ min: 0.2, max: 0.7, noNaN: true }),
  laidThicknessMm: fc.constant(null),
});

describe('one ply', () => {
  test(`the cured thickness is the volume of fiber plus the volume of resin per area (seed ${propertySeed})`, () => {
    fc.assert(
      fc.property(anyCard, (card) => {
        const resinGsm = prepregArealMassGsm(card) - card.arealWeightGsm;
        const volumeMm =
          (card.arealWeightGsm / card.fiberDensityGCm3 + resinGsm / card.resinDensityGCm3) / 1000;
        expect(curedThicknessMm(card)).toBeCloseTo(volumeMm, 10);
      }),
    );
  });

  test(`plies in a gap of their own cured thickness have the fiber fraction of the card (seed ${propertySeed})`, () => {
    fc.assert(
      fc.property(anyCard, fc.integer({ min: 1, max: 12 }), (card, plies) => {
        const gapMm = plies * curedThicknessMm(card);
        const inGap = fiberFractionInGap(plies * card.arealWeightGsm, card.fiberDensityGCm3, gapMm);
        expect(inGap).toBeCloseTo(fiberVolumeFraction(card), 10);
      }),
    );
  });

  test('a caliper value replaces the bulk factor', () => {
    expect(laidPlyThicknessMm(twill, 1.3)).toBe(0.3);
    const unmeasured = { ...twill, laidThicknessMm: null };
    expect(laidPlyThicknessMm(unmeasured, 1.3)).toBeCloseTo(1.3 * curedThicknessMm(twill), 12);
  });

  test.each([0, 1, -0.1, Number.NaN])('a resin fraction of %s is refused', (resinMassFraction) => {
    expect(() => fiberVolumeFraction({ ...twill, resinMassFraction })).toThrow(Problem);
  });

  test('a gap or density of nothing is refused', () => {
    expect(() => fiberFractionInGap(600, 1.77, 0)).toThrow('gap');
    expect(() => fiberVolumeFraction({ ...twill, fiberDensityGCm3: 0 })).toThrow('fiber density');
  });
});

describe('a stack', () => {
  test('three measured plies of 0.3 mm are 0.9 mm as laid', () => {
    const stack = stackThickness([twill, twill, twill], 1.3);
    expect(stack.laidMm).toBeCloseTo(0.9, 12);
    expect(stack.curedMm).toBeCloseTo(3 * curedThicknessMm(twill), 12);
    expect(stack.fiberGsm).toBe(600);
    expect(stack.arealMassGsm).toBeCloseTo(600 / 0.58, 9);
  });

  test('no plies have no thickness', () => {
    expect(stackThickness([], 1.3)).toEqual({
      plies: 0,
      laidMm: 0,
      curedMm: 0,
      arealMassGsm: 0,
      fiberGsm: 0,
    });
  });
});

describe('pairing of printed lines with plies', () => {
  const rows = pairWallsWithStacks(0.5, 0.3, 6);

  test('2 lines and 3 plies: 1.0 against 0.9 mm, 0.1 mm apart, the nearest for two lines', () => {
    const row = rows.find(({ lines, plies }) => lines === 2 && plies === 3);
    expect(row).toMatchObject({ nearest: true, exact: false });
    expect(row?.wallMm).toBeCloseTo(1, 12);
    expect(row?.stackMm).toBeCloseTo(0.9, 12);
    expect(row?.mismatchMm).toBeCloseTo(0.1, 12);
  });

  test('3 lines and 5 plies are exact, and stand alone', () => {
    const three = rows.filter(({ lines }) => lines === 3);
    expect(three).toHaveLength(1);
    expect(three[0]).toMatchObject({ plies: 5, exact: true, nearest: true });
  });

  test('a tie marks the fuller stack', () => {
    expect(nearestPlies(0.75, 0.5)).toBe(2);
    expect(nearestPlies(0.45, 0.3)).toBe(2);
  });

  test('a wall thinner than half a ply still gets one ply', () => {
    expect(nearestPlies(0.1, 0.3)).toBe(1);
    expect(pairWallsWithStacks(0.1, 0.3, 1)).toMatchObject([{ plies: 1, nearest: true }]);
  });

  test(`each number of lines has one nearest row and no other ply count comes nearer (seed ${propertySeed})`, () => {
    const widths = fc.double({ min: 0.1, max: 2, noNaN: true });
    const plies = fc.double({ min: 0.05, max: 1, noNaN: true });
    fc.assert(
      fc.property(widths, plies, (lineWidthMm, plyMm) => {
        const table = pairWallsWithStacks(lineWidthMm, plyMm, 8);
        for (let lines = 1; lines <= 8; lines++) {
          const nearest = table.filter((row) => row.lines === lines && row.nearest);
          expect(nearest).toHaveLength(1);
          const gap = Math.abs(nearest[0]?.mismatchMm ?? Number.NaN);
          for (let count = 1; count <= 400; count++)
            expect(gap).toBeLessThanOrEqual(
              Math.abs(lines * lineWidthMm - count * plyMm) + exactPairMm / 100,
            );
        }
      }),
      { numRuns: 30 },
    );
  });

  test('a width of nothing is refused', () => {
    expect(() => pairWallsWithStacks(0, 0.3, 3)).toThrow(Problem);
  });
});
