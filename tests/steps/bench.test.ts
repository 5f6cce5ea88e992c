import { describe, expect, test } from 'vitest';
import type { BenchBlank } from '../../src/steps/bench/blank';
import { benchBlanks } from '../../src/steps/bench/blanks';
import { followsFrom } from '../../src/steps/bench/follows';
import {
  expectedWords,
  inputAt,
  measuredAt,
  standingOf,
  withoutReadings,
  writeReading,
} from '../../src/steps/bench/written';
import { defaultProjectInputs, projectInputsSchema, specAt } from '../../src/steps/inputs/project';
import { figuresById } from '../../src/steps/kit/figuresById';
import { stepReports } from '../../src/steps/registry';
import type { StepContext } from '../../src/steps/shared/context';
import { trayContext } from './contexts';

const supplierCures = [
  { hours: 16, temperatureC: 70 },
  { hours: 1, temperatureC: 120 },
];
const planned = trayContext({ cure: { supplierCures } });
const blanks = benchBlanks(planned, stepReports(planned));
const blankOf = (id: string): BenchBlank => {
  const found = blanks.find((one) => one.id.startsWith(id));
  if (found === undefined) throw new Error(`no blank ${id}`);
  return found;
};

function withReading(id: string, value: number): StepContext {
  const inputs = structuredClone(planned.inputs);
  writeReading(inputs, blankOf(id).path, value);
  return { ...planned, inputs };
}
const follows = (id: string, value: number) => {
  const context = withReading(id, value);
  return followsFrom(blankOf(id), context, figuresById(stepReports(context)));
};

describe('a reading', () => {
  test.each(blanks.map((blank) => [blank.id, blank] as const))(
    '%s is an input of a step, kept by the schema',
    (_, blank) => {
      expect(specAt(blank.path)?.kind).toBe('number');
      const inputs = structuredClone(planned.inputs);
      const value = blank.expected ?? 100;
      writeReading(inputs, blank.path, value);
      expect(inputAt(inputs, blank.path)).toBe(value);
      expect(projectInputsSchema.safeParse(inputs).success).toBe(true);
    },
  );

  test('taken away leaves the inputs as they were', () => {
    const inputs = structuredClone(defaultProjectInputs);
    for (const path of [
      'closing.debulkedMm',
      'bench.finishedMassG',
      'mold.measured.patternG',
      'closing.clamps.0.forceN',
    ]) {
      writeReading(inputs, path, 120);
      writeReading(inputs, path, null);
    }
    expect(inputs).toEqual(defaultProjectInputs);
  });

  test('of the drying log makes the weighings before it', () => {
    const inputs = structuredClone(defaultProjectInputs);
    writeReading(inputs, 'mold.dryingLog.2.negativeG', 400);
    expect(inputs.mold.dryingLog).toEqual([
      { hours: 0, negativeG: null, positiveG: null },
      { hours: 24, negativeG: null, positiveG: null },
      { hours: 28, negativeG: 400, positiveG: null },
    ]);
  });

  test('is none while the ready-made value stands', () => {
    expect(measuredAt(defaultProjectInputs, { path: 'closing.clamps.0.forceN' })).toBeNull();
    expect(measuredAt(defaultProjectInputs, { path: 'closing.debulkedMm' })).toBeNull();
  });

  test('the plan is the project without any of them', () => {
    let { inputs } = planned;
    expect(withoutReadings(inputs)).toBe(inputs);
    inputs = structuredClone(inputs);
    for (const { path, expected, id } of blanks)
      if (!id.startsWith('clamp')) writeReading(inputs, path, expected ?? 10);
    expect(withoutReadings(inputs)).toEqual(planned.inputs);
  });
});

test('stands in or out of its band', () => {
  expect(standingOf(null, [1, 2])).toBe('not measured');
  expect(standingOf(2, [1, 2])).toBe('as expected');
  expect(standingOf(2.01, [1, 2])).toBe('out of band');
  expect(standingOf(9, null)).toBe('as expected');
  expect(expectedWords({ expected: 0.75, band: [0.69, 0.81], unit: 'mm', decimals: 2 })).toBe(
    '0.75 mm (0.69 to 0.81)',
  );
});

describe('what follows', () => {
  test('a caliper on plies: the stack as laid', () => {
    expect(follows('caliper', 0.9)).toContain('Stack as laid 0.90\u202fmm');
  });

  test('a wall: the air in it, or the fiber', () => {
    // 0.701 mm of fiber and resin in 0.86 mm.
    expect(follows('wall.typical', 0.86)).toContain('18 % of it would be air');
    expect(follows('wall.typical', 0.67)).toBe('It suits the plies.');
    expect(follows('wall.typical', 0.5)).toContain('Too thin');
  });

  test('time at the dwell: the dose, and how much longer', () => {
    // The log is within 5 K of 120 °C for an hour: an hour at 115 °C of the two cures.
    const energy = (8.314 * Math.log(16)) / (1 / 343.15 - 1 / 393.15);
    const rate = Math.exp((energy / 8.314) * (1 / 393.15 - 1 / 388.15));
    const moreMin = Math.round(60 * (1 - rate));
    expect(follows('held', 60)).toContain(`dose ${rate.toFixed(2)}: hold ${moreMin} min more at 120 °C`);
    expect(follows('held', 90)).toContain('least cure is met');
  });

  test('a finished length: the scale of the next print', () => {
    // 120 mm wanted, 119.4 mm made at scale 1.
    expect(follows('finished.x', 119.4)).toContain('0.60 mm short: print the next pattern at scale 1.0050');
    expect(follows('finished.x', 120.1)).toContain('within what you accept');
  });

  test('the weight of the part: resin lost, or too much of it', () => {
    const { expected } = blankOf('finished.mass');
    expect(follows('finished.mass', 0.8 * (expected ?? 1))).toContain('lighter than planned');
    expect(follows('finished.mass', 1.2 * (expected ?? 1))).toContain('heavier than planned');
  });
});

const wordsOf = (context: StepContext) =>
  new Map(
    [...stepReports(context)]
      .filter(([id]) => id !== 'checklist')
      .flatMap(([, { verdicts }]) => verdicts.map(({ id, word }) => [id, word] as const)),
  );

test('a pattern that is measured short turns the verdict on sizes, and no other', () => {
  const before = wordsOf(planned);
  const after = wordsOf(withReading('print.x', 118));
  expect([...after].filter(([id, word]) => before.get(id) !== word).map(([id]) => id)).toEqual(['mold.size']);
});
