import type { PlannedTime } from '../../steps/mold/plannedTimes';
import { Announcer } from '../../ui/Announcer';
import { Button } from '../../ui/Button';
import { timerLabel } from './timerLabel';
import { clockText, heard, leftMs, timerPhase } from './timerMath';
import type { BenchTimers } from './useBenchTimers';
import './timers.css';

export interface TimerStripProps {
  readonly bench: BenchTimers;
  readonly planned: readonly PlannedTime[];
  /** Where the timers are set. */
  readonly href: string;
}

/** What runs or has run out, on the sheets that have no timers of their own. */
export function TimerStrip({ bench, planned, href }: TimerStripProps) {
  const { timers, nowMs } = bench;
  const shown = timers.flatMap((timer, place) =>
    timer.endsAtMs === null || (timer.heard && timer.endsAtMs <= nowMs)
      ? []
      : [{ timer, place, phase: timerPhase(timer, nowMs) }],
  );
  if (shown.length === 0) return null;
  return (
    <div className="timer-strip">
      {shown.map(({ timer, place, phase }) => (
        <div key={place}>
          <a href={href}>{timerLabel(timer, planned)}</a>{' '}
          <span className="number">{clockText(leftMs(timer, nowMs))}</span>{' '}
          {phase === 'over' && !bench.disabled ? (
            <Button onClick={() => bench.put(place, heard)}>Stop the sound</Button>
          ) : null}
          <Announcer message={phase === 'over' ? `${timerLabel(timer, planned)}: the time is over.` : ''} />
        </div>
      ))}
    </div>
  );
}
