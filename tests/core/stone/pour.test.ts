import { describe, expect, test } from 'vitest';
import { boxSheets } from '../../../src/core/stone/boxSheets';
import { coatPlan } from '../../../src/core/stone/coatPlan';
import { floatUp, type FloatChoices } from '../../../src/core/stone/floatUp';
import type { MoldBox } from '../../../src/core/stone/moldGeometry';
import { adiabaticRiseK, settingHeat } from '../../../src/core/stone/settingHeat';

/** Slurry of 2 g/mL round a pattern of 100 mL and 20 g, 50 mm high over 40 cm². */
const choices: FloatChoices = {
  method: 'pressed in',
  slurryDensityGMl: 2,
  envelopeMl: 100,
  patternG: 20,
  slurryHeightMm: 50,
  planAreaMm2: 4000,
  margin: 1.5,
};

describe('float-up', () => {
  test('pressed in: 200 g of slurry displaced, less 20 g, with margin', () => {
    const up = floatUp(choices);
    expect(up.netUpliftN).toBeCloseTo(0.18 * 9.80665, 12);
    expect(up.holdDownG).toBeCloseTo(180, 9);
    expect(up.counterweightG).toBeCloseTo(270, 9);
    expect(up.sealPressureKPa).toBeNull();
  });

  test('a leak lifts as the pressed-in pattern does', () => {
    const up = floatUp({ ...choices, method: 'board, leaking' });
    expect(up.netUpliftN).toBeCloseTo(floatUp(choices).netUpliftN, 12);
    expect(up.ifLeakingG).toBe(up.counterweightG);
  });

  test('a tight seal: the 100 mL of slurry over the pattern press it down, and the leak stays named', () => {
    const down = floatUp({ ...choices, method: 'board, sealed' });
    // 4000 mm² × 50 mm = 200 mL, of which 100 mL are the pattern.
    expect(down.netUpliftN).toBeCloseTo(-(0.2 + 0.02) * 9.80665, 12);
    expect(down.counterweightG).toBe(0);
    expect(down.ifLeakingG).toBeCloseTo(270, 9);
    expect(down.sealPressureKPa).toBeCloseTo((2 * 9.80665 * 50) / 1000, 12);
  });

  test('a heavy pattern sinks and needs no weight', () => {
    const up = floatUp({ ...choices, patternG: 250 });
    expect(up.netUpliftN).toBeLessThan(0);
    expect(up.counterweightG).toBe(0);
  });
});

describe('heat of setting', () => {
  const pour = {
    waterPowderRatio: 0.24,
    powder: 'alpha',
    wetDensityGMl: 2.05,
    volumeMl: 300,
    outsideMm2: 25_000,
    settingMin: 30,
    roomC: 20,
  } as const;

  // By hand: 117.5 / (1.18618 × 1.08 + 0.05382 × 4.18); heat capacities from memory.
  test('adiabatic rise by hand', () => {
    expect(adiabaticRiseK(0.24, 'alpha')).toBeCloseTo(78.02, 1);
    expect(adiabaticRiseK(0.3, 'alpha')).toBeCloseTo(66.85, 1);
  });

  test('the estimate lies within its band and never over the adiabatic end', () => {
    const heat = settingHeat(pour);
    expect(heat.lowC).toBeLessThan(heat.peakC);
    expect(heat.peakC).toBeLessThan(heat.highC);
    expect(heat.highC).toBeLessThan(20 + heat.adiabaticRiseK);
    expect(settingHeat({ ...pour, volumeMl: 1e7 }).highC).toBeCloseTo(20 + heat.adiabaticRiseK, 0);
    expect(heat.lowC).toBeGreaterThan(20);
  });

  test('a thicker pour gets warmer, a slower one stays cooler', () => {
    const { peakC } = settingHeat(pour);
    expect(settingHeat({ ...pour, volumeMl: 600 }).peakC).toBeGreaterThan(peakC);
    expect(settingHeat({ ...pour, settingMin: 60 }).peakC).toBeLessThan(peakC);
    // A film that cools at once and one that holds everything are the two limits.
    expect(settingHeat({ ...pour, volumeMl: 1e-6 }).peakC).toBeCloseTo(20, 3);
    expect(settingHeat({ ...pour, volumeMl: 1e7 }).peakC).toBeCloseTo(20 + 0.8 * 78.02, 1);
  });
});

describe('coats', () => {
  // Computed: 0.02 m2 at 200 um are 4.0 mL, that is 5 m2 per liter.
  test('0.02 m² at 5 m² per liter are 4 mL', () => {
    const plan = coatPlan(20_000, { coats: 1, coverageM2PerL: 5, lossPercent: 0, waitMin: 30 });
    expect(plan.perCoatMl).toBeCloseTo(4, 12);
  });

  test('three coats with a quarter lost, and their waiting', () => {
    const plan = coatPlan(20_000, { coats: 3, coverageM2PerL: 5, lossPercent: 25, waitMin: 30 });
    expect(plan).toMatchObject({ totalMl: 15, waitingMin: 90 });
  });
});

describe('box sheets', () => {
  const box: MoldBox = {
    shape: 'rectangle',
    innerMm: [140, 84, 48],
    negativeHeightMm: 28,
    positiveHeightMm: 20,
    cornerRadiusMm: 0,
    wallDraftDeg: 0,
  };

  test('two walls between two ends, on a base', () => {
    expect(boxSheets(box, 5, 10, 20)).toEqual([
      { name: 'wall between the ends', count: 2, lengthMm: 140, heightMm: 58 },
      { name: 'end wall', count: 2, lengthMm: 94, heightMm: 58 },
      { name: 'base', count: 1, lengthMm: 170, heightMm: 114 },
    ]);
  });

  test('a cup takes a strip as long as its middle line, and the overlap', () => {
    const [strip] = boxSheets({ ...box, shape: 'cup', innerMm: [100, 100, 48] }, 2, 10, 20);
    expect(strip?.lengthMm).toBeCloseTo(Math.PI * 102 + 20, 9);
  });
});
