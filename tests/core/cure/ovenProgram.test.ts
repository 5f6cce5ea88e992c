import { describe, expect, test } from 'vitest';
import { curveOf, firstReachS, meanBetween, timeOverS, valueAt } from '../../../src/core/cure/curve';
import { idealOven, ovenAirCurve, usualOven } from '../../../src/core/cure/ovenAir';
import {
  programOnDial,
  stagesOverLimits,
  usualProgram,
  type OvenProgram,
} from '../../../src/core/cure/ovenProgram';

const ramped: OvenProgram = {
  startC: 20,
  stages: [
    { targetC: 70, rampKPerMin: 1, dwellS: 10_800 },
    { targetC: 120, rampKPerMin: 1, dwellS: 5400 },
  ],
  coolKPerMin: 2,
  roomC: 20,
};

describe('curve', () => {
  const step = curveOf([
    [0, 20],
    [100, 20],
    [100, 70],
    [200, 90],
  ]);

  test('a step has its later value, and means on both sides of it are right', () => {
    expect(valueAt(step, 100)).toBe(70);
    expect(valueAt(step, -5)).toBe(20);
    expect(valueAt(step, 500)).toBe(90);
    expect(meanBetween(step, 0, 100)).toBe(20);
    expect(meanBetween(step, 100, 200)).toBe(80);
    expect(meanBetween(step, 50, 150)).toBe((50 * 20 + 50 * 75) / 100);
    expect(meanBetween(step, 200, 400)).toBe(90);
  });

  test('reach and time over a level', () => {
    expect(firstReachS(step, 80)).toBe(150);
    expect(firstReachS(step, 95)).toBeNull();
    expect(firstReachS(step, 60, 120)).toBe(120);
    expect(timeOverS(step, 80)).toBe(50);
    expect(timeOverS(step, 10)).toBe(200);
  });

  test.each([
    [[[0, 20]]],
    [
      [
        [10, 20],
        [0, 30],
      ],
    ],
    [
      [
        [0, 20],
        [10, Number.NaN],
      ],
    ],
  ])('refuses %j', (points) => {
    expect(() => curveOf(points as [number, number][])).toThrow(
      expect.objectContaining({ code: 'cure.curve' }),
    );
  });
});

describe('program on the dial', () => {
  test('ramps of 1 K/min and dwells stand where arithmetic puts them', () => {
    const { setPoint, dwells, heatedS } = programOnDial(ramped);
    expect(setPoint).toEqual({ timesS: [0, 3000, 13_800, 16_800, 22_200], valuesC: [20, 70, 70, 120, 120] });
    expect(dwells).toEqual([
      { targetC: 70, fromS: 3000, untilS: 13_800 },
      { targetC: 120, fromS: 16_800, untilS: 22_200 },
    ]);
    expect(heatedS).toBe(22_200);
  });

  test('the usual program turns the dial at once', () => {
    expect(programOnDial(usualProgram).setPoint.timesS).toEqual([0, 0, 10_800, 10_800, 16_200]);
  });

  test.each([
    ['cure.noStages', { ...ramped, stages: [] }],
    ['cure.stage', { ...ramped, stages: [{ targetC: 70, rampKPerMin: 0, dwellS: 60 }] }],
    ['cure.stage', { ...ramped, stages: [{ targetC: Number.NaN, rampKPerMin: 1, dwellS: 60 }] }],
    ['cure.stage', { ...ramped, coolKPerMin: -1 }],
    ['cure.stage', { ...ramped, stages: [{ targetC: 70, rampKPerMin: null, dwellS: 0 }] }],
    ['cure.neverHeats', { ...ramped, stages: [{ targetC: 18, rampKPerMin: 1, dwellS: 3600 }] }],
    ['cure.tooLong', { ...ramped, stages: [{ targetC: 70, rampKPerMin: 1, dwellS: 3e6 }] }],
  ])('refuses with %s', (code, program) => {
    expect(() => programOnDial(program)).toThrow(expect.objectContaining({ code }));
  });

  test('names each stage over a limit', () => {
    expect(stagesOverLimits(ramped, [{ what: 'the printed pattern', mostC: 55 }])).toHaveLength(2);
    expect(stagesOverLimits(ramped, [{ what: 'the stone', mostC: 110 }])[0]).toMatch(
      /Stage 2 goes to 120 °C/u,
    );
    expect(stagesOverLimits(ramped, [{ what: 'the stone', mostC: 130 }])).toEqual([]);
  });
});

describe('air in the oven', () => {
  test('an ideal oven is the dial, then the room', () => {
    const air = ovenAirCurve(ramped, idealOven, 40_000);
    for (const timeS of [0, 1500, 3000, 10_000, 15_300, 20_000])
      expect(valueAt(air, timeS)).toBeCloseTo(valueAt(programOnDial(ramped).setPoint, timeS), 9);
    expect(valueAt(air, 22_200 + 1500)).toBeCloseTo(70, 9);
    expect(valueAt(air, 40_000)).toBe(20);
  });

  test('a first-order lag follows exp(−t/τ) after a step', () => {
    const oven = { ...idealOven, lagS: 300 };
    const air = ovenAirCurve(usualProgram, oven, 16_200);
    for (const timeS of [300, 600, 1200])
      expect(valueAt(air, timeS)).toBeCloseTo(70 - 50 * Math.exp(-timeS / 300), 1);
  });

  test('a ramp is followed one lag behind', () => {
    const air = ovenAirCurve(ramped, { ...idealOven, lagS: 300 }, 22_200);
    expect(valueAt(air, 2900)).toBeCloseTo(20 + (2900 - 300) / 60, 1);
  });

  test('heats no faster than it can, overshoots by as much as said, and never jumps', () => {
    const air = ovenAirCurve(usualProgram, usualOven, 30_000);
    air.timesS.forEach((timeS, i) => {
      const before = air.timesS[i - 1];
      if (before === undefined) return;
      const perMin = (60 * (air.valuesC[i]! - air.valuesC[i - 1]!)) / (timeS - before);
      expect(perMin).toBeLessThan(usualOven.fastestKPerMin + 3);
    });
    expect(Math.max(...air.valuesC)).toBeGreaterThan(121);
    expect(Math.max(...air.valuesC)).toBeLessThan(120 + usualOven.overshootK + 0.1);
    expect(valueAt(air, 10_700)).toBeCloseTo(70, 0);
  });

  test('refuses an oven with a negative lag', () => {
    expect(() => ovenAirCurve(ramped, { ...usualOven, lagS: -1 }, 100)).toThrow(
      expect.objectContaining({ code: 'cure.oven' }),
    );
  });
});
