import { describe, expect, it } from 'vitest';
import { noOvenRun } from '../../src/workbook';
import { createBenchStore } from '../../src/workbook/benchStore';
import { ovenRunKey } from '../../src/workbook/keys';
import { ovenRunKind } from '../../src/workbook/ovenRun';
import { memoryStorage } from '../../src/workbook/storagePort';
import { fitWorking } from '../../src/sheets/cure/run/fitWorking';
import { airCurve, columnCurve, keptLog, thermocoupleOf } from '../../src/sheets/cure/run/keptLog';
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
import { programOf } from '../../src/steps/shared/process';
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
  const stages = [
    { targetC: 70, rampKPerMin: null, dwellHours: 3 },
    { targetC: 120, rampKPerMin: null, dwellHours: 1.5 },
  ];
  const inputs = inputsWith({ cure: { supplierCures: lowTemperatureCures, stages } });

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
    expect([log.air, log.place]).toEqual([0, { kind: 'coldest' }]);
    expect(airCurve(log)?.valuesC[0]).toBe(60);
    expect(thermocoupleOf({ ...noOvenRun, log })).toBeNull();
    expect(thermocoupleOf({ ...noOvenRun, log: { ...log, place: { kind: 'hottest' } } })).toEqual({
      kind: 'hottest',
    });
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

describe('the working of a fit', () => {
  const rows = Array.from({ length: 100 }, (_, i) => `${i * 60},${60 + i / 10},${20 + i / 10}`);
  const log = keptLog(['Time (s),Air (C),Part (C)', ...rows].join('\n'), 'oven.csv');
  const curve = { timesS: [0, 60], valuesC: [20, 21] };
  const one = { filmWPerM2K: 20, heldShare: 0.4, airOffsetK: 1.26, misfitK: 0.4, predicted: curve };
  const fits = [
    { ...one, treatment: 'none', misfitK: 3 },
    { ...one, treatment: 'vapor-held' },
    { ...one, treatment: 'open air', misfitK: 5 },
  ] as const;
  const fit = { fits, best: fits[1], chosen: true, placeOffMm: 0, readings: 100 };

  it('names place, readings, air and its sensor', () => {
    const said = fitWorking(fit, { ...log, startsAfterS: 300 }).join(' ');
    expect(said).toContain(
      '100 readings of “Part (C)” with the prediction at the coldest place of the laminate',
    );
    expect(said).toContain('as logged in “Air (C)”, whose sensor reads 1.3 K too high');
    expect(said).toContain('5.0 min after the oven');
    expect(said).toContain('3.0 K if');
    expect(said).not.toContain('gap');
  });

  it('says that the air was predicted, how far a point is off, and what gaps mean', () => {
    const [air, part] = log.columns;
    const gapped = {
      ...log,
      air: null,
      columns: [air!, { ...part!, gaps: [{ fromS: 60, untilS: 900 }] }],
      place: { kind: 'point' as const, atMm: [1, 2, 3.5] as [number, number, number] },
    };
    const said = fitWorking({ ...fit, placeOffMm: 2 }, gapped).join(' ');
    expect(said).toContain(
      'the point 1.0, 2.0, 3.5 mm of the part, whose nearest brick of laminate is 2.0 mm away',
    );
    expect(said).toContain('taken as predicted');
    expect(said).toContain('The log of the laminate has 1 gap: nothing is compared there.');
  });
});

describe('a saved run', () => {
  it('from before there was a place and an air column reads as the coldest place without one', () => {
    const log = keptLog('Time (s),Part (C)\n0,20\n60,21\n120,22\n180,23\n', 'oven.csv');
    const { air: _air, place: _place, ...older } = log;
    const storage = memoryStorage();
    const options = { storage, moveAside: () => true, onTrouble: (note: string) => expect(note).toBe('') };
    storage.setItem(ovenRunKey('one'), JSON.stringify({ ...noOvenRun, log: older }));
    expect(createBenchStore(options).read(ovenRunKind, 'one').log).toMatchObject({
      air: null,
      place: { kind: 'coldest' },
    });
  });
});
