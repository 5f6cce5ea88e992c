import { useEffect, useRef, useState } from 'react';
import type { PlannedTime } from '../../steps/mold/plannedTimes';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';
import type { BenchTimer } from '../../workbook';
import { createBell, type Bell } from './bell';
import { isRinging, setTo, timerPhase } from './timerMath';
import { notify } from './useNotifications';

export type TimerChange = (timer: BenchTimer, nowMs: number) => BenchTimer;

export interface BenchTimers {
  readonly timers: readonly BenchTimer[];
  readonly nowMs: number;
  /** By how much the clock on the wall was set back meanwhile. */
  readonly setBackMs: number;
  /** Why they would not outlive this page; null when they do. */
  readonly problem: string | null;
  /** Another tab edits the project; this one shows its timers and leaves the sound to it. */
  readonly disabled: boolean;
  /** Puts a timer at its place, the first or the second, as it is changed at this moment. */
  readonly put: (place: number, change: TimerChange) => void;
}

/** Two timers, and what each is set to before the maker sets it: the slurry in the bowl, and the half that sets. */
const firstSet = ['mixing', 'demold'] as const;
export const ownTime = 'own';
const usualS = 300;

/** A timer that has not been started follows the inputs that its time comes from. */
function withPlanned(timer: BenchTimer, planned: readonly PlannedTime[], nowMs: number): BenchTimer {
  const time = planned.find(({ id }) => id === timer.what);
  const follows = time !== undefined && timerPhase(timer, nowMs) === 'ready';
  return follows && time.lengthS !== timer.lengthS ? setTo(time.id, time.lengthS) : timer;
}

function unset(what: string, planned: readonly PlannedTime[]): BenchTimer {
  const lengthS = planned.find(({ id }) => id === what)?.lengthS;
  return lengthS === undefined ? setTo(ownTime, usualS) : setTo(what, lengthS);
}

/** The readout changes every second; this keeps it within a quarter of one. */
const tickMs = 250;
const ringEveryMs = 2000;

/** The timers of the open project: they tick and ring on every sheet of it, and go on after a reload. */
export function useBenchTimers(planned: readonly PlannedTime[]): BenchTimers {
  const workbook = useWorkbook();
  const saved = useWorkbookState((state) => state.timers);
  const disabled = useWorkbookState((state) => state.editor !== 'here');
  const [problem, setProblem] = useState<string | null>(null);
  const [clock, setClock] = useState(() => workbook.benchClock());
  const { nowMs } = clock;
  const bell = useRef<Bell | null>(null);
  const timers = firstSet.map((what, place) =>
    withPlanned(saved[place] ?? unset(what, planned), planned, nowMs),
  );

  const alive = timers.some(({ endsAtMs, heard }) => endsAtMs !== null && (endsAtMs > nowMs || !heard));
  useEffect(() => {
    if (!alive) return undefined;
    const tick = setInterval(() => setClock(workbook.benchClock()), tickMs);
    // After a reload the first touch of the page lets the bell sound.
    const wake = () => bell.current?.wake();
    bell.current ??= createBell();
    window.addEventListener('pointerdown', wake);
    window.addEventListener('keydown', wake);
    return () => {
      clearInterval(tick);
      window.removeEventListener('pointerdown', wake);
      window.removeEventListener('keydown', wake);
    };
  }, [alive, workbook]);

  const ringing = !disabled && timers.some((timer) => isRinging(timer, nowMs));
  useEffect(() => {
    if (!ringing) return undefined;
    notify('A timer of the bench is over.');
    bell.current?.ring();
    const again = setInterval(() => bell.current?.ring(), ringEveryMs);
    return () => clearInterval(again);
  }, [ringing]);

  useEffect(
    () => () => {
      bell.current?.close();
      bell.current = null;
    },
    [],
  );

  return {
    timers,
    ...clock,
    problem,
    disabled,
    put(place, change) {
      const before = timers[place];
      if (before === undefined) return;
      const now = workbook.benchClock();
      const timer = change(before, now.nowMs);
      const outcome = workbook.setTimers(timers.with(place, timer));
      setProblem(outcome.done ? null : outcome.reason);
      setClock(now);
      if (timerPhase(timer, now.nowMs) === 'running') {
        bell.current ??= createBell();
        bell.current.wake();
      }
    },
  };
}
