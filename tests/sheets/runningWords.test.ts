import { expect, test } from 'vitest';
import { runningWords } from '../../src/sheets/timers/runningWords';
import { setTo, started } from '../../src/sheets/timers/timerMath';
import { noOvenRun } from '../../src/workbook/ovenRun';

const planned = [{ id: 'mixing', label: 'Mixing', lengthS: 60 }];
const timer = started(setTo('mixing', 60), 0);

test('the title of the tab says what runs: timers, then the oven', () => {
  const on = { ...noOvenRun, startedAtMs: 0 };
  expect(runningWords([timer], planned, on, 15_000)).toBe('0:45 Mixing · Oven 0 min');
  expect(runningWords([timer], planned, on, 3_900_000)).toBe('OVER: Mixing · Oven 1 h 05 min');
  expect(runningWords([{ ...timer, heard: true }], planned, { ...on, endedAtMs: 5 }, 70_000)).toBe('');
});
