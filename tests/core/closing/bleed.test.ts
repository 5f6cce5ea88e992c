/** Resin over an open land, in the plane and before it gels: hand numbers and what must hold for any. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bleedAt,
  bleedCurve,
  flowLengthMm,
  inPlaneBleedS,
  landBleedS,
  residualAirShare,
} from '../../../src/core/closing/bleed';
import { flowTimeS } from '../../../src/core/closing/flow';
import { propertySeed } from '../../support/propertySeed';

const positive = (max: number) => fc.double({ min: 0.001, max, noNaN: true });
const rim = { landMm: 10, lengthMm: 400, planMm2: 10_000 };

describe('over a land', () => {
  test('5 Pa s at 100 kPa from 0.05 to 0.02 mm over 10 mm of land take 157.5 s', () => {
    // 6 · 5 · 10 · 10 000 / (400 · 100 000) = 0.075; 1/0.02² − 1/0.05² = 2100.
    expect(landBleedS(rim, 5, 100_000, 0.05, 0.02)).toBeCloseTo(157.5, 9);
    expect(landBleedS(rim, 5, 100_000, 0.02, 0.05)).toBe(0);
    expect(landBleedS(rim, 5, 100_000, 0.05, 0)).toBe(Infinity);
  });

  test('at a pressure that stays, the steps of the curve add up to the law', () => {
    const curve = bleedCurve(rim, 5, 0.05, 0, () => 100);
    const last = curve.at(-1)!;
    expect(last.standOffMm).toBeCloseTo(0.005, 9);
    expect(last.timeS).toBeCloseTo(landBleedS(rim, 5, 100_000, 0.05, 0.005), 6);
    expect(last.pressureKPa).toBe(0);
    expect(bleedAt(curve, 0)).toMatchObject({ standOffMm: 0.05, pressureKPa: 100 });
    expect(bleedAt(curve, 1e9).pressureKPa).toBe(0);
  });

  test(`it only sinks, and stops where the fibers carry all (seed ${propertySeed})`, () => {
    fc.assert(
      fc.property(positive(2), positive(50), positive(500), (standOffMm, viscosity, kPa) => {
        const carriedFromMm = standOffMm / 2;
        const curve = bleedCurve(rim, viscosity, standOffMm, 0, (at) => (at > carriedFromMm ? kPa : 0));
        for (let i = 1; i < curve.length; i++) {
          expect(curve[i]!.standOffMm).toBeLessThan(curve[i - 1]!.standOffMm);
          expect(curve[i]!.timeS).toBeGreaterThan(curve[i - 1]!.timeS);
        }
        expect(curve.at(-1)!.pressureKPa).toBe(0);
        expect(curve.at(-1)!.standOffMm).toBeGreaterThan(carriedFromMm * 0.7);
      }),
    );
  });
});

test('in the plane 4 % over 30 mm at K 1e-12 and 100 kPa take 600 s', () => {
  // 0.04 · 5 · 0.03² / (3 · 1e-12 · 1e5)
  expect(inPlaneBleedS(0.04, 5, 0.03, 1e-12, 1e5)).toBeCloseTo(600, 9);
  expect(inPlaneBleedS(-0.1, 5, 0.03, 1e-12, 1e5)).toBe(0);
});

test('the flow length is the front of the flow time', () => {
  const mm = flowLengthMm(5, 0.5, 1e-12, 1e5, 3600);
  expect(flowTimeS(5, 0.5, mm / 1000, 1e-12, 1e5)).toBeCloseTo(3600, 6);
  expect(flowLengthMm(5, 0.5, 1e-12, 0, 3600)).toBe(0);
});

test('air that is left is compressed by the resin, and by nothing less than itself', () => {
  expect(residualAirShare(0.06, 101, 202)).toBeCloseTo(0.03, 12);
  expect(residualAirShare(0.06, 101, 50)).toBe(0.06);
});
