/** The oven run and the timers of the open project: written by its one editor, followed by every other tab. */
import {
  nextReading,
  savedReadingSchema,
  setBackMs,
  type ClockReading,
  type SavedReading,
} from './benchClock';
import { createBenchStore, type BenchKind } from './benchStore';
import { timersKind } from './benchTimers';
import type { WorkbookCore } from './core';
import { editable } from './editing';
import { benchClockKey } from './keys';
import type { Outcome } from './outcome';
import { ovenRunKind } from './ovenRun';
import type { WorkbookState } from './state';
import type { Workbook } from './workbookApi';

export type Bench = ReturnType<typeof createBench>;

const clockKind: BenchKind<SavedReading> = {
  called: 'The clock of timers and oven run',
  keyOf: benchClockKey,
  schema: savedReadingSchema,
  // Earlier than any clock can show.
  none: { nowMs: 0, wallMs: 0 },
  notSaved: 'The browser did not let the clock be saved.',
};

/** The reading is saved this often while something runs. */
const keepEveryMs = 60_000;

export function createBench({ store, storage, moveAside, addNote, ports }: WorkbookCore) {
  const saved = createBenchStore({ storage, moveAside, onTrouble: addNote });
  let reading: ClockReading | null = null;
  let kept: SavedReading | null = null;

  function put<Value>(kind: BenchKind<Value>, value: Value, shown: Partial<WorkbookState>): Outcome {
    const open = editable(store);
    if (!open.done) return open;
    store.setState(shown);
    const outcome = saved.write(kind, open.project.id, value);
    keepClock();
    return outcome;
  }

  function isSomethingOn(): boolean {
    const { timers, ovenRun } = store.getState();
    return (
      timers.some(({ endsAtMs, heard }) => endsAtMs !== null && !heard) ||
      (ovenRun.startedAtMs !== null && ovenRun.endedAtMs === null)
    );
  }

  /** Without it a clock that is set back while the page is away would be believed; that is all that a failed write costs. */
  function keepClock(): void {
    const open = editable(store);
    if (!open.done || !isSomethingOn()) return;
    const { nowMs, wallMs } = look();
    kept = { nowMs, wallMs };
    saved.write(clockKind, open.project.id, kept);
  }

  function look(): ClockReading {
    // While nothing runs there is nothing to be kept from a clock that was set.
    if (!isSomethingOn()) reading = null;
    reading = nextReading(reading, ports.nowMs(), ports.pageMs());
    return reading;
  }

  function read(projectId: string): void {
    store.setState({
      timers: saved.read(timersKind, projectId),
      ovenRun: saved.read(ovenRunKind, projectId),
    });
  }

  const actions: Pick<Workbook, 'setTimers' | 'setOvenRun' | 'benchClock'> = {
    setTimers: (timers) => put(timersKind, timers, { timers }),
    setOvenRun: (ovenRun) => put(ovenRunKind, ovenRun, { ovenRun }),
    benchClock() {
      const now = look();
      const wasSetBack = kept !== null && setBackMs(now) !== setBackMs(kept);
      if (kept === null || wasSetBack || now.nowMs - kept.nowMs > keepEveryMs) keepClock();
      return { nowMs: now.nowMs, setBackMs: setBackMs(now) };
    },
  };

  return {
    actions,
    keepClock,

    /** Another tab wrote, or left the project to this one. */
    follow: read,

    /** Shows what is saved for a project; null when none is open. */
    show(projectId: string | null): void {
      [reading, kept] = [null, null];
      if (projectId === null) {
        store.setState({ timers: timersKind.none, ovenRun: ovenRunKind.none });
        return;
      }
      read(projectId);
      reading = { ...saved.read(clockKind, projectId), pageMs: null };
    },

    /** Whether a storage key is that of an oven run or of timers of a project. */
    holds: (key: string, projectId: string): boolean =>
      key === timersKind.keyOf(projectId) || key === ovenRunKind.keyOf(projectId),
  };
}
