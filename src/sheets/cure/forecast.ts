import type { CurePrediction } from '../../core/cure/predictCure';
import type { Progress } from '../../jobs/protocol';
import type { StageName } from '../../pipeline/told';
import type { Measuring } from '../measuring/useMeasured';

export interface CureForecast {
  /** The answer to the present question only; what reports work from. */
  readonly prediction: CurePrediction | null;
  /** The stage that has told it. */
  readonly shownRun: 'oven run' | 'fine oven run';
  /** The last answer, also while a newer one is being worked out; for drawings. */
  readonly lastPrediction: CurePrediction | null;
  readonly progress: Progress | null;
  /** The maker canceled it. */
  readonly stopped: boolean;
  readonly cancel: () => void;
  readonly again: () => void;
}

export const isOvenStage = (stage: StageName | null): boolean =>
  stage === 'oven run' || stage === 'fine oven run';

/** What is known of the oven run. */
export function forecastOf({ desk, answers, found, lastRun, progress, stopped }: Measuring): CureForecast {
  return {
    prediction: found.cure ?? null,
    shownRun: answers['fine oven run']?.told ? 'fine oven run' : 'oven run',
    lastPrediction: found.measured === null ? null : lastRun,
    progress: progress !== null && isOvenStage(progress.stage) ? progress : null,
    stopped: isOvenStage(stopped),
    cancel: () => desk.cancel(),
    again: () => desk.goOn(),
  };
}
