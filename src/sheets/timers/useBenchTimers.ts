import { useEffect, useRef, useState } from 'react';
import { useWorkbook } from '../../workbook/useWorkbook';
import type { BenchTimer } from '../../workbook';
import { createBell, type Bell } from './bell';
import { isRinging, setTo, timerPhase } from './timerMath';

export interface BenchTimers {
  readonly timers: readonly BenchTimer[];
  readonly nowMs: number;
  /** Why they would not outlive this page; null when they do. */
  readonly problem: string | null;
  /** Puts a timer at its place, the first or the second. */
  readonly put: (place: number, timer: BenchTimer) => void;
}

/** Two hands, two timers. */
const timerCount = 2;
export const ownTime = 'own';
const usualS = 300;

/** The readout changes every second; this keeps it within a quarter of one. */
const tickMs = 250;
const ringEveryMs = 2000;

/** The timers of the open project: they tick and ring on every sheet of it, and go on after a reload. */
export function useBenchTimers(projectId: string): BenchTimers {
  const workbook = useWorkbook();
  const [timers, setTimers] = useState<readonly BenchTimer[]>(() => {
    const saved = workbook.timersOf(projectId);
    return Array.from({ length: timerCount }, (_, place) => saved[place] ?? setTo(ownTime, usualS));
  });
  const [problem, setProblem] = useState<string | null>(null);
  const [nowMs, setNowMs] = useState(() => Date.now());
  const bell = useRef<Bell | null>(null);

  const alive = timers.some(({ endsAtMs, heard }) => endsAtMs !== null && (endsAtMs > nowMs || !heard));
  useEffect(() => {
    if (!alive) return undefined;
    const tick = setInterval(() => setNowMs(Date.now()), tickMs);
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
  }, [alive]);

  const ringing = timers.some((timer) => isRinging(timer, nowMs));
  useEffect(() => {
    if (!ringing) return undefined;
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
    nowMs,
    problem,
    put(place, timer) {
      const next = timers.with(place, timer);
      const outcome = workbook.setTimers(projectId, next);
      setProblem(outcome.done ? null : outcome.reason);
      setTimers(next);
      setNowMs(Date.now());
      if (timerPhase(timer, Date.now()) === 'running') {
        bell.current ??= createBell();
        bell.current.wake();
      }
    },
  };
}
