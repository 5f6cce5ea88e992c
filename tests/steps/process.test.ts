/** What the oven program, the room and the storage humidity say once, and every step takes from there. */
import { describe, expect, test } from 'vitest';
import type { StepContext } from '../../src/steps/shared/context';
import { closingReport } from '../../src/steps/closing/report';
import { cureReport } from '../../src/steps/cure/report';
import type { ProjectInputs } from '../../src/steps/inputs/project';
import { moldReport } from '../../src/steps/mold/report';
import { defaultMaterial } from '../../src/steps/inputs/material';
import { pliesReport } from '../../src/steps/plies/report';
import { processOf, programOf } from '../../src/steps/shared/process';
import { blockPrediction } from '../support/curePrediction';
import { inputsWith, plyAt, trayContext } from './contexts';
import { figureOf, verdictOf } from './reportHelpers';

const tape = { ...defaultMaterial, id: 'ud', weave: 'unidirectional' as const };
/** Unsymmetric, so that it warps. */
const plies = {
  materials: [tape],
  stack: [0, 90].map((angle) => plyAt(`at-${angle}`, angle, { materialId: 'ud' })),
};
const stage = (targetC: number, dwellHours: number) => ({ targetC, rampKPerMin: 1, dwellHours });
const usualSheet = inputsWith({}).closing;
const usual = [stage(70, 3), stage(120, 1.5)];

type Changes = Parameters<typeof trayContext>[0];
const withOven = (cure: Partial<ProjectInputs['cure']>, changes: Changes = {}): StepContext => {
  const all = { plies, ...changes, cure };
  return trayContext({ ...all, prediction: blockPrediction(inputsWith(all)) });
};

const reads = {
  warp: (context: StepContext) => figureOf(pliesReport(context), 'plies.curvaturePerM'),
  voidPressure: (context: StepContext) => figureOf(closingReport(context), 'closing.voidFreeKpa'),
  sizes: (context: StepContext) => figureOf(moldReport(context), 'mold.finishedLengthMm'),
  cure: (context: StepContext) => figureOf(cureReport(context), 'cure.hottest.peakC'),
} as const;
const valuesOf = (context: StepContext) =>
  Object.values(reads).map((read) => {
    const { value } = read(context);
    return typeof value === 'object' && value !== null ? value[0]! : Number(value);
  });

/** The stone grows by 16 × 10⁻⁶/K on the way to the gel, the laminate shrinks by 3 on the way back. */
const sizeAfter = (kelvins: number) => (1 + 16e-6 * kelvins) * (1 - 3e-6 * kelvins);

describe('editing the oven program', () => {
  test('of one stage moves warp, void pressure, sizes and cure together', () => {
    const before = valuesOf(withOven({ stages: usual }));
    const after = valuesOf(withOven({ stages: [stage(90, 3), stage(120, 1.5)] }));
    const [warp, voidPressure, sizes, cure] = after.map((value, i) => value / before[i]!);
    // Warp is linear in the cooling: (90 − 21) / (70 − 21).
    expect(warp).toBeCloseTo(69 / 49, 6);
    // The moisture law: exp[−4892 (1 / 363.15 − 1 / 343.15)].
    expect(voidPressure).toBeCloseTo(Math.exp(-4892 * (1 / 363.15 - 1 / 343.15)), 6);
    expect(sizes).toBeCloseTo(sizeAfter(69) / sizeAfter(49), 9);
    expect(cure).not.toBe(1);
  });

  test('where it gels has a band from the usual activation energies, until the supplier tells his', () => {
    // 10 K under the gel time's own temperature from the start: a higher energy takes longer there.
    const atC = usualSheet.gelTimeAtC - 10;
    const cure = { startC: atC, stages: [stage(atC, 9)] };
    const [low, high] = processOf(inputsWith({ cure })).gelBand!;
    // The ratio of the two gel times is exp[(82 − 57) kJ/mol (1/T1 − 1/T2) / R].
    const inverse = 1 / (atC + 273.15) - 1 / (usualSheet.gelTimeAtC + 273.15);
    expect(high.timeS / low.timeS).toBeCloseTo(Math.exp((25_000 / 8.314462618) * inverse), 3);
    expect(processOf(inputsWith({ cure: { ...cure, gelC: 80 } })).gelBand).toBeNull();
  });

  test('a stage too short to gel leaves it to the next, where all four then count from', () => {
    const { gel, gelAfterS } = processOf(inputsWith({ cure: { stages: [stage(60, 0.5), stage(95, 3)] } }));
    expect(gel.valueC).toBeGreaterThan(80);
    expect(gel.valueC).toBeLessThanOrEqual(95);
    expect(gelAfterS).toBeGreaterThan((40 + 30) * 60);
  });

  test('one gel temperature: closing, sizes and warp name the same', () => {
    const context = withOven({ stages: [stage(90, 3)] });
    for (const read of [reads.warp, reads.voidPressure, reads.sizes])
      expect(read(context).working.join(' ')).toContain('90 °C');
    expect(figureOf(cureReport(context), 'cure.gelC').value).toBe(90);
  });

  test('the hottest stage is the far end of the warp, and its verdict is judged by it', () => {
    const curvature = reads.warp(withOven({ stages: usual }));
    const [low, high] = curvature.band!;
    expect(Math.max(Math.abs(low), Math.abs(high)) / Math.abs(Number(curvature.value))).toBeGreaterThan(
      99 / 49 - 1e-6,
    );
    const warp = verdictOf(pliesReport(withOven({ stages: usual })), 'plies.warp');
    expect(warp.reason).toContain('Where it gives way in the 120 °C stage');
  });
});

describe('an entry of one’s own', () => {
  test('goes before the program, in every step, and says that it differs', () => {
    const context = withOven({ stages: usual, gelC: 95 });
    for (const read of [reads.voidPressure, reads.sizes])
      expect(read(context).working.join(' ')).toContain('entered; differs from the oven program, 70 °C');
    const gel = figureOf(cureReport(context), 'cure.gelC');
    expect(gel).toMatchObject({ value: 95, status: 'your entry' });
    const cooler = valuesOf(withOven({ stages: usual }));
    valuesOf(context)
      .slice(0, 3)
      .forEach((value, i) => expect(value).not.toBe(cooler[i]));
  });

  test('that is what follows anyway is not called different', () => {
    const { gel } = processOf(inputsWith({ cure: { gelC: 70 } }));
    expect(gel.how).toBe('entered; as the oven program');
  });

  test('of where the laminate is free of stress moves the warp alone, and has no far end', () => {
    const own = withOven({ stages: usual }, { plies: { ...plies, stressFreeC: 120 } });
    expect(reads.warp(own).working.join(' ')).toContain('entered; differs from where it gels, 70 °C');
    const [warp, ...others] = valuesOf(own);
    const [followedWarp, ...followedOthers] = valuesOf(withOven({ stages: usual }));
    expect(warp! / followedWarp!).toBeCloseTo(99 / 49, 6);
    expect(others).toEqual(followedOthers);
    expect(processOf(own.inputs).stressFreeFarC).toBe(120);
  });
});

describe('without a gel in the program', () => {
  test('a program that ends before is said, and counted from its hottest stage', () => {
    const context = withOven({ stages: [stage(60, 0.2)] });
    expect(processOf(context.inputs)).toMatchObject({ gelAfterS: null, gel: { valueC: 60 } });
    expect(verdictOf(cureReport(context), 'cure.gel')).toMatchObject({ word: 'look again' });
    expect(figureOf(cureReport(context), 'cure.gelAfterS').value).toBeNull();
    const long = cureReport(withOven({ stages: usual }));
    expect(long.verdicts.some(({ id }) => id === 'cure.gel')).toBe(false);
  });

  test('without a stage the gel time’s own temperature counts, and nothing breaks', () => {
    const context = trayContext({ plies, cure: { stages: [] }, closing: { gelTimeAtC: 80 } });
    expect(processOf(context.inputs)).toMatchObject({ gelAfterS: null, hottestC: null, gel: { valueC: 80 } });
    expect(reads.voidPressure(context).working.join(' ')).toContain('for want of an oven program');
  });

  test('cures that contradict each other are the cure step’s matter', () => {
    const supplierCures = [
      { hours: 1, temperatureC: 70 },
      { hours: 2, temperatureC: 120 },
    ];
    expect(processOf(inputsWith({ cure: { supplierCures } })).gel.valueC).toBe(70);
  });
});

describe('the room', () => {
  test('is where oven and mold start, where sizes are taken and where the part is used', () => {
    const inputs = inputsWith({ moldInputs: { roomC: 26 } });
    const { start, inUse, coatSet } = processOf(inputs);
    expect([start, inUse, coatSet].map(({ valueC }) => valueC)).toEqual([26, 26, 26]);
    expect(programOf(inputs)).toMatchObject({ startC: 26, roomC: 26 });
    expect(
      valuesOf(withOven({ stages: usual }, { moldInputs: { roomC: 26 } }))[0]! /
        valuesOf(withOven({ stages: usual }))[0]!,
    ).toBeCloseTo(44 / 49, 6);
  });

  test('and an entry of one’s own goes before it', () => {
    const { start, inUse } = processOf(
      inputsWith({ cure: { startC: 35 }, plies: { roomTemperatureC: -10 } }),
    );
    expect(start).toMatchObject({ valueC: 35, how: 'entered; differs from the room, 21 °C' });
    expect(inUse.valueC).toBe(-10);
  });
});
