/** A log's answer in plain words: "peak 115 °C; coldest place within 5 K for 63 min; dose 0.8: hold 25 min more". */
import type { Curve } from '../../core/cure/curve';
import { supplierCure, type SupplierCure } from '../../core/cure/dose';
import { holdMoreS, logAnswer } from '../../core/cure/logAnswer';
import { Problem } from '../../core/problem';
import { formatNumber } from '../../core/units/formatNumber';
import type { CureInputs } from '../inputs/cure';
import { celsius, hoursMinutes } from './say';

/** The supplier's cures as entered; null without any, or when they contradict each other (the step says so). */
export function enteredCure({ supplierCures }: Pick<CureInputs, 'supplierCures'>): SupplierCure | null {
  if (supplierCures.length === 0) return null;
  try {
    return supplierCure(supplierCures);
  } catch (error) {
    if (error instanceof Problem) return null;
    throw error;
  }
}

export function doseWords(dose: number, dwellC: number, supplier: SupplierCure): string {
  const told = `dose ${formatNumber(dose, 2)}`;
  if (dose >= 1) return `${told}: the supplier’s least cure is met`;
  const moreS = holdMoreS(dose, dwellC, supplier);
  return moreS === null
    ? `${told}: ${celsius(dwellC)} is too cold for the supplier’s cure; a hotter one is needed`
    : `${told}: hold ${hoursMinutes(moreS)} more at ${celsius(dwellC)}`;
}

/** '' for a log without readings or a program without stages. */
export function logWords(curve: Curve, cure: Pick<CureInputs, 'stages' | 'supplierCures'>): string {
  const dwellC = cure.stages.at(-1)?.targetC;
  if (dwellC === undefined || curve.timesS.length === 0) return '';
  const supplier = enteredCure(cure);
  const { peakC, heldS, dose } = logAnswer(curve, dwellC, supplier);
  const held = `peak ${celsius(peakC)}; within 5 K of ${celsius(dwellC)} for ${hoursMinutes(heldS)}`;
  return dose === null || supplier === null
    ? `${held}. Enter a cure of the data sheet, and the dose is told.`
    : `${held}; ${doseWords(dose, dwellC, supplier)}.`;
}
