import { describe, expect, test } from 'vitest';
import { supplierCure } from '../../../src/core/cure/dose';
import { holdMoreS, logAnswer } from '../../../src/core/cure/logAnswer';
import { defaultProjectInputs } from '../../../src/steps/inputs/project';
import { logWords } from '../../../src/steps/cure/logWords';

/** Up in an hour, an hour at 120 °C, down in an hour. */
const curve = { timesS: [0, 3600, 7200, 10_800], valuesC: [20, 120, 120, 20] };
const cure = supplierCure([{ hours: 2, temperatureC: 120 }]);

describe('what a log says', () => {
  test('peak, and the time within 5 K of the dwell: 3 min of each ramp are in it', () => {
    // 5 K of 100 K in 3600 s are 180 s.
    expect(logAnswer(curve, 120, null)).toEqual({
      peakC: 120,
      heldS: 3600 + 2 * 180,
      dose: null,
      holdMoreS: null,
    });
  });

  test('the dose of one hour of two: an hour more', () => {
    const { dose, holdMoreS: moreS } = logAnswer(curve, 120, cure);
    expect(dose).toBeCloseTo(0.5, 2);
    expect(moreS).toBeCloseTo(3600, -2);
  });

  test('nothing more once it is met, and no number where the dwell is too cold for it', () => {
    expect(holdMoreS(1.2, 120, cure)).toBe(0);
    expect(holdMoreS(0.5, 100, cure)).toBeNull();
  });

  test('in plain words', () => {
    const words = logWords(curve, {
      ...defaultProjectInputs.cure,
      supplierCures: [{ hours: 2, temperatureC: 120 }],
    });
    expect(words).toBe(
      'peak 120 °C; within 5 K of 120 °C for 1 h 06 min; dose 0.50: hold 1 h 00 min more at 120 °C.',
    );
    expect(logWords(curve, defaultProjectInputs.cure)).toContain('Enter a cure of the data sheet');
  });
});
