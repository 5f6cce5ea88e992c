/** Which of the three runs is looked at, and when: the cut on the sheet and the one on the bench view are of the same moment. */
import { valueAt } from '../../core/cure/curve';
import type { DehydrationTreatment } from '../../core/cure/dehydration';
import type { CurePrediction } from '../../core/cure/predictCure';

export interface HeatMoment {
  readonly treatment: DehydrationTreatment;
  /** null until one is chosen: then where a cut has most to show. */
  readonly timeS: number | null;
}

export const firstMoment: HeatMoment = { treatment: 'vapor-held', timeS: null };

/** The chosen time, or when the laminate lags furthest behind the air while the oven heats. */
export function momentS(prediction: CurePrediction | null, { treatment, timeS }: HeatMoment): number {
  if (timeS !== null) return timeS;
  const curve = prediction?.runs.find((run) => run.treatment === treatment)?.coldest.curve;
  if (prediction === null || curve === undefined) return 0;
  let [mostK, atS] = [-Infinity, 0];
  curve.timesS.forEach((at, i) => {
    const behindK = valueAt(prediction.air, at) - curve.valuesC[i]!;
    if (at <= prediction.heatedS && behindK > mostK) [mostK, atS] = [behindK, at];
  });
  return atS;
}
