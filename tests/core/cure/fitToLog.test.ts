/** A log made by the prediction itself must lead back to what it was made with. */
import { describe, expect, test } from 'vitest';
import { curveOf, valueAt, type Curve } from '../../../src/core/cure/curve';
import { fitToLog, type LogToFit } from '../../../src/core/cure/fitToLog';
import { runHeat } from '../../../src/core/cure/heatRun';
import { findPlace, type LaminatePlace } from '../../../src/core/cure/laminatePlace';
import { curveAtPlace } from '../../../src/core/cure/laminateRecord';
import { ovenAirCurve, usualOven } from '../../../src/core/cure/ovenAir';
import { usualProgram } from '../../../src/core/cure/ovenProgram';
import { options, programEndS, stoneCase } from '../../support/cureCases';

const truth = { film: 26, heldShare: 0.4 };
const base = stoneCase({ voxelMm: 8 });
const real = {
  ...base,
  surface: { ...base.surface, filmWPerM2K: truth.film },
  water: { ...base.water, heldShare: truth.heldShare },
  dehydration: { treatment: 'vapor-held' as const, rateFactor: 1 },
};

/** Run and log of the laminate with a reading every minute at a place. */
function madeLog(one: typeof real, place: LaminatePlace): Curve {
  const { laminate } = runHeat(one, options(programEndS));
  const curve = curveAtPlace(laminate, findPlace(one.voxels, laminate, place).place);
  const minutes = Array.from({ length: programEndS / 60 }, (_, minute) => 60 * minute);
  return { timesS: minutes, valuesC: minutes.map((timeS) => valueAt(curve, timeS)) };
}

const without = ({ timesS, valuesC }: Curve, inGap: (timeS: number) => boolean): Curve => ({
  timesS: timesS.filter((timeS) => !inGap(timeS)),
  valuesC: valuesC.filter((_, at) => !inGap(timesS[at]!)),
});

const at = (laminate: Curve, more: Partial<LogToFit> = {}): LogToFit => ({
  laminate,
  air: null,
  place: { kind: 'coldest' },
  ...more,
});

describe('fit to a log of the laminate alone', { timeout: 60_000 }, () => {
  const laminate = madeLog(real, { kind: 'coldest' });
  const fit = fitToLog(base, at(laminate));

  test('finds film, dampness and the treatment again', () => {
    expect(fit.best.treatment).toBe('vapor-held');
    expect(fit.chosen).toBe(true);
    expect(fit.best.filmWPerM2K).toBeCloseTo(truth.film, -0.5);
    expect(fit.best.heldShare).toBeCloseTo(truth.heldShare, 1);
    expect(fit.best.airOffsetK).toBeNull();
    expect(fit.best.misfitK).toBeLessThan(0.3);
  });

  test('a log that ends before it is hot does not choose between treatments', () => {
    expect(fitToLog(base, at(without(laminate, (timeS) => timeS > 6000))).chosen).toBe(false);
  });

  test('refuses a log of a few minutes', () => {
    const short = curveOf([
      [0, 20],
      [300, 25],
      [600, 30],
    ]);
    expect(() => fitToLog(base, at(short))).toThrow(expect.objectContaining({ code: 'log.fitTooShort' }));
  });

  test('refuses a thermocouple that is nowhere near the part', () => {
    const place = { kind: 'point', atMm: [300, 30, 20] } as const;
    expect(() => fitToLog(base, at(laminate, { place }))).toThrow(
      expect.objectContaining({ code: 'log.placeFar' }),
    );
  });
});

/**
 * The oven that was logged is not the one that was expected: it lags by ten minutes more and overshoots by 8 K. The air is
 * logged every minute by a sensor that reads 3 K too high, both logs have gaps, and the air's log starts late.
 */
describe('fit to a log with the air of another oven', { timeout: 120_000 }, () => {
  const otherAir = ovenAirCurve(
    usualProgram,
    { ...usualOven, lagS: usualOven.lagS + 600, overshootK: 8 },
    programEndS,
  );
  const expected = { ...base, air: ovenAirCurve(usualProgram, usualOven, programEndS) };
  const sensorReadsK = 3;
  const minutes = Array.from({ length: programEndS / 60 }, (_, minute) => 60 * minute);
  const airLog = without(
    { timesS: minutes, valuesC: minutes.map((timeS) => valueAt(otherAir, timeS) + sensorReadsK) },
    (timeS) => timeS < 120 || (timeS > 5000 && timeS < 6500),
  );
  const place = { kind: 'point', atMm: [72, 30, 20] } as const;
  const laminate = without(
    madeLog({ ...real, air: otherAir }, place),
    (timeS) => (timeS > 2000 && timeS < 3000) || (timeS > 12_000 && timeS < 12_600),
  );

  test('film within a tenth, dampness within 0.05, the sensor within half a kelvin', () => {
    const { best, chosen, placeOffMm } = fitToLog(expected, at(laminate, { air: airLog, place }));
    expect(best.treatment).toBe('vapor-held');
    expect(chosen).toBe(true);
    expect(Math.abs(best.filmWPerM2K / truth.film - 1)).toBeLessThan(0.1);
    expect(Math.abs(best.heldShare - truth.heldShare)).toBeLessThan(0.05);
    expect(Math.abs(best.airOffsetK! - sensorReadsK)).toBeLessThan(0.5);
    expect(best.misfitK).toBeLessThan(0.5);
    expect(placeOffMm).toBe(0);
  });

  test('taking the air as expected, or the place as the coldest, misleads', () => {
    const guessedAir = fitToLog(expected, at(laminate, { place })).best;
    expect(guessedAir.misfitK).toBeGreaterThan(1);
    const guessedPlace = fitToLog(expected, at(laminate, { air: airLog })).best;
    expect(Math.abs(guessedPlace.filmWPerM2K / truth.film - 1)).toBeGreaterThan(0.1);
  });
});
