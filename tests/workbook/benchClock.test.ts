/** The clock of timers and oven run, whatever is done to the clock on the wall. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { noOvenRun } from '../../src/workbook';
import { nextReading, setBackMs, type ClockReading } from '../../src/workbook/benchClock';
import { createMachine, done, propertySeed, tabWithProject } from './support';

const dayMs = 86_400_000;
const startMs = Date.UTC(2031, 4, 6, 8);

/** Reads the clock after steps of the wall clock and of the page's clock, each in ms. */
function after(...steps: readonly (readonly [wallMs: number, pageMs: number])[]): ClockReading {
  let [wallMs, pageMs] = [startMs, 500];
  let reading = nextReading(null, wallMs, pageMs);
  for (const [wallStepMs, pageStepMs] of steps) {
    wallMs += wallStepMs;
    pageMs += pageStepMs;
    reading = nextReading(reading, wallMs, pageMs);
  }
  return reading;
}

const passedMs = (reading: ClockReading): number => reading.nowMs - startMs;

describe(`the bench clock (seed ${propertySeed})`, () => {
  it('is the wall clock while nobody sets that', () => {
    const reading = after([250, 250], [60_003, 60_000], [10_000, 10_004]);
    expect(passedMs(reading)).toBe(70_253);
    expect(setBackMs(reading)).toBe(0);
  });

  it('believes the wall clock behind a closed lid, where the page clock stands', () => {
    expect(passedMs(after([250, 250], [2 * 3_600_000, 10]))).toBe(7_200_250);
  });

  it('goes on by the page clock when the wall clock goes back a day, and tells by how much', () => {
    const reading = after([10_000, 10_000], [-dayMs + 5000, 5000], [5000, 5000]);
    expect(passedMs(reading)).toBe(20_000);
    expect(setBackMs(reading)).toBe(dayMs);
  });

  it('counts a closed lid after the clock was set back', () => {
    expect(passedMs(after([10_000, 10_000], [-dayMs, 250], [3_600_000, 0]))).toBe(3_610_250);
  });

  it('follows the wall clock again once that was put right', () => {
    const reading = after([10_000, 10_000], [-dayMs + 1000, 1000], [dayMs + 1000, 1000], [1000, 1000]);
    expect(passedMs(reading)).toBe(13_000);
    expect(setBackMs(reading)).toBe(0);
  });

  it('never goes back, never falls behind the page clock, and runs no further than both clocks went', () => {
    const step = fc.tuple(
      fc.integer({ min: -2 * dayMs, max: 2 * dayMs }),
      fc.integer({ min: 0, max: 60_000 }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 20 }), (steps) => {
        let former = after();
        let mostMs = 0;
        for (const [at, [wallMs, pageMs]] of steps.entries()) {
          const reading = after(...steps.slice(0, at + 1));
          const stepMs = reading.nowMs - former.nowMs;
          mostMs += Math.max(wallMs, pageMs, 0);
          expect(stepMs).toBeGreaterThanOrEqual(Math.max(0, pageMs - 2000));
          expect(passedMs(reading)).toBeLessThanOrEqual(mostMs);
          former = reading;
        }
      }),
    );
  });
});

const runFrom = (startedAtMs: number) => ({ ...noOvenRun, startedAtMs });

describe('the bench clock over a reload', () => {
  it('does not go back with the wall clock: an hour of oven stays an hour', async () => {
    const { machine, tab, workbook, id } = await tabWithProject();
    const fromMs = workbook.benchClock().nowMs;
    done(workbook.setOvenRun(runFrom(fromMs)));
    machine.clock.nowMs += 3_600_000;
    workbook.benchClock();
    tab.hide();
    tab.crash();
    machine.clock.nowMs -= dayMs;
    const later = machine.tab().workbook;
    done(await later.openProject(id));
    expect(later.benchClock()).toEqual({ nowMs: fromMs + 3_600_000, setBackMs: dayMs });
    machine.clock.nowMs += 60_000;
    expect(later.benchClock().nowMs).toBe(fromMs + 3_660_000);
  });

  it('counts the time that the page was away', async () => {
    const { machine, tab, workbook, id } = await tabWithProject();
    const fromMs = workbook.benchClock().nowMs;
    done(workbook.setOvenRun(runFrom(fromMs)));
    tab.crash();
    machine.clock.nowMs += 3_600_000;
    const later = machine.tab().workbook;
    done(await later.openProject(id));
    expect(later.benchClock()).toEqual({ nowMs: fromMs + 3_600_000, setBackMs: 0 });
  });

  it('starts from the wall clock as long as nothing runs', async () => {
    const { machine, workbook } = await tabWithProject();
    workbook.benchClock();
    machine.clock.nowMs -= dayMs;
    expect(workbook.benchClock()).toEqual({ nowMs: machine.clock.nowMs, setBackMs: 0 });
  });

  it('is saved every minute while something runs, not at every tick', async () => {
    const { machine, workbook } = await tabWithProject(createMachine());
    done(workbook.setOvenRun(runFrom(workbook.benchClock().nowMs)));
    let writes = 0;
    machine.beforeWrite = () => (writes += 1);
    for (let tick = 0; tick < 1200; tick += 1) {
      machine.clock.nowMs += 250;
      machine.clock.pageMs += 250;
      workbook.benchClock();
    }
    expect(writes).toBe(4);
  });
});
