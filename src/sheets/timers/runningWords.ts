/** What runs, short enough for the title of the tab; '' while nothing does. */
import { hoursMinutes } from '../../steps/cure/say';
import type { PlannedTime } from '../../steps/mold/plannedTimes';
import type { BenchTimer, OvenRun } from '../../workbook';
import { elapsedS, runPhase } from '../cure/run/runMath';
import { clockText, leftMs, timerPhase } from './timerMath';
import { timerLabel } from './timerLabel';

export function runningWords(
  timers: readonly BenchTimer[],
  planned: readonly PlannedTime[],
  run: OvenRun,
  nowMs: number,
): string {
  const running = timers.flatMap((timer) => {
    const phase = timerPhase(timer, nowMs);
    if (phase === 'over' && !timer.heard) return [`OVER: ${timerLabel(timer, planned)}`];
    return phase === 'running' ? [`${clockText(leftMs(timer, nowMs))} ${timerLabel(timer, planned)}`] : [];
  });
  const phase = runPhase(run);
  const oven =
    phase === 'running' || phase === 'held'
      ? [`Oven ${hoursMinutes(60 * Math.floor(elapsedS(run, nowMs) / 60))}`]
      : [];
  return [...running, ...oven].join(' · ');
}
