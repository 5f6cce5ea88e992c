import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contentAfterBleed, weighedOffcut } from '../../../src/core/laminate/bleedAndVoids';
import { outTime } from '../../../src/core/laminate/outTime';
import { partMass } from '../../../src/core/laminate/partMass';
import {
  curedThicknessMm,
  fiberVolumeFraction,
  laminateDensityGCm3,
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
const three = [twill, twill, twill];

const arbitraryPlies = fc.array(
  fc.record({
    arealWeightGsm: fc.double({ min: 50, max: 800, noNaN: true }),
    fiberDensityGCm3: fc.double({ min: 1.2, max: 2.7, noNaN: true }),
    resinDensityGCm3: fc.double({ min: 1, max: 1.4, noNaN: true }),
    resinMassFraction: fc.double({ min: 0.2, max: 0.7, noNaN: true }),
    laidThicknessMm: fc.constant(null),
  }),
  { minLength: 1, maxLength: 6 },
);
const share = (max: number) => fc.double({ min: 0, max, noNaN: true });

describe(`resin lost and voids (seed ${propertySeed})`, () => {
  test('without either, it is the card: thickness, fiber fraction, density', () => {
    const content = contentAfterBleed(three, 0, 0);
    const fraction = fiberVolumeFraction(twill);
    expect(content.thicknessMm).toBeCloseTo(3 * curedThicknessMm(twill), 12);
    expect(content.fiberVolumeFraction).toBeCloseTo(fraction, 12);
    expect(content.densityGCm3).toBeCloseTo(laminateDensityGCm3(1.77, 1.2, fraction), 12);
    expect(content.fiberMassFraction).toBeCloseTo(0.58, 12);
  });

  test('mass is conserved: what was laid is in the laminate or was pressed out', () => {
    fc.assert(
      fc.property(arbitraryPlies, share(0.9), share(0.1), (plies, lost, voids) => {
        const content = contentAfterBleed(plies, lost, voids);
        const laidGsm = stackThickness(plies, 1).arealMassGsm;
        expect(content.arealMassGsm + content.resinLostGsm).toBeCloseTo(laidGsm, 8);
        expect(content.densityGCm3 * content.thicknessMm * 1000).toBeCloseTo(content.arealMassGsm, 8);
        expect(content.fiberVolumeFraction + content.voidFraction).toBeLessThan(1);
      }),
    );
  });

  test('losing resin raises the fiber fraction and thins the laminate; voids do the opposite', () => {
    fc.assert(
      fc.property(arbitraryPlies, (plies) => {
        const plain = contentAfterBleed(plies, 0, 0);
        const bled = contentAfterBleed(plies, 0.1, 0);
        const porous = contentAfterBleed(plies, 0, 0.03);
        expect(bled.fiberVolumeFraction).toBeGreaterThan(plain.fiberVolumeFraction);
        expect(bled.thicknessMm).toBeLessThan(plain.thicknessMm);
        expect(porous.fiberVolumeFraction).toBeLessThan(plain.fiberVolumeFraction);
        expect(porous.thicknessMm).toBeGreaterThan(plain.thicknessMm);
        expect(porous.arealMassGsm).toBe(plain.arealMassGsm);
      }),
    );
  });

  test('more resin on the card lowers the fiber fraction', () => {
    const rich = contentAfterBleed([{ ...twill, resinMassFraction: 0.45 }], 0, 0);
    expect(rich.fiberVolumeFraction).toBeLessThan(contentAfterBleed([twill], 0, 0).fiberVolumeFraction);
  });

  test('the scale finds the resin content of a weighed offcut', () => {
    const { arealMassGsm } = contentAfterBleed(three, 0, 0);
    const laid = weighedOffcut(three, arealMassGsm * 0.0025, 2500);
    expect(laid.resinMassFraction).toBeCloseTo(0.42, 12);
    expect(laid.resinChangeShare).toBeCloseTo(0, 12);
    const bled = contentAfterBleed(three, 0.2, 0.01);
    const cured = weighedOffcut(three, bled.arealMassGsm * 0.0025, 2500);
    expect(cured.resinChangeShare).toBeCloseTo(-0.2, 12);
    expect(cured.resinMassFraction).toBeCloseTo(1 - bled.fiberMassFraction, 12);
  });

  test.each([
    ['no plies', () => contentAfterBleed([], 0, 0)],
    ['all resin lost', () => contentAfterBleed(three, 1, 0)],
    ['negative voids', () => contentAfterBleed(three, 0, -0.1)],
    ['an offcut lighter than its fiber', () => weighedOffcut(three, 1, 2500)],
    ['an offcut without area', () => weighedOffcut(three, 1, 0)],
    ['no area', () => partMass([{ areaMm2: 0, content: contentAfterBleed(three, 0, 0) }])],
    ['negative hours', () => outTime(240, -1, 5)],
  ])('refuses %s', (_what, work) => {
    expect(work).toThrow(Problem);
  });
});

describe('part mass', () => {
  test('20 000 mm² of three plies of 200 g/m² at 42 % resin weigh 20.7 g, of which 12 g fiber', () => {
    const mass = partMass([{ areaMm2: 20_000, content: contentAfterBleed(three, 0, 0) }]);
    expect(mass.fiberG).toBeCloseTo(12, 12);
    expect(mass.partG).toBeCloseTo(12 / 0.58, 12);
    expect(mass.resinG).toBeCloseTo(12 / 0.58 - 12, 12);
    expect(mass.resinLostG).toBe(0);
  });

  test('a patch adds its own, and lost resin is no part of the part', () => {
    const skin = { areaMm2: 20_000, content: contentAfterBleed(three, 0.1, 0.01) };
    const patch = { areaMm2: 900, content: contentAfterBleed([twill], 0.1, 0.01) };
    const [whole, alone, extra] = [partMass([skin, patch]), partMass([skin]), partMass([patch])];
    expect(whole.partG).toBeCloseTo(alone.partG + extra.partG, 12);
    expect(alone.partG + alone.resinLostG).toBeCloseTo(12 / 0.58, 12);
  });
});

describe('out-time', () => {
  test('covers the layup, just covers it, or does not', () => {
    expect(outTime(240, 200, 30)).toEqual({ remainingH: 40, afterLayupH: 10, enough: true });
    expect(outTime(240, 210, 30)).toEqual({ remainingH: 30, afterLayupH: 0, enough: true });
    expect(outTime(240, 236, 6)).toEqual({ remainingH: 4, afterLayupH: -2, enough: false });
    expect(outTime(240, 250, 0)).toEqual({ remainingH: -10, afterLayupH: -10, enough: false });
  });
});
