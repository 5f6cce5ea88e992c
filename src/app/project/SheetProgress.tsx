import { isOvenStage, type CureForecast } from '../../sheets/cure/forecast';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import { ProgressBar } from '../../ui/ProgressBar';
import { PrintWait } from './PrintWait';
import type { Printing } from './usePrinting';

export interface SheetProgressProps {
  readonly measuring: Measuring;
  readonly forecast: CureForecast;
  readonly printing: Printing;
  /** Why the checklist lacks results. */
  readonly incomplete: readonly string[];
}

/** At the foot of the sheet: the job that runs, and what printing waits for. */
export function SheetProgress({ measuring, forecast, printing, incomplete }: SheetProgressProps) {
  const { desk } = measuring;
  const progress = isOvenStage(measuring.progress?.stage ?? null) ? null : measuring.progress;
  const { isWaiting } = printing;
  // The oven run has a bar of its own on its sheet.
  const heating = isWaiting ? forecast.progress : null;
  if (!isWaiting && progress === null) return null;
  return (
    <div className="sheet-progress">
      {isWaiting ? <PrintWait printing={printing} reason={incomplete[0] ?? ''} /> : null}
      {progress !== null ? (
        <ProgressBar {...progress} onCancel={() => desk.cancel()} />
      ) : heating !== null ? (
        <ProgressBar {...heating} onCancel={forecast.cancel} />
      ) : null}
    </div>
  );
}
