/** When the mold may be opened: the laminate under its demold temperature after the oven is off. */
import { Problem } from '../problem';
import type { LaminateRecord } from './laminateRecord';

/** "Demold only below 50 °C" (a prepreg processing guide, published). */
export const usualDemoldC = 50;

/**
 * Seconds from the end of the heating until the hottest place of the laminate is under `demoldC`; null when the run ended
 * before. 0 when it never was hotter.
 * @throws Problem `cure.demold` for a temperature that is not above the room
 */
export function demoldAfterS(
  { timesS, temperatureC }: LaminateRecord,
  heatedS: number,
  demoldC: number,
  roomC: number,
): number | null {
  if (!(demoldC > roomC))
    throw new Problem(
      'cure.demold',
      `The demold temperature of ${demoldC} °C is not above the room at ${roomC} °C: the mold would never get there.`,
    );
  const hottest = temperatureC.map((all) => all.reduce((high, one) => Math.max(high, one), -Infinity));
  const under = timesS.findIndex((timeS, i) => timeS >= heatedS && hottest[i]! < demoldC);
  if (under === -1) return null;
  const before = under - 1;
  if (before < 0 || timesS[before]! < heatedS || hottest[before]! < demoldC)
    return Math.max(0, timesS[under]! - heatedS);
  const share = (hottest[before]! - demoldC) / (hottest[before]! - hottest[under]!);
  return timesS[before]! + share * (timesS[under]! - timesS[before]!) - heatedS;
}

export type GripSide = 'negative' | 'positive' | 'neither';

/**
 * Which half holds the part after cooling. A mold that ends smaller than the part squeezes it in the negative; one that
 * ends larger lets the part shrink onto the positive.
 * @param mismatchMm by how much the mold ends smaller than the part (`coolingMismatchMm` of the size chain)
 */
export function gripAfterCooling(mismatchMm: number, looseMm = 0.01): GripSide {
  if (Math.abs(mismatchMm) <= looseMm) return 'neither';
  return mismatchMm > 0 ? 'negative' : 'positive';
}
