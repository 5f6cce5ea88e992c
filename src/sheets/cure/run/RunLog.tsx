import { useState } from 'react';
import type { LogFit } from '../../../core/cure/fitToLog';
import { measuredDose, stillNeededS } from '../../../core/cure/measuredDose';
import { supplierCure, type SupplierCure } from '../../../core/cure/dose';
import { Problem } from '../../../core/problem';
import { formatNumber } from '../../../core/units/formatNumber';
import type { CureInputs } from '../../../steps/cure/inputs';
import { celsius, clockHours, hoursMinutes, treatmentNames } from '../../../steps/cure/say';
import { Button } from '../../../ui/Button';
import { ChoiceField } from '../../../ui/ChoiceField';
import { FilePick } from '../../../ui/FilePick';
import { Note } from '../../../ui/Note';
import { NumberField } from '../../../ui/NumberField';
import type { OvenRunLog } from '../../../workbook';
import { columnCurve, keptLog } from './keptLog';
import type { OvenRunControl } from './useOvenRun';

export interface RunLogProps {
  readonly control: OvenRunControl;
  readonly cure: CureInputs;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<CureInputs>) => void;
  /** Asks the worker; null while nothing can be fitted. */
  readonly onFit: ((log: OvenRunLog) => Promise<LogFit | null>) | null;
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
export function RunLog({ control, cure, disabled, onChange, onFit }: RunLogProps) {
  const { run, put } = control;
  const [problem, setProblem] = useState<string | null>(null);
  const [fit, setFit] = useState<LogFit | null>(null);
  const { log } = run;
  const read = async (file: File) => {
    try {
      put({ ...run, log: keptLog(await file.text(), file.name) });
      setProblem(null);
      setFit(null);
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      setProblem(error.message);
    }
  };
  return (
    <>
      <div className="button-row below-table">
        <FilePick
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          inputLabel="Thermocouple log"
          onFile={(file) => void read(file)}
        >
          {log === null ? 'Read a thermocouple log' : 'Read another log'}
        </FilePick>
        {log === null ? null : <Button onClick={() => put({ ...run, log: null })}>Take the log off</Button>}
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
          <ChoiceField
            label="At the laminate"
            meaning="The column of the thermocouple that touches the laminate; dose and fit are taken from it."
            choices={log.columns.map(({ name }, at) => ({ value: String(at), label: name }))}
            value={String(log.laminate)}
            onChange={(at) => put({ ...run, log: { ...log, laminate: Number(at) } })}
          />
          <NumberField
            spec={startSpec}
            value={log.startsAfterS / 60}
            onChange={(minutes) => {
              if (minutes !== null) put({ ...run, log: { ...log, startsAfterS: 60 * minutes } });
            }}
          />
          <DoseNote log={log} cure={cure} />
          {onFit === null ? null : (
            <div className="button-row below-table">
              <Button onClick={() => void onFit(log).then((answer) => answer && setFit(answer))}>
                Fit air film and dampness to it
              </Button>
            </div>
          )}
          {fit === null ? null : <FitNote fit={fit} disabled={disabled} onTake={onChange} />}
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

interface FitNoteProps {
  readonly fit: LogFit;
  readonly disabled: boolean;
  readonly onTake: (change: Partial<CureInputs>) => void;
}

function FitNote({ fit: { best, chosen }, disabled, onTake }: FitNoteProps) {
  return (
    <Note>
      <p>
        The log fits best if {treatmentNames[best.treatment]}: air film {formatNumber(best.filmWPerM2K, 1)}{' '}
        W/(m² K), {formatNumber(100 * best.heldShare, 0)} % of the free water held,{' '}
        {formatNumber(best.misfitK, 1)} K off.{' '}
        {chosen
          ? 'The other cases fit clearly worse.'
          : 'The other cases fit about as well: the log does not tell them apart.'}
      </p>
      <Button
        disabled={disabled}
        onClick={() =>
          onTake({
            air: 'own',
            ownFilmWPerM2K: Math.round(10 * best.filmWPerM2K) / 10,
            freeWaterLeftPercent: Math.round(100 * best.heldShare),
          })
        }
      >
        Take both over and predict again
      </Button>
    </Note>
  );
}
