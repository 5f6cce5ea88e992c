import type { LogFit } from '../../../core/cure/fitToLog';
import { formatNumber } from '../../../core/units/formatNumber';
import type { CureInputs } from '../../../steps/inputs/cure';
import { treatmentNames } from '../../../steps/cure/say';
import { Button } from '../../../ui/Button';
import { Disclosure } from '../../../ui/Disclosure';
import { Note } from '../../../ui/Note';
import type { OvenRunLog } from '../../../workbook';
import { fitWorking } from './fitWorking';

/** A fit and the log that it was made from. */
export interface FittedLog {
  readonly fit: LogFit;
  readonly log: OvenRunLog;
}

export interface FitNoteProps extends FittedLog {
  readonly disabled: boolean;
  readonly onTake: (change: Partial<CureInputs>) => void;
}

/** What the log tells of the mold, how that was found, and the button that takes it over. */
export function FitNote({ fit, log, disabled, onTake }: FitNoteProps) {
  const { best, chosen } = fit;
  return (
    <>
      <Note>
        <p>
          The log fits best if {treatmentNames[best.treatment]}: air film {formatNumber(best.filmWPerM2K, 1)}{' '}
          W/(m² K), {formatNumber(100 * best.heldShare, 0)} % of the free water held,{' '}
          {formatNumber(best.misfitK, 1)} K off.{' '}
          {chosen
            ? 'The other cases fit clearly worse.'
            : 'The other cases fit about as well: the log does not tell them apart.'}{' '}
          Halves that were weighed keep their weighed water.
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
      <Disclosure title="How the fit was made" remark="what was assumed">
        {fitWorking(fit, log).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </Disclosure>
    </>
  );
}
