import type { CurePrediction } from '../../core/cure/predictCure';
import type { OvenProgram } from '../../core/cure/ovenProgram';
import { celsius, hoursMinutes } from '../../steps/cure/say';
import { logWords } from '../../steps/cure/logWords';
import type { CureInputs } from '../../steps/inputs/cure';
import type { PlannedTime } from '../../steps/mold/plannedTimes';
import { Button } from '../../ui/Button';
import { columnCurve } from '../cure/run/keptLog';
import { elapsedS, programS, runEvents, runPhase } from '../cure/run/runMath';
import type { OvenRunControl } from '../cure/run/useOvenRun';
import { SetBackNote } from '../timers/SetBackNote';
import { TimerPanel } from '../timers/TimerPanel';
import type { BenchTimers } from '../timers/useBenchTimers';
import { useNotifications } from '../timers/useNotifications';
import { livePage } from './benchPages';
import './bench.css';

export interface LiveSheetProps {
  readonly timers: BenchTimers;
  readonly planned: readonly PlannedTime[];
  readonly run: OvenRunControl;
  /** null while the program cannot be run. */
  readonly program: OvenProgram | null;
  readonly prediction: CurePrediction | null;
  readonly cure: CureInputs;
  /** Where the oven run is started and its log is read. */
  readonly cureHref: string;
  /** A check says stop, so nothing is told to be started. */
  readonly isHeld: boolean;
}

/** What runs now, to be read from two meters: the next action in words, the oven, two timers. */
export function LiveSheet(props: LiveSheetProps) {
  const { timers, planned } = props;
  const notifications = useNotifications();
  return (
    <article className="sheet live-sheet">
      <header>
        <h1 tabIndex={-1}>{livePage.title}</h1>
        <p className="quiet">{livePage.question}</p>
      </header>
      <OvenNow {...props} />
      <section aria-label="Timers" className="live-clocks">
        {timers.timers.map((timer, place) => (
          <TimerPanel
            key={place}
            name={`Timer ${place + 1}`}
            timer={timer}
            planned={planned}
            nowMs={timers.nowMs}
            disabled={timers.disabled}
            onChange={(change) => timers.put(place, change)}
          />
        ))}
      </section>
      <SetBackNote setBackMs={timers.setBackMs} />
      {timers.problem === null ? null : (
        <p className="field-error" role="alert">
          {timers.problem}
        </p>
      )}
      {notifications.canAsk ? (
        <Button onClick={notifications.ask}>Tell me also when this page is not in front</Button>
      ) : (
        <p className="quiet">{notifications.told}</p>
      )}
    </article>
  );
}

const phaseWords = { ready: 'The oven is off', running: 'Oven', held: 'Oven, held', ended: 'Oven run ended' };

function OvenNow({ run: control, program, prediction, cure, cureHref, isHeld }: LiveSheetProps) {
  const { run, nowMs } = control;
  const phase = runPhase(run);
  const atS = programS(run, nowMs);
  const next = program === null ? undefined : runEvents(program, prediction).find((event) => event.atS > atS);
  const curve = run.log === null ? null : columnCurve(run.log, run.log.laminate);
  const first = cure.stages[0];
  return (
    <section aria-label="Oven now" className="live-now">
      <p className="live-words" aria-live="polite">
        {phase === 'ready' && isHeld
          ? 'A check says stop: nothing is started. See Decision.'
          : phase === 'ready'
            ? `Next: oven on${first === undefined ? '' : `, to ${celsius(first.targetC)}`}`
            : phase === 'ended'
              ? 'Next: read the log, then open by the laminate'
              : next === undefined
                ? 'Nothing more is due'
                : `Next: ${next.text}`}
      </p>
      {phase === 'ready' ? null : (
        <>
          <p className="live-clock" role="timer" aria-label="Time since the oven was started">
            {hoursMinutes(60 * Math.floor(elapsedS(run, nowMs) / 60))}
          </p>
          <p>
            {phaseWords[phase]}
            {next === undefined || phase === 'ended' ? '' : `; due in ${hoursMinutes(next.atS - atS)}`}
          </p>
        </>
      )}
      {curve === null ? null : <p>Log: {logWords(curve, cure)}</p>}
      <p>
        <a href={cureHref}>Start, hold, end, and read a log in: Clamp & cure</a>
      </p>
    </section>
  );
}
