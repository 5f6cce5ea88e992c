import type { CureForecast } from '../../sheets/cure/useCurePrediction';
import type { DeskState } from '../../sheets/measuring/deskState';
import type { AwaitedResult } from '../../steps/awaited';
import type { PatternRecord } from '../../steps/context';
import { cureChoicesOf } from '../../steps/cure/cureChoicesOf';
import type { ProjectInputs } from '../../steps/inputs';

/**
 * What of an open project is still being worked out, in the order in which it comes. Told from what is there and what is
 * not: between two jobs there is a moment without one.
 */
export function awaitedResults(
  { pattern, inputs }: { readonly pattern: PatternRecord | null; readonly inputs: ProjectInputs },
  desk: Omit<DeskState, 'shape' | 'reply'>,
  forecast: Pick<CureForecast, 'prediction' | 'problem' | 'stopped'>,
  isOtherHalfAwaited: boolean,
): readonly AwaitedResult[] {
  const awaited: AwaitedResult[] = [];
  if (desk.importing) awaited.push({ stage: 'import', isUnderWay: true });
  if (pattern === null && desk.incoming === null) return awaited;

  const isMeasuring = !desk.stopped;
  if (desk.measured === null) awaited.push({ stage: 'measurement', isUnderWay: isMeasuring });
  const isFollowedUp = isMeasuring && desk.problem === null;
  if (desk.measured?.patches === null) awaited.push({ stage: 'places', isUnderWay: isFollowedUp });
  if (desk.repairsAwaited) awaited.push({ stage: 'repaired walls', isUnderWay: isFollowedUp });

  // Why there can be no halves is a result too.
  if (desk.moldProblem !== null) return awaited;
  const isCasting = isMeasuring && !desk.castStopped;
  if (desk.mold === null) awaited.push({ stage: 'halves', isUnderWay: isCasting });
  if (isOtherHalfAwaited) awaited.push({ stage: 'other half', isUnderWay: isCasting });

  const isHeating = isCasting && !forecast.stopped;
  if (!cureChoicesOf(inputs).known || forecast.problem !== null) return awaited;
  if (forecast.prediction === null) awaited.push({ stage: 'oven run', isUnderWay: isHeating });
  else if (forecast.prediction.stage === 'coarse')
    awaited.push({ stage: 'fine oven run', isUnderWay: isHeating });
  return awaited;
}
