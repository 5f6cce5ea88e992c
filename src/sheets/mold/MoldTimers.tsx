import type { PlannedTime } from '../../steps/mold/plannedTimes';
import { SetBackNote } from '../timers/SetBackNote';
import { TimerPanel } from '../timers/TimerPanel';
import type { BenchTimers } from '../timers/useBenchTimers';

export interface MoldTimersProps {
  readonly bench: BenchTimers;
  readonly planned: readonly PlannedTime[];
}

/** Two timers at once: one for the slurry in the bowl, one for the half that sets. */
export function MoldTimers({ bench, planned }: MoldTimersProps) {
  return (
    <>
      <div className="timers">
        {bench.timers.map((timer, place) => (
          <TimerPanel
            key={place}
            name={`Timer ${place + 1}`}
            timer={timer}
            planned={planned}
            nowMs={bench.nowMs}
            disabled={bench.disabled}
            onChange={(change) => bench.put(place, change)}
          />
        ))}
      </div>
      <SetBackNote setBackMs={bench.setBackMs} />
      {bench.problem === null ? null : (
        <p className="field-error" role="alert">
          {bench.problem}
        </p>
      )}
    </>
  );
}
