import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  dryTargetFromFreshG,
  dryToleranceG,
  freeWaterFromFreshG,
  steadyHours,
} from '../../../src/core/stone/drying';
import { dryingState, fittedWeightG, type Weighing } from '../../../src/core/stone/dryingLog';
import { halfStone } from '../../../src/core/stone/pourBatch';
import { stoneMix } from '../../../src/core/stone/stoneMix';
import { propertySeed } from '../../support/propertySeed';

const approach = (endG: number, startG: number, tauHours: number, hours: readonly number[]): Weighing[] =>
  hours.map((h) => ({ hours: h, grams: endG + (startG - endG) * Math.exp(-h / tauHours) }));

describe(`the drying log (seed ${propertySeed})`, () => {
  test('an exact approach gives back its own end, time constant and time left', () => {
    const state = dryingState(approach(983, 1028, 10, [0, 4, 8, 16, 24]), 1);
    expect(state.word).toBe('not yet');
    expect(state.endG).toBeCloseTo(983, 3);
    expect(state.tauHours).toBeCloseTo(10, 3);
    expect(state.toGoG).toBeCloseTo(45 * Math.exp(-2.4), 3);
    expect(state.hoursLeft).toBeCloseTo(10 * Math.log(45 * Math.exp(-2.4)), 2);
  });

  test('the fitted way runs through the weighings of an exact approach, and there is none without an end', () => {
    const log = approach(983, 1028, 10, [2, 4, 8, 16, 24]);
    const state = dryingState(log, 1);
    for (const { hours, grams } of log) expect(fittedWeightG(state, 2, hours)).toBeCloseTo(grams, 2);
    expect(fittedWeightG(state, 2, 200)).toBeCloseTo(983, 2);
    expect(fittedWeightG(dryingState(log.slice(0, 2), 1), 2, 8)).toBeNull();
  });

  test('any approach is found again from three weighings on', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 5000, noNaN: true }),
        fc.double({ min: 0.01, max: 0.2, noNaN: true }),
        fc.double({ min: 2, max: 40, noNaN: true }),
        fc.integer({ min: 3, max: 8 }),
        (endG, share, tauHours, count) => {
          const hours = Array.from({ length: count }, (_, i) => (i * 1.5 * tauHours) / (count - 1));
          const state = dryingState(approach(endG, endG * (1 + share), tauHours, hours), 1e-4 * endG);
          expect(Math.abs((state.endG ?? 0) / endG - 1)).toBeLessThan(1e-5);
        },
      ),
    );
  });

  test('a scale that rounds to grams still ends within two grams', () => {
    const rounded = approach(983, 1028, 8, [0, 4, 8, 12, 18, 24]).map(({ hours, grams }) => ({
      hours,
      grams: Math.round(grams),
    }));
    expect(Math.abs((dryingState(rounded, 1).endG ?? 0) - 983)).toBeLessThan(2);
  });

  test('steady when nothing falls over four hours or more, however many weighings', () => {
    const held = [0, 24, 30, 36].map((hours) => ({ hours, grams: hours === 0 ? 1028 : 983 }));
    expect(dryingState(held, 1)).toMatchObject({
      word: 'steady',
      endG: 983,
      hoursLeft: 0,
      steadyForHours: 6,
    });
    // Little left to a fitted end is no weight that has held.
    expect(dryingState(approach(983, 1028, 6, [0, 6, 12, 30]), 1)).toMatchObject({
      word: 'not yet',
      hoursLeft: steadyHours,
    });
    expect(dryingState(approach(983, 1028, 6, [0, 6, 12, 30, 34]), 1).word).toBe('steady');
    expect(dryingState(held.slice(1, 3), 1).word).toBe('steady');
  });

  test('three readings six minutes apart are not steady', () => {
    const quick = [24, 24.1, 24.2].map((hours) => ({ hours, grams: 925 }));
    expect(dryingState(quick, 1).word).toBe('not yet');
    expect(dryingState(quick, 1).reason).toContain('holds for 4 h or more');
  });

  test('whatever is called steady spans four hours and lies within the tolerance', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            stepHours: fc.double({ min: 0.05, max: 9, noNaN: true }),
            grams: fc.double({ min: 900, max: 903, noNaN: true }),
          }),
          { minLength: 1, maxLength: 8 },
        ),
        (steps) => {
          let hours = 0;
          const log = steps.map(({ stepHours, grams }) => ({ hours: (hours += stepHours), grams }));
          if (dryingState(log, 1).word !== 'steady') return;
          const last = log.at(-1)!;
          const early = log.filter((one) => last.hours - one.hours >= steadyHours - 1e-6);
          expect(early.length).toBeGreaterThan(0);
          const since = log.slice(early.length - 1).map(({ grams }) => grams);
          expect(Math.max(...since) - Math.min(...since)).toBeLessThan(1 + 1e-6);
        },
      ),
    );
  });

  test('an even fall has no end to read, nor has a rising weight', () => {
    const even = [0, 2, 4, 6].map((hours) => ({ hours, grams: 1028 - 2 * hours }));
    expect(dryingState(even, 1)).toMatchObject({ word: 'not yet', endG: null });
    const rising = [0, 2, 4].map((hours) => ({ hours, grams: 1000 + 3 * hours }));
    expect(dryingState(rising, 1)).toMatchObject({ word: 'not yet', endG: null });
  });

  test('too few and wrong weighings are told', () => {
    expect(dryingState([], 1).word).toBe('too few weighings');
    expect(dryingState(approach(983, 1028, 6, [0, 6]), 1).word).toBe('too few weighings');
    expect(() =>
      dryingState(
        [
          { hours: 2, grams: 1000 },
          { hours: 2, grams: 990 },
        ],
        1,
      ),
    ).toThrow('Weighing 2');
    expect(() => dryingState([{ hours: 0, grams: 0 }], 1)).toThrow('Weighing 1');
  });
});

describe('the dry target', () => {
  const mix = stoneMix({ waterPowderRatio: 0.24, settingExpansionPercent: 0, powderDensityGCm3: 2.757 });

  test('from the fresh weight it is the target from the volume', () => {
    const half = halfStone(500, mix);
    expect(dryTargetFromFreshG(half.wetG, mix)).toBeCloseTo(half.dryG, 9);
    expect(Math.round(half.dryG)).toBe(983);
    expect(freeWaterFromFreshG(half.wetG, mix)).toBeCloseTo(half.freeWaterG, 9);
    expect(() => dryTargetFromFreshG(0, mix)).toThrow('above zero');
  });

  test('tolerance: one percent of the free water, but no finer than the scale', () => {
    expect(dryToleranceG(500, 1)).toBe(5);
    expect(dryToleranceG(45, 1)).toBe(1);
  });
});
