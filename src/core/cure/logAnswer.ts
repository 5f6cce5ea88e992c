/** What a log of the laminate says, in the few numbers that decide whether to hold on. */
import type { Curve } from './curve';
import { doseAlong, requiredS, type SupplierCure } from './dose';
import { dwellSlackK } from './laminateAnswers';

export interface LogAnswer {
  readonly peakC: number;
  /** Time within `dwellSlackK` of the dwell or hotter, s. */
  readonly heldS: number;
  /** Share of the supplier's least cure; null without one. */
  readonly dose: number | null;
  /**
   * How much longer the dwell must be held for a dose of 1, s; 0 when it is met, null without a supplier's cure, or where the
   * dwell is too cold for the one there is.
   */
  readonly holdMoreS: number | null;
}

/**
 * @param dwellC target of the last dwell
 * @throws Problem `cure.*` for a supplier's cure that is none
 */
export function logAnswer(curve: Curve, dwellC: number, supplier: SupplierCure | null): LogAnswer {
  const peakC = Math.max(...curve.valuesC);
  const heldS = timeAbove(curve, dwellC - dwellSlackK);
  if (supplier === null) return { peakC, heldS, dose: null, holdMoreS: null };
  const dose = doseAlong(supplier, curve).total;
  return { peakC, heldS, dose, holdMoreS: holdMoreS(dose, dwellC, supplier) };
}

/** How much longer at the dwell itself, s; null where it is too cold for the supplier's only cure. */
export function holdMoreS(dose: number, dwellC: number, supplier: SupplierCure): number | null {
  if (dose >= 1) return 0;
  const wholeS = requiredS(supplier, dwellC);
  return Number.isFinite(wholeS) ? (1 - dose) * wholeS : null;
}

/** Time at or above a level of a curve that is straight between its points, s. */
function timeAbove({ timesS, valuesC }: Curve, levelC: number): number {
  let sum = 0;
  for (let i = 1; i < timesS.length; i++) {
    const lengthS = timesS[i]! - timesS[i - 1]!;
    const [from, to] = [valuesC[i - 1]! - levelC, valuesC[i]! - levelC];
    if (from >= 0 && to >= 0) sum += lengthS;
    else if (from >= 0 !== to >= 0) sum += (lengthS * Math.max(from, to)) / Math.abs(from - to);
  }
  return sum;
}
