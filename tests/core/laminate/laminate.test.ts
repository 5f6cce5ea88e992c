import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pairWallsWithStacks, wallRescue, wantedPlies } from '../../../src/core/laminate/pairing';
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

describe('whole beads against whole plies', () => {
  // Three plies of the card fill 0.701 mm and hold 0.339 mm of fiber.
  const ply = {
    voidFreeMm: 0.23368,
    fiberMm: 0.11299,
    fiberGoMm: 0.11299 / 0.53,
    fiberLookMm: 0.11299 / 0.55,
  };
  const limits = {
    goVoidShare: 0.01,
    lookVoidShare: 0.025,
    badVoidShare: 0.05,
    toleranceMm: null,
    filmMm: 0,
  };
  const rows = pairWallsWithStacks(0.5, ply, limits, 8);

  test('three plies want 0.673 mm: one bead of 0.5 is too tight, one of 0.673 fits', () => {
    expect(rows[2]).toMatchObject({ plies: 3, beads: 1, wallMm: 0.5, word: 'stop', voidShare: 0 });
    expect(rows[2]?.wantedMm).toBeCloseTo(0.96 * 0.70104, 6);
    expect(rows[2]?.fiberFraction).toBeCloseTo(0.33897 / 0.5, 6);
    const narrow = pairWallsWithStacks(0.335, ply, limits, 3)[2];
    expect(narrow).toMatchObject({ beads: 2, word: 'go' });
    expect(narrow?.fittingBeadMm).toBeCloseTo(0.3365, 4);
  });

  test('what whole beads leave over is told as air or as fiber', () => {
    // Four plies want 0.897 mm; two beads of 0.5 are 1.0 against 0.935 that they fill.
    expect(rows[3]).toMatchObject({ beads: 2, word: 'stop' });
    expect(rows[3]?.voidShare).toBeCloseTo(1 - 0.93472, 5);
  });

  test('never fewer plies than fill a wall', () => {
    // 0.64 mm is a sound laminate of three plies; two would leave 27 % air.
    expect(wantedPlies(0.64, ply.voidFreeMm, 0.01)).toBe(3);
    expect(wantedPlies(0.8, ply.voidFreeMm, 0.01)).toBe(4);
    expect(wantedPlies(0.7, ply.voidFreeMm, 0.01)).toBe(3);
    expect(wantedPlies(0.708, ply.voidFreeMm, 0.01)).toBe(3);
    expect(wantedPlies(0.709, ply.voidFreeMm, 0.01)).toBe(4);
    expect(wantedPlies(0.05, ply.voidFreeMm, 0.01)).toBe(1);
  });

  test('a wall between two numbers of plies takes a thinner ply or a resin film', () => {
    const rescue = wallRescue(0.8, ply, { fiberGCm3: 1.77, resinGCm3: 1.2 }, limits);
    const missing = 0.8 / 0.96 - 3 * 0.23368;
    expect(rescue?.plies).toBe(3);
    expect(rescue?.missingMm).toBeCloseTo(missing, 9);
    expect(rescue?.filmGsm).toBeCloseTo(1200 * missing, 6);
    expect(rescue?.thinPlyGsm).toBeCloseTo(1770 * missing * (0.11299 / 0.23368), 6);
    expect(rescue?.filmFiberFraction).toBeCloseTo(0.33897 / 0.8, 6);
  });

  test(`the named plies fill the wall and one fewer would not (seed ${propertySeed})`, () => {
    const walls = fc.double({ min: 0.05, max: 4, noNaN: true });
    const thickness = fc.double({ min: 0.05, max: 1, noNaN: true });
    fc.assert(
      fc.property(walls, thickness, (wallMm, plyMm) => {
        const plies = wantedPlies(wallMm, plyMm, 0.01);
        expect(plies * plyMm).toBeGreaterThanOrEqual(0.99 * wallMm - 1e-6);
        if (plies > 1) expect((plies - 1) * plyMm).toBeLessThan(0.99 * wallMm + 1e-6);
      }),
    );
  });

  test('a width of nothing is refused', () => {
    expect(() => pairWallsWithStacks(0, ply, limits, 3)).toThrow(Problem);
  });
});
