/** A log made by the prediction itself must lead back to what it was made with. */
import { describe, expect, test } from 'vitest';
import { curveOf } from '../../../src/core/cure/curve';
import { fitToLog } from '../../../src/core/cure/fitToLog';
import { runHeat } from '../../../src/core/cure/heatRun';
import { curveAtPlace, extremePlaces } from '../../../src/core/cure/laminateRecord';
import { options, programEndS, stoneCase } from '../../support/cureCases';

const truth = { film: 26, heldShare: 0.4 };
const base = stoneCase({ voxelMm: 8 });
const real = {
  ...base,
  surface: { ...base.surface, filmWPerM2K: truth.film },
  water: { ...base.water, heldShare: truth.heldShare },
  dehydration: { treatment: 'vapor-held' as const, rateFactor: 1 },
};
const made = runHeat(real, options(programEndS));
const laminate = curveAtPlace(made.laminate, extremePlaces(made.laminate).coldest);

describe('fit to a log', () => {
  const fit = fitToLog(base, { laminate, air: null, place: null });

  test('finds film, dampness and the treatment again', () => {
    expect(fit.best.treatment).toBe('vapor-held');
    expect(fit.chosen).toBe(true);
    expect(fit.best.filmWPerM2K).toBeCloseTo(truth.film, -0.5);
    expect(fit.best.heldShare).toBeCloseTo(truth.heldShare, 1);
    expect(fit.best.misfitK).toBeLessThan(0.3);
  });

  test('a log that ends before it is hot does not choose between treatments', () => {
    const count = laminate.timesS.findIndex((timeS) => timeS > 6000);
    const early = { timesS: laminate.timesS.slice(0, count), valuesC: laminate.valuesC.slice(0, count) };
    expect(fitToLog(base, { laminate: early, air: null, place: null }).chosen).toBe(false);
  });

  test('refuses a log of a few minutes', () => {
    const short = curveOf([
      [0, 20],
      [300, 25],
      [600, 30],
    ]);
    expect(() => fitToLog(base, { laminate: short, air: null, place: null })).toThrow(
      expect.objectContaining({ code: 'log.fitTooShort' }),
    );
  });
});
