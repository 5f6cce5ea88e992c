/**
 * Resin pressure that keeps water dissolved in the resin from opening voids:
 * p = 4962 exp(−4892/T) RH, atm absolute, T in K, RH in % (`kardos1986` in core/sources, coefficients from memory).
 * RH is the humidity the prepreg was stored in; 100 % for stone that still steams is an analogy.
 */
import type { Curve } from './curve';
import { leastVoidFreeAtm } from '../closing/flow';

export const kilopascalPerAtm = 101.325;

export interface VoidPressure {
  /** Over the surrounding air: what clamps or a bag must give. 0 when the air alone suffices. */
  readonly neededKPa: number;
  readonly absoluteKPa: number;
  readonly atS: number;
  readonly temperatureC: number;
}

/**
 * The most that is needed along a laminate's temperature, from the start until `untilS`: once the resin has gelled no void
 * opens any more. `airKPa` is the pressure of the room, 101.325 at sea level.
 */
export function voidPressureAlong(
  curve: Curve,
  humidityPercent: number,
  untilS: number = Infinity,
  airKPa: number = kilopascalPerAtm,
): VoidPressure {
  let hottest = 0;
  curve.timesS.forEach((timeS, i) => {
    if (timeS <= untilS && curve.valuesC[i]! > curve.valuesC[hottest]!) hottest = i;
  });
  const temperatureC = curve.valuesC[hottest]!;
  const absoluteKPa = kilopascalPerAtm * leastVoidFreeAtm(temperatureC, humidityPercent);
  return {
    neededKPa: Math.max(0, absoluteKPa - airKPa),
    absoluteKPa,
    atS: curve.timesS[hottest]!,
    temperatureC,
  };
}
