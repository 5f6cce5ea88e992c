import { useId } from 'react';
import type { PlannedTime } from '../../steps/mold/plannedTimes';
import { Announcer } from '../../ui/Announcer';
import { Button } from '../../ui/Button';
import { NumberCell } from '../../ui/NumberCell';
import type { BenchTimer } from '../../workbook';
import { timerLabel } from './timerLabel';
import { clockText, heard, leftMs, paused, setTo, started, timerPhase } from './timerMath';
import { ownTime, type TimerChange } from './useBenchTimers';
import './timers.css';

export interface TimerPanelProps {
  /** "Timer 1". */
  readonly name: string;
  readonly timer: BenchTimer;
  readonly planned: readonly PlannedTime[];
  readonly nowMs: number;
  readonly disabled: boolean;
  readonly onChange: (change: TimerChange) => void;
}

const ownMinutes = { unit: 'min', min: 0.1, max: 10_000, decimals: 1 } as const;

/** One timer with a readout to be read from across the bench. */
export function TimerPanel({ name, timer, planned, nowMs, disabled, onChange }: TimerPanelProps) {
  const id = useId();
  const phase = timerPhase(timer, nowMs);
  const idle = phase === 'ready' || phase === 'paused';
  const label = timerLabel(timer, planned);
  const text = clockText(leftMs(timer, nowMs));
  return (
    <section className={`timer timer-${phase}`} aria-label={name}>
      <div className="timer-head">
        <label htmlFor={id}>{name}</label>
        <select
          id={id}
          className="select"
          value={planned.some((one) => one.id === timer.what) ? timer.what : ownTime}
          disabled={disabled || !idle}
          onChange={(event) => {
            const chosen = planned.find((one) => one.id === event.target.value);
            onChange(() => setTo(chosen?.id ?? ownTime, chosen?.lengthS ?? timer.lengthS));
          }}
        >
          {planned.map((one) => (
            <option key={one.id} value={one.id}>
              {one.label} · {clockText(one.lengthS * 1000)}
            </option>
          ))}
          <option value={ownTime}>Own time</option>
        </select>
        {timer.what === ownTime && phase === 'ready' ? (
          <NumberCell
            label={`${name}, own time`}
            limits={ownMinutes}
            disabled={disabled}
            value={timer.lengthS / 60}
            onChange={(minutes) => {
              if (minutes !== null) onChange(() => setTo(ownTime, minutes * 60));
            }}
          />
        ) : null}
      </div>
      <p
        className={`timer-clock ${text.length > 5 ? 'timer-clock-long' : ''}`}
        role="timer"
        aria-label={`${name}: ${label}`}
      >
        {text}
      </p>
      <div className="button-row">
        {idle ? (
          <Button kind="main" disabled={disabled} onClick={() => onChange(started)}>
            {phase === 'paused' ? 'Go on' : 'Start'}
          </Button>
        ) : null}
        {phase === 'running' ? (
          <Button disabled={disabled} onClick={() => onChange(paused)}>
            Pause
          </Button>
        ) : null}
        {phase === 'over' && !timer.heard ? (
          <Button kind="main" disabled={disabled} onClick={() => onChange(heard)}>
            Stop the sound
          </Button>
        ) : null}
        {phase === 'ready' ? null : (
          <Button disabled={disabled} onClick={() => onChange(() => setTo(timer.what, timer.lengthS))}>
            Set back
          </Button>
        )}
      </div>
      <Announcer message={phase === 'over' ? `${label}: the time is over.` : ''} />
    </section>
  );
}
