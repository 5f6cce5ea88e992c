/** The dehydration rate looked up instead of worked out: it is asked for every voxel at every step. */
import { dehydrationPerS, type DehydrationChoices } from './dehydration';

/** Entries per kelvin; straight between them the rate is within 0.01 %. */
export const tablePerK = 4;
const hottestC = 400;

/** Rates from 0 °C up in steps of 1 / `tablePerK` K; below zero nothing turns. */
export function dehydrationTable(choices: DehydrationChoices): Float64Array {
  return Float64Array.from({ length: hottestC * tablePerK + 2 }, (_, i) =>
    dehydrationPerS(i / tablePerK, choices),
  );
}

/** Place in the table, kept inside it. */
export const tablePlace = (temperatureC: number): number =>
  Math.min(hottestC * tablePerK, Math.max(0, temperatureC * tablePerK));
