import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bedCurve,
  crushMPa,
  gapAtPressure,
  pressureAt,
  stiffnessAt,
} from '../../../src/core/closing/bedCurve';
import {
  alignedBed,
  bedPressurePa,
  bedSlopePa,
  bedThroughPoints,
  fractionAtPressure,
  wovenBed,
  type FiberBed,
} from '../../../src/core/closing/fiberBed';
import { propertySeed } from '../../support/propertySeed';

const beds: readonly (readonly [string, FiberBed])[] = [
  ['woven', wovenBed],
  ['aligned', alignedBed],
  [
    'two points',
    bedThroughPoints({ pressurePa: 2e4, fiberFraction: 0.48 }, { pressurePa: 1.5e5, fiberFraction: 0.55 }),
  ],
];

describe.each(beds)('fiber bed: %s', (_name, bed) => {
  test('meets zero at its unloaded fraction without a jump', () => {
    expect(bedPressurePa(bed, bed.unloadedFraction)).toBe(0);
    expect(bedPressurePa(bed, bed.unloadedFraction - 0.1)).toBe(0);
    expect(bedPressurePa(bed, bed.unloadedFraction * (1 + 1e-9))).toBeLessThan(1e-3);
  });

  test(`fraction and pressure undo each other (seed ${propertySeed})`, () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 2e7, noNaN: true }), (pressurePa) => {
        const back = bedPressurePa(bed, fractionAtPressure(bed, pressurePa));
        expect(Math.abs(back / pressurePa - 1)).toBeLessThan(1e-8);
      }),
    );
  });

  test('its slope is the slope of its pressure', () => {
    for (const rise of [0.02, 0.08, 0.2]) {
      const fraction = bed.unloadedFraction + rise;
      const step = 1e-6;
      const between =
        (bedPressurePa(bed, fraction + step) - bedPressurePa(bed, fraction - step)) / (2 * step);
      expect(bedSlopePa(bed, fraction) / between).toBeCloseTo(1, 6);
    }
  });

  test(`the table over the gap is the law itself, and falls (seed ${propertySeed})`, () => {
    const curve = bedCurve([{ bed, solidFiberMm: 0.34 }]);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const gap = curve.crushGapMm + share * (curve.unloadedGapMm - curve.crushGapMm);
        const wanted = 1e-6 * bedPressurePa(bed, 0.34 / gap);
        expect(Math.abs(pressureAt(curve, gap) - wanted)).toBeLessThanOrEqual(1e-8 * wanted + 1e-12);
        expect(stiffnessAt(curve, gap)).toBeGreaterThanOrEqual(0);
      }),
    );
    expect(pressureAt(curve, curve.unloadedGapMm)).toBe(0);
    expect(pressureAt(curve, 0)).toBeCloseTo(crushMPa, 9);
    expect(gapAtPressure(curve, 0.1)).toBeCloseTo(0.34 / fractionAtPressure(bed, 1e5), 9);
  });
});

test('two points are on the curve that they make', () => {
  const light = { pressurePa: 1e4, fiberFraction: 0.45 };
  const heavy = { pressurePa: 2e5, fiberFraction: 0.56 };
  const bed = bedThroughPoints(heavy, light);
  expect(bedPressurePa(bed, 0.45)).toBeCloseTo(1e4, 4);
  expect(bedPressurePa(bed, 0.56)).toBeCloseTo(2e5, 3);
});

test('two points that make no curve are told in a sentence', () => {
  const soft = { pressurePa: 1e4, fiberFraction: 0.5 };
  expect(() => bedThroughPoints(soft, { pressurePa: 2e4, fiberFraction: 0.45 })).toThrow(/stiffen/u);
  expect(() => bedThroughPoints(soft, { pressurePa: 1e4, fiberFraction: 0.55 })).toThrow(/two different/u);
  expect(() => bedThroughPoints(soft, { pressurePa: 5e4, fiberFraction: 1.2 })).toThrow(/5 to 90/u);
  expect(() => bedCurve([])).toThrow(/no fiber/u);
  expect(() => bedCurve([{ bed: wovenBed, solidFiberMm: -1 }])).toThrow(/no fiber/u);
});

test('in a mixed stack all plies carry the same pressure and their thicknesses add up', () => {
  const curve = bedCurve([
    { bed: wovenBed, solidFiberMm: 0.2 },
    { bed: alignedBed, solidFiberMm: 0.15 },
  ]);
  for (const pressurePa of [500, 2e4, 3e5, 5e6]) {
    const gap =
      0.2 / fractionAtPressure(wovenBed, pressurePa) + 0.15 / fractionAtPressure(alignedBed, pressurePa);
    expect(pressureAt(curve, gap) / (1e-6 * pressurePa)).toBeCloseTo(1, 7);
  }
  expect(curve.unloadedGapMm).toBeCloseTo(0.2 / 0.4 + 0.15 / 0.5, 12);
});

test('the scatter scales every pressure', () => {
  const layers = [{ bed: wovenBed, solidFiberMm: 0.34 }];
  expect(pressureAt(bedCurve(layers, 0.6), 0.65) / pressureAt(bedCurve(layers), 0.65)).toBeCloseTo(0.6, 8);
});
