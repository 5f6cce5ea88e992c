import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { curveOf, type Curve } from '../../../src/core/cure/curve';
import { gasConstant, requiredS, supplierCure } from '../../../src/core/cure/dose';
import { gelAlong, gelTimes, usualGelEnergyJPerMol } from '../../../src/core/cure/gelPoint';
import { propertySeed } from '../../support/propertySeed';

const sheet = { minutes: 60, temperatureC: 70 };
const usual = gelTimes(sheet, null);

/** Turned at once from the room to a temperature and held. */
const held = (temperatureC: number, hours: number): Curve =>
  curveOf([
    [0, 20],
    [0, temperatureC],
    [3600 * hours, temperatureC],
  ]);
/** At 1 K/min from 20 °C. */
const ramp = (untilC: number): Curve =>
  curveOf([
    [0, 20],
    [60 * (untilC - 20), untilC],
  ]);

/** 1/T from that of 70 °C. */
const inverse = (celsius: number) => 1 / (celsius + 273.15) - 1 / 343.15;

describe('the gel point', () => {
  test('held where the sheet gives its time: after that time', () => {
    const gel = gelAlong(usual, held(70, 3));
    expect(gel?.timeS).toBeCloseTo(3600, 6);
    expect(gel?.temperatureC).toBe(70);
  });

  test('by hand: 70 kJ/mol, 60 min at 70 °C are 29.95 min at 80 °C and 17.4 h at 34.2 °C', () => {
    // 60 exp[70000 / 8.314 (1 / 353.15 − 1 / 343.15)]
    expect(gelAlong(usual, held(80, 3))!.timeS / 60).toBeCloseTo(29.95, 2);
    expect(requiredS(usual, 34.19) / 3600).toBeCloseTo(17.44, 2);
  });

  test('the supplier’s cures tell how it falls with heat: 16 h at 70 and 4 h at 90 °C make 60 min 15', () => {
    const supplier = supplierCure([
      { hours: 16, temperatureC: 70 },
      { hours: 4, temperatureC: 90 },
    ]);
    expect(gelAlong(gelTimes(sheet, supplier), held(90, 1))!.timeS / 60).toBeCloseTo(15, 9);
  });

  test('one cure, or two that speed up like no prepreg, tell nothing: the usual energy counts', () => {
    const one = supplierCure([{ hours: 16, temperatureC: 70 }]);
    const steep = supplierCure([
      { hours: 100, temperatureC: 70 },
      { hours: 0.1, temperatureC: 80 },
    ]);
    for (const supplier of [one, steep]) expect(gelTimes(sheet, supplier)).toEqual(usual);
  });

  test('on a ramp that never holds, where the sum of small steps says', () => {
    let [share, celsius] = [0, 20];
    for (; share < 1; celsius += 0.001)
      share += 0.001 / (60 * Math.exp((usualGelEnergyJPerMol / gasConstant) * inverse(celsius + 0.0005)));
    expect(gelAlong(usual, ramp(150))!.temperatureC).toBeCloseTo(celsius, 1);
  });

  test('a program that ends before has none', () => {
    expect(gelAlong(usual, held(70, 0.9))).toBeNull();
  });

  test(`lies on the curve, and a longer gel time never comes sooner (seed ${propertySeed})`, () => {
    const celsius = fc.double({ min: 30, max: 200, noNaN: true });
    const minutes = fc.double({ min: 1, max: 6000, noNaN: true });
    fc.assert(
      fc.property(celsius, celsius, minutes, (firstC, secondC, length) => {
        const curve = curveOf([
          [0, 20],
          [3000, firstC],
          [12_000, firstC],
          [15_000, secondC],
          [30_000, secondC],
        ]);
        const at = (gelMin: number) => gelAlong(gelTimes({ minutes: gelMin, temperatureC: 70 }, null), curve);
        const [gel, later] = [at(length), at(1.5 * length)];
        if (gel === null) return later === null;
        const hottest = Math.max(firstC, secondC, 20);
        return (
          gel.timeS > 0 &&
          gel.timeS <= 30_000 &&
          gel.temperatureC <= hottest &&
          (later === null || later.timeS >= gel.timeS)
        );
      }),
      { seed: propertySeed, numRuns: 300 },
    );
  });
});
