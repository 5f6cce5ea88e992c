/** Evaporation looked up instead of worked out: it is asked for every wet face at every step. */
import { evaporation, type FaceEvaporation } from './waterVapor';

/** Entries per kelvin; straight between them the heat is within 0.01 % up to 95 °C. */
const tablePerK = 8;
const coldestC = -60;
const hottestC = 280;

/** W/m² of one film in air of one dampness, from `coldestC` up in steps of 1 / `tablePerK` K. */
export function evaporationTable(filmWPerM2K: number, airVaporPa: number): Float64Array {
  const one = { wPerM2: 0, perK: 0 };
  return Float64Array.from(
    { length: (hottestC - coldestC) * tablePerK + 2 },
    (_, i) => evaporation(coldestC + i / tablePerK, filmWPerM2K, airVaporPa, one).wPerM2,
  );
}

/** Fills `into` with the heat at a face's temperature, kept inside the table, and its slope there. */
export function lookUpEvaporation(table: Float64Array, faceC: number, into: FaceEvaporation): void {
  const place = Math.min((hottestC - coldestC) * tablePerK, Math.max(0, (faceC - coldestC) * tablePerK));
  const entry = place | 0;
  const low = table[entry]!;
  const slope = table[entry + 1]! - low;
  into.wPerM2 = low + slope * (place - entry);
  into.perK = slope * tablePerK;
}
