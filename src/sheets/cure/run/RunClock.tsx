import { clockHours, hoursMinutes } from '../../../steps/cure/say';
import { Button } from '../../../ui/Button';
import { DataTable } from '../../../ui/DataTable';
import { SetBackNote } from '../../timers/SetBackNote';
import { clockText } from '../../timers/timerMath';
import { elapsedS, ended, holding, programS, runPhase, shifted, started, type RunEvent } from './runMath';
import type { OvenRunControl } from './useOvenRun';

const nudgeS = 300;
const phaseWords = { ready: 'not started', running: 'on', held: 'held', ended: 'ended' } as const;

/** The clock of the oven, what is due, and the buttons that start, shift, hold and end the run. */
export function RunClock({
  control,
  events,
}: {
  readonly control: OvenRunControl;
  readonly events: readonly RunEvent[];
}) {
  const { run, nowMs, setBackMs, disabled, put } = control;
  const phase = runPhase(run);
  const atS = programS(run, nowMs);
  const next = events.find((event) => event.atS > atS);
  const last = events.findLast((event) => event.atS <= atS);
  return (
    <>
      <div className="run-clock">
        <p className="run-time" role="timer" aria-label="Time since the oven was started">
          {clockText(1000 * Math.floor(elapsedS(run, nowMs)))}
        </p>
        <p>
          Run {phaseWords[phase]}
          {run.startedAtMs === null ? '' : `, started at ${timeOfDay(run.startedAtMs - setBackMs)}`}
          {run.heldMs > 0 ? `, held for ${hoursMinutes(run.heldMs / 1000)} so far` : ''}.
        </p>
        {phase === 'ready' || phase === 'ended' ? null : (
          <p className="run-next" aria-live="polite">
            {last === undefined ? null : <>Now: {last.text}. </>}
            {next === undefined ? 'Nothing more is due.' : `Next at ${clockHours(next.atS)}: ${next.text}.`}
          </p>
        )}
        {phase === 'running' && next !== undefined ? (
          <p className="quiet">In {hoursMinutes(next.atS - atS)}.</p>
        ) : null}
      </div>
      <SetBackNote setBackMs={setBackMs} />
      <div className="button-row below-table">
        {phase === 'ready' || phase === 'ended' ? (
          <Button kind="main" disabled={disabled} onClick={() => put(started)}>
            {phase === 'ended' ? 'Start a new run' : 'Oven on: start the run'}
          </Button>
        ) : (
          <>
            <Button disabled={disabled} onClick={() => put(holding)}>
              {phase === 'held' ? 'Go on' : 'Hold the program'}
            </Button>
            <Button disabled={disabled} onClick={() => put((at, now) => shifted(at, -nudgeS, now))}>
              Started 5 min earlier
            </Button>
            <Button disabled={disabled} onClick={() => put((at, now) => shifted(at, nudgeS, now))}>
              Started 5 min later
            </Button>
            <Button kind="danger" disabled={disabled} onClick={() => put(ended)}>
              End the run
            </Button>
          </>
        )}
      </div>
      <DataTable
        caption="What is due, h:min of the program"
        columns={[
          { id: 'at', header: 'At', numeric: true, cell: ({ atS: dueS }: RunEvent) => clockHours(dueS) },
          { id: 'what', header: 'Due', cell: ({ text }) => text },
        ]}
        rows={events}
        rowKey={({ id }) => id}
        marked={({ id }) => phase !== 'ready' && id === last?.id}
      />
    </>
  );
}

function timeOfDay(atMs: number): string {
  const at = new Date(atMs);
  return `${at.getHours()}:${String(at.getMinutes()).padStart(2, '0')}`;
}
