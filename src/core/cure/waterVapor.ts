/**
 * Water in and over damp stone: its vapor pressure, its heat, and how fast it leaves a wet face (`waterVapor` in core/sources).
 */

/** Sea level, Pa. */
const airPressurePa = 101_325;
/** At the pressure above, °C: free water holds the stone here until it has left. */
export const boilingC = 100;
const vaporGasConstant = 461.5;
const airGasConstant = 287;
const airHeatJPerKgK = 1007;
/** Lewis number of water vapor in air, to the power 2/3 (0.85; from memory). */
const lewisFactor = 0.85 ** (2 / 3);

/** Saturation pressure over water, Pa; Magnus form with 17.62 and 243.12 °C, within 3 % of steam tables from 20 to 100 °C. */
export function saturationPa(temperatureC: number): number {
  return magnusScale * Math.exp((magnusFactor * temperatureC) / (magnusC + temperatureC));
}
const magnusFactor = 17.62;
const magnusC = 243.12;
/** Chosen so that water boils at 100 °C under one atmosphere. */
const magnusScale = airPressurePa / Math.exp((magnusFactor * boilingC) / (magnusC + boilingC));

/** Heat of evaporation, J/kg: 2501 − 2.38 T kJ/kg, T in °C, within 0.3 % of steam tables from 0 to 100 °C. */
export const evaporationJPerKg = (temperatureC: number): number =>
  2_501_000 - evaporationDropJPerKgK * temperatureC;
const evaporationDropJPerKgK = 2380;

/** Under this share of the air's own pressure the vapor is left to the film; over it the film no longer counts. */
const mostVaporShare = 0.98;

/** Vapor carried off per pascal by a film of 1 W/(m² K), kg/(m² s Pa). */
const kgPerPaOfFilm = airGasConstant / (airPressurePa * airHeatJPerKgK * lewisFactor * vaporGasConstant);

/** Heat that leaves a wet face with the water, and how it grows with the face's temperature. */
export interface FaceEvaporation {
  wPerM2: number;
  perK: number;
}

/**
 * Heat that a wet face gives to the water leaving it, W/m², filled into `into` with its slope. Chilton-Colburn: the film
 * that brings heat carries vapor away as well; the vapor's own flow (Stefan) makes it grow without bound toward boiling.
 * The temperature of the film cancels out. Never negative: no dew is counted.
 * @param filmWPerM2K convection alone, without radiation
 * @param airVaporPa vapor in the oven's air
 */
export function evaporation(
  faceC: number,
  filmWPerM2K: number,
  airVaporPa: number,
  into: FaceEvaporation,
): FaceEvaporation {
  const perKelvin = 1 / (magnusC + faceC);
  const saturatedPa = magnusScale * Math.exp(magnusFactor * faceC * perKelvin);
  const mostPa = mostVaporShare * airPressurePa;
  const facePa = Math.min(saturatedPa, mostPa);
  if (facePa <= airVaporPa) {
    into.wPerM2 = 0;
    into.perK = 0;
    return into;
  }
  const perPa = filmWPerM2K * kgPerPaOfFilm;
  const perAirPa = 1 / (airPressurePa - facePa);
  const drivenPa = airPressurePa * Math.log((airPressurePa - airVaporPa) * perAirPa);
  const heatJPerKg = evaporationJPerKg(faceC);
  const slopePaPerK = saturatedPa < mostPa ? saturatedPa * magnusFactor * magnusC * perKelvin * perKelvin : 0;
  into.wPerM2 = perPa * heatJPerKg * drivenPa;
  into.perK =
    perPa * (heatJPerKg * airPressurePa * perAirPa * slopePaPerK - evaporationDropJPerKgK * drivenPa);
  return into;
}
