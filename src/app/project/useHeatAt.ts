import { useEffect, useState } from 'react';
import type { DehydrationTreatment } from '../../core/cure/dehydration';
import type { HeatAtPoint } from '../../core/cure/heatFields';
import type { CurePrediction } from '../../core/cure/predictCure';
import type { CureForecast } from '../../sheets/cure/forecast';
import type { Vec3 } from '../../core/mesh/types';
import type { MeasuringDesk } from '../../sheets/measuring/measuringDesk';

export interface HeatTold {
  /** In the part's own axes. */
  readonly pointMm: Vec3;
  /** null where the mold has nothing. */
  readonly heat: HeatAtPoint | null;
}

/** The run of one point of the heated mold; null until it has been told for this very prediction, treatment and point. */
export function useHeatAt(
  desk: MeasuringDesk,
  { prediction: predicted, shownRun }: CureForecast,
  isShown: boolean,
  treatment: DehydrationTreatment,
  pointMm: Vec3 | null,
): HeatTold | null {
  const prediction = isShown ? predicted : null;
  // By value: the same point told again is no new question.
  const place = pointMm === null ? '' : JSON.stringify([treatment, pointMm]);
  const [told, setTold] = useState<{
    readonly prediction: CurePrediction;
    readonly place: string;
    readonly heat: HeatAtPoint | null;
  } | null>(null);
  useEffect(() => {
    if (prediction === null || place === '') return undefined;
    const [of, atMm] = JSON.parse(place) as [DehydrationTreatment, Vec3];
    let wanted = true;
    void desk.ask('heat at', { run: shownRun, treatment: of, pointMm: atMm }).then((answer) => {
      if (wanted && answer !== null) setTold({ prediction, place, heat: answer.heat });
    });
    return () => {
      wanted = false;
    };
  }, [desk, prediction, shownRun, place]);
  return pointMm !== null && told?.prediction === prediction && told?.place === place
    ? { pointMm, heat: told.heat }
    : null;
}
