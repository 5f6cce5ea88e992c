/** The supplier's dose from what a thermocouple at the laminate really read, and what to do when it is not met. */
import { valueAt, type Curve } from './curve';
import { doseAlong, doseOver, requiredS, type SupplierCure } from './dose';
import type { LogColumn } from './parseLog';

export interface MeasuredDose {
  readonly total: number;
  /** Of it, what was gained across gaps in the log, along straight lines nobody measured. */
  readonly acrossGaps: number;
  /** Seconds after the log's start; null when never. */
  readonly metAtS: number | null;
}

export function measuredDose(
  { curve, gaps }: Pick<LogColumn, 'curve' | 'gaps'>,
  supplier: SupplierCure,
): MeasuredDose {
  const { total, metAtS } = doseAlong(supplier, curve);
  const acrossGaps = gaps.reduce(
    (sum, { fromS, untilS }) =>
      sum + doseOver(supplier, valueAt(curve, fromS), valueAt(curve, untilS), untilS - fromS),
    0,
  );
  return { total, acrossGaps, metAtS };
}

/** Seconds that the laminate itself must still spend at `temperatureC`; 0 when the dose is met. */
export function stillNeededS(supplier: SupplierCure, doseSoFar: number, temperatureC: number): number {
  return Math.max(0, 1 - doseSoFar) * requiredS(supplier, temperatureC);
}

/** Root of the mean squared difference of a prediction from a log, K, over the times that both cover; null without any. */
export function misfitK(predicted: Curve, log: Curve): number | null {
  const until = predicted.timesS.at(-1)!;
  let [sum, count] = [0, 0];
  log.timesS.forEach((timeS, i) => {
    if (timeS > until) return;
    sum += (valueAt(predicted, timeS) - log.valuesC[i]!) ** 2;
    count++;
  });
  return count === 0 ? null : Math.sqrt(sum / count);
}
