import { useState } from 'react';
import type { LogFit } from '../../../core/cure/fitToLog';
import type { CurePrediction } from '../../../core/cure/predictCure';
import type { OvenProgram } from '../../../core/cure/ovenProgram';
import type { CureInputs } from '../../../steps/inputs/cure';
import { SectionHead } from '../../../ui/SectionHead';
import type { OvenRunLog } from '../../../workbook';
import { HeatCurves } from '../HeatCurves';
import type { FittedLog } from './FitNote';
import { drawnPlaceText } from './fitWorking';
import { columnCurve } from './keptLog';
import { RunClock } from './RunClock';
import { RunLog } from './RunLog';
import { RunNotes } from './RunNotes';
import { elapsedS, runEvents, runPhase } from './runMath';
import type { OvenRunControl } from './useOvenRun';

export interface RunPanelProps {
  readonly control: OvenRunControl;
  readonly program: OvenProgram;
  readonly prediction: CurePrediction | null;
  readonly cure: CureInputs;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<CureInputs>) => void;
  readonly onFit: ((log: OvenRunLog) => Promise<LogFit | null>) | null;
}

/** The page for the oven hours. */
export function RunPanel({ control, program, prediction, cure, disabled, onChange, onFit }: RunPanelProps) {
  const { run, nowMs, problem } = control;
  const { log } = run;
  const [fitted, setFitted] = useState<FittedLog | null>(null);
  const logs = (log?.columns ?? []).flatMap(({ name }, at) => {
    const curve = log === null ? null : columnCurve(log, at);
    return curve === null ? [] : [{ name, curve }];
  });
  const drawn =
    fitted === null
      ? logs
      : [
          ...logs,
          {
            name: 'fitted prediction',
            label: 'Prediction, fitted to the log',
            curve: fitted.fit.best.predicted,
          },
        ];
  return (
    <section aria-label="Run">
      <SectionHead title="Run" remark="goes on when this page is closed" />
      <RunClock control={control} events={runEvents(program, prediction)} />
      {problem === null ? null : (
        <p className="field-error" role="alert">
          {problem}
        </p>
      )}
      {logs.length > 0 || runPhase(run) !== 'ready' ? (
        <>
          <HeatCurves
            program={program}
            prediction={prediction}
            at="thermocouple"
            logs={drawn}
            nowS={runPhase(run) === 'ready' ? null : elapsedS(run, nowMs)}
          />
          {log === null || prediction === null ? null : (
            <p className="quiet">The predicted curves are those at {drawnPlaceText(log, prediction)}.</p>
          )}
        </>
      ) : null}
      <RunLog
        control={control}
        cure={cure}
        disabled={disabled}
        onChange={onChange}
        onFit={onFit}
        fitted={fitted}
        onFitted={setFitted}
      />
      <RunNotes control={control} />
    </section>
  );
}
