import { describe, expect, test } from 'vitest';
import { curveOf } from '../../../src/core/cure/curve';
import { advanceCure, degreesOfCure } from '../../../src/core/cure/degreeOfCure';
import { checkKinetics, cureRatePerS, type CureKinetics } from '../../../src/core/cure/kinetics';
import { kineticsForLearning } from '../../../src/core/cure/publishedKinetics';

const order = (perS: number, n = 1): CureKinetics => ({
  law: {
    form: 'autocatalytic',
    k1: { perS, energyJPerMol: 0 },
    k2: { perS: 0, energyJPerMol: 0 },
    m: 1,
    n,
  },
  startCure: 0,
  heatJPerG: 0,
});

describe('rate laws', () => {
  test('every set for learning is a law that can be followed', () => {
    for (const { kinetics } of kineticsForLearning) checkKinetics(kinetics, 120);
  });

  test('the two-stage law jumps where it changes', () => {
    const { law } = kineticsForLearning[0]!.kinetics;
    const [before, after] = [cureRatePerS(law, 0.3, 120, false), cureRatePerS(law, 0.3, 120, true)];
    expect(Math.abs(after / before - 1)).toBeGreaterThan(0.5);
  });

  test('cure in one span or in many is the same, across the jump too', () => {
    for (const { kinetics } of kineticsForLearning) {
      const whole = advanceCure(kinetics, kinetics.startCure, 120, 120, 20_000);
      let parts = kinetics.startCure;
      for (let i = 0; i < 20; i++) parts = advanceCure(kinetics, parts, 120, 120, 1000);
      expect(Math.abs(parts - whole)).toBeLessThan(1e-6);
    }
  });

  test('never falls and never passes one', () => {
    const curve = curveOf([
      [0, 20],
      [3000, 120],
      [80_000, 120],
    ]);
    for (const { kinetics } of kineticsForLearning) {
      const degrees = degreesOfCure(kinetics, curve, [0, 1000, 3000, 10_000, 80_000]);
      degrees.forEach((degree, i) => {
        expect(degree).toBeGreaterThanOrEqual(degrees[i - 1] ?? 0);
        expect(degree).toBeLessThanOrEqual(1);
      });
    }
  });

  test.each([
    ['cure.kineticsBlowUp', { ...order(1e4) }],
    ['cure.kineticsBlowUp', { ...order(Infinity) }],
    ['cure.kineticsBackward', { ...order(-1e-3) }],
    ['cure.kineticsStart', { ...order(1e-3), startCure: 1 }],
    ['cure.kineticsStart', { ...order(1e-3), heatJPerG: -1 }],
  ])('refuses with %s', (code, kinetics) => {
    expect(() => checkKinetics(kinetics, 120)).toThrow(expect.objectContaining({ code }));
  });
});
