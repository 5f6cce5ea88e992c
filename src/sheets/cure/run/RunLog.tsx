import { useState } from 'react';
import type { LogFit } from '../../../core/cure/fitToLog';
import { measuredDose, stillNeededS } from '../../../core/cure/measuredDose';
import { supplierCure, type SupplierCure } from '../../../core/cure/dose';
import { Problem } from '../../../core/problem';
import { formatNumber } from '../../../core/units/formatNumber';
import type { CureInputs } from '../../../steps/inputs/cure';
import { celsius, clockHours, hoursMinutes } from '../../../steps/cure/say';
import { Button } from '../../../ui/Button';
import { FilePick } from '../../../ui/FilePick';
import { Note } from '../../../ui/Note';
import { NumberField } from '../../../ui/NumberField';
import type { OvenRunLog } from '../../../workbook';
import { FitNote, type FittedLog } from './FitNote';
import { columnCurve, keptLog } from './keptLog';
import { logText } from './logText';
import { LogPlace } from './LogPlace';
import type { OvenRunControl } from './useOvenRun';

export interface RunLogProps {
  readonly control: OvenRunControl;
  readonly cure: CureInputs;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<CureInputs>) => void;
  /** Asks the worker; null while nothing can be fitted. */
  readonly onFit: ((log: OvenRunLog) => Promise<LogFit | null>) | null;
  /** The last fit and the log that it was made from; null when there is none or the log has changed since. */
  readonly fitted: FittedLog | null;
  readonly onFitted: (fitted: FittedLog | null) => void;
}

const startSpec = {
  kind: 'number',
  label: 'The log starts after the oven by',
  unit: 'min',
  meaning: 'Less than zero when the logger was on before the oven.',
  default: 0,
  min: -1440,
  max: 1440,
  decimals: 1,
} as const;

/** The thermocouple log: read, judged by its dose, and fitted. */
export function RunLog({ control, cure, disabled, onChange, onFit, fitted, onFitted }: RunLogProps) {
  const { run, put } = control;
  const [problem, setProblem] = useState<string | null>(null);
  const { log } = run;
  const changeLog = (change: Partial<OvenRunLog>) => {
    if (log === null) return;
    put((before) => ({ ...before, log: { ...log, ...change } }));
    onFitted(null);
  };
  const takeOff = () => {
    put((before) => ({ ...before, log: null }));
    onFitted(null);
  };
  const askFit = async () => {
    const asked = log === null || onFit === null ? null : await onFit(log);
    if (log !== null && asked !== null) onFitted({ fit: asked, log });
  };
  const read = async (file: File) => {
    try {
      const fresh = keptLog(await logText(file), file.name);
      put((before) => ({ ...before, log: fresh }));
      setProblem(null);
      onFitted(null);
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      setProblem(error.message);
    }
  };
  return (
    <>
      <div className="button-row below-table">
        <FilePick
          disabled={disabled}
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          inputLabel="Thermocouple log"
          onFile={(file) => void read(file)}
        >
          {log === null ? 'Read a thermocouple log' : 'Read another log'}
        </FilePick>
        {log === null ? null : (
          <Button disabled={disabled} onClick={takeOff}>
            Take the log off
          </Button>
        )}
      </div>
      {problem === null ? null : <Note problem>{problem}</Note>}
      {log === null ? null : (
        <>
          <p>
            {log.fileName}: {log.columns.map(({ name }) => name).join(', ')}.
          </p>
          {log.remarks.map((remark) => (
            <p key={remark} className="quiet">
              {remark}
            </p>
          ))}
          <LogPlace log={log} disabled={disabled} onChange={changeLog} />
          <NumberField
            spec={startSpec}
            disabled={disabled}
            value={log.startsAfterS / 60}
            onChange={(minutes) => {
              if (minutes !== null) changeLog({ startsAfterS: 60 * minutes });
            }}
          />
          <DoseNote log={log} cure={cure} />
          {onFit === null ? null : (
            <div className="button-row below-table">
              <Button onClick={() => void askFit()}>Fit air film and dampness to it</Button>
            </div>
          )}
          {fitted === null ? null : <FitNote {...fitted} disabled={disabled} onTake={onChange} />}
        </>
      )}
    </>
  );
}

/** null when the cures contradict each other; the verdict says so. */
function supplierOf({ supplierCures }: CureInputs): SupplierCure | null {
  try {
    return supplierCures.length === 0 ? null : supplierCure(supplierCures);
  } catch (error) {
    if (error instanceof Problem) return null;
    throw error;
  }
}

function DoseNote({ log, cure }: { readonly log: OvenRunLog; readonly cure: CureInputs }) {
  const curve = columnCurve(log, log.laminate);
  const supplier = supplierOf(cure);
  if (curve === null) return null;
  if (supplier === null)
    return <Note>Enter the supplier&apos;s cures, and the dose of the measured curve stands here.</Note>;
  const gaps = (log.columns[log.laminate]?.gaps ?? []).map(({ fromS, untilS }) => ({
    fromS: fromS + log.startsAfterS,
    untilS: untilS + log.startsAfterS,
  }));
  const { total, acrossGaps, metAtS } = measuredDose({ curve, gaps }, supplier);
  const lastC = curve.valuesC.at(-1) ?? 0;
  const stageC = cure.stages.at(-1)?.targetC ?? lastC;
  return (
    <Note problem={total < 1}>
      <p>
        Measured dose {formatNumber(total, 2)}
        {metAtS === null ? '' : `: minimum met at ${clockHours(metAtS)}`}
        {acrossGaps > 0.005 ? `; ${formatNumber(acrossGaps, 2)} of it across gaps that nobody measured` : ''}.
      </p>
      {total < 1 ? (
        <p>
          Not cured yet: the laminate itself needs {hoursMinutes(stillNeededS(supplier, total, stageC))} more
          at {celsius(stageC)}. Hold on, or cure the part again, free-standing and slowly, before it carries
          load.
        </p>
      ) : null}
    </Note>
  );
}
