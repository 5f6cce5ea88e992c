import { useEffect, useState } from 'react';
import type { OvenRun } from '../../../workbook';
import { useWorkbook, useWorkbookState } from '../../../workbook/useWorkbook';
import { runPhase } from './runMath';

export interface OvenRunControl {
  readonly run: OvenRun;
  readonly nowMs: number;
  /** Why it would not outlive this page; null when it does. */
  readonly problem: string | null;
  /** Another tab edits the project; this one shows its run. */
  readonly disabled: boolean;
  readonly put: (run: OvenRun) => void;
}

const tickMs = 500;

/** The oven run of the open project; it goes on after a reload and behind a closed lid, since only clock times are kept. */
export function useOvenRun(): OvenRunControl {
  const workbook = useWorkbook();
  const run = useWorkbookState((state) => state.ovenRun);
  const disabled = useWorkbookState((state) => state.editor !== 'here');
  const [problem, setProblem] = useState<string | null>(null);
  const [nowMs, setNowMs] = useState(() => Date.now());
  const phase = runPhase(run);
  const ticking = phase === 'running' || phase === 'held';
  useEffect(() => {
    if (!ticking) return undefined;
    const tick = setInterval(() => setNowMs(Date.now()), tickMs);
    return () => clearInterval(tick);
  }, [ticking]);
  return {
    run,
    nowMs,
    problem,
    disabled,
    put(next) {
      const outcome = workbook.setOvenRun(next);
      setProblem(outcome.done ? null : outcome.reason);
      setNowMs(Date.now());
    },
  };
}
