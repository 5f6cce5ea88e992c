import { useEffect, useState } from 'react';
import type { OvenRun } from '../../../workbook';
import { useWorkbook, useWorkbookState } from '../../../workbook/useWorkbook';
import { runPhase } from './runMath';

export interface OvenRunControl {
  readonly run: OvenRun;
  readonly nowMs: number;
  /** By how much the clock on the wall was set back meanwhile. */
  readonly setBackMs: number;
  /** Why it would not outlive this page; null when it does. */
  readonly problem: string | null;
  /** Another tab edits the project; this one shows its run. */
  readonly disabled: boolean;
  /** Takes the run as it is changed at this moment. */
  readonly put: (change: (run: OvenRun, nowMs: number) => OvenRun) => void;
}

const tickMs = 500;

/** The oven run of the open project; it goes on after a reload and behind a closed lid, since only times of the bench clock are kept. */
export function useOvenRun(): OvenRunControl {
  const workbook = useWorkbook();
  const run = useWorkbookState((state) => state.ovenRun);
  const disabled = useWorkbookState((state) => state.editor !== 'here');
  const [problem, setProblem] = useState<string | null>(null);
  const [clock, setClock] = useState(() => workbook.benchClock());
  const phase = runPhase(run);
  const ticking = phase === 'running' || phase === 'held';
  useEffect(() => {
    if (!ticking) return undefined;
    const tick = setInterval(() => setClock(workbook.benchClock()), tickMs);
    return () => clearInterval(tick);
  }, [ticking, workbook]);
  return {
    run,
    ...clock,
    problem,
    disabled,
    put(change) {
      const now = workbook.benchClock();
      const outcome = workbook.setOvenRun(change(run, now.nowMs));
      setProblem(outcome.done ? null : outcome.reason);
      setClock(now);
    },
  };
}
