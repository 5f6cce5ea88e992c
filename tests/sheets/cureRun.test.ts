import { describe, expect, it } from 'vitest';
import { noOvenRun } from '../../src/workbook';
import { columnCurve, keptLog } from '../../src/sheets/cure/run/keptLog';
import {
  elapsedS,
  ended,
  holding,
  programS,
  runEvents,
  runPhase,
  shifted,
  started,
} from '../../src/sheets/cure/run/runMath';
import { programOf } from '../../src/steps/cure/cureChoicesOf';
import { inputsWith } from '../steps/contexts';
import { blockPrediction, lowTemperatureCures } from '../support/curePrediction';

const atMs = 1_800_000_000_000;
const minutes = (count: number) => atMs + 60_000 * count;

describe('the clock of an oven run', () => {
  it('counts from the start by the clock on the wall', () => {
    const run = started(noOvenRun, atMs);
    expect(runPhase(noOvenRun)).toBe('ready');
    expect(runPhase(run)).toBe('running');
    expect(elapsedS(run, minutes(90))).toBe(5400);
    expect(programS(run, minutes(90))).toBe(5400);
  });

  it('stops the program while held, not the clock', () => {
    const held = holding(started(noOvenRun, atMs), minutes(30));
    expect(runPhase(held)).toBe('held');
    expect(programS(held, minutes(50))).toBe(1800);
    const goesOn = holding(held, minutes(50));
    expect(programS(goesOn, minutes(60))).toBe(2400);
    expect(elapsedS(goesOn, minutes(60))).toBe(3600);
  });

  it('is shifted when the button was late, never into the future, and ends', () => {
    const run = shifted(started(noOvenRun, atMs), -300, minutes(10));
    expect(elapsedS(run, minutes(10))).toBe(900);
    expect(elapsedS(shifted(run, 3600, minutes(10)), minutes(10))).toBe(0);
    const over = ended(holding(run, minutes(20)), minutes(40));
    expect(runPhase(over)).toBe('ended');
    expect(elapsedS(over, minutes(4000))).toBe(2700);
    expect(programS(over, minutes(4000))).toBe(1500);
  });
});

describe('what is due', () => {
  const inputs = inputsWith({ cure: { supplierCures: lowTemperatureCures } });

  it('lists dial, clamps, laminate, dose and opening in order of time', () => {
    const events = runEvents(programOf(inputs), blockPrediction(inputs));
    expect(events.map(({ id }) => id).filter((id) => !id.startsWith('laminate'))).toEqual([
      'turn-0',
      'reclamp',
      'turn-1',
      'dose',
      'off',
      'demold',
    ]);
    expect(events.every(({ atS }, i) => i === 0 || atS >= (events[i - 1]?.atS ?? 0))).toBe(true);
    expect(events.find(({ id }) => id === 'turn-1')).toMatchObject({
      atS: 10_800,
      text: 'Turn the dial to 120 °C',
    });
  });

  it('knows the dial alone without a prediction, and nothing of a program that never heats', () => {
    expect(runEvents(programOf(inputs), null).map(({ id }) => id)).toEqual([
      'turn-0',
      'reclamp',
      'turn-1',
      'off',
    ]);
    expect(runEvents({ ...programOf(inputs), stages: [] }, null)).toEqual([]);
  });
});

describe('a log kept with the run', () => {
  const rows = Array.from({ length: 3000 }, (_, i) => `${i * 10},${60 + i / 100},${20 + i / 100}`);

  it('is thinned, keeps its ends, and takes the coolest column for the laminate', () => {
    const log = keptLog(['Time (s),Air (C),Part (C)', ...rows].join('\n'), 'oven.csv');
    expect(log.columns.map(({ name }) => name)).toEqual(['Air (C)', 'Part (C)']);
    expect(log.laminate).toBe(1);
    expect(log.columns[0]?.timesS.length).toBeLessThan(700);
    const curve = columnCurve({ ...log, startsAfterS: 60 }, 1);
    expect(curve?.timesS[0]).toBe(60);
    expect(curve?.timesS.at(-1)).toBe(30_050);
    expect(columnCurve(log, 9)).toBeNull();
  });

  it('keeps gaps, and turns Fahrenheit into Celsius', () => {
    const gapped = rows
      .filter((_, i) => i < 500 || i > 900)
      .map((row) => row.split(',').slice(0, 2).join(';'));
    const log = keptLog(['Time (s);Part (F)', ...gapped].join('\n'), 'oven.csv');
    expect(log.columns[0]?.gaps).toEqual([{ fromS: 4990, untilS: 9010 }]);
    expect(log.columns[0]?.timesS).toEqual(expect.arrayContaining([4990, 9010]));
    expect(log.columns[0]?.valuesC[0]).toBeCloseTo((60 - 32) / 1.8, 6);
    expect(log.remarks.some((remark) => remark.includes('gap'))).toBe(true);
  });

  it('refuses what is no log with a sentence', () => {
    expect(() => keptLog('<html>not found</html>', 'oven.csv')).toThrow('not a log that can be read');
    expect(() => keptLog('', 'oven.csv')).toThrow('empty');
  });
});
