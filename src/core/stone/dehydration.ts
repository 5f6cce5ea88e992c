/**
 * How deep the stone can turn back to plaster in an oven that is too hot: two upper bounds for a front that advances
 * into dry stone. The front temperature is the caller's assumption; latent heat from published
 * enthalpies (`gypsumEnthalpies` in core/sources).
 */
import {
  gypsumEnthalpiesKJPerMol,
  gypsumMolarMassesGPerMol,
  type GypsumEnthalpiesKJPerMol,
  type PowderForm,
} from './gypsum';

/** Enthalpy of formation of water vapor, kJ/mol (from memory, as that of water). */
const waterVaporEnthalpyKJPerMol = -241.818;

/** Below about this temperature set stone keeps its crystal water for the hours of a drying (assumption). */
export const dehydrationFrontC = 95;

/** Heat taken by going to hemihydrate and 1½ water vapor, kJ per kg of dihydrate. */
export function dehydrationHeatKJPerKg(
  form: PowderForm,
  enthalpies: GypsumEnthalpiesKJPerMol = gypsumEnthalpiesKJPerMol,
  vaporKJPerMol: number = waterVaporEnthalpyKJPerMol,
  dihydrateGPerMol: number = gypsumMolarMassesGPerMol.dihydrate,
): number {
  const powder = form === 'alpha' ? enthalpies.alphaHemihydrate : enthalpies.betaHemihydrate;
  return (1000 * (powder + 1.5 * vaporKJPerMol - enthalpies.dihydrate)) / dihydrateGPerMol;
}

export interface DehydrationFront {
  /** Oven over front, K; nothing happens at 0 or less. */
  readonly excessK: number;
  readonly timeS: number;
  readonly dryDensityKgM3: number;
  readonly latentHeatJPerKg: number;
}

/** Depth in mm when the heat that reaches the surface is the limit: h dT t / (rho L); h convection and radiation together. */
export function depthBySupplyMm(front: DehydrationFront, filmWPerM2K: number): number {
  const { excessK, timeS, dryDensityKgM3, latentHeatJPerKg } = front;
  return (1000 * filmWPerM2K * Math.max(0, excessK) * timeS) / (dryDensityKgM3 * latentHeatJPerKg);
}

/** Depth in mm when conduction through the layer already dehydrated is the limit: sqrt(2 k dT t / (rho L)). */
export function depthByConductionMm(front: DehydrationFront, conductivityWPerMK: number): number {
  const { excessK, timeS, dryDensityKgM3, latentHeatJPerKg } = front;
  return (
    1000 *
    Math.sqrt((2 * conductivityWPerMK * Math.max(0, excessK) * timeS) / (dryDensityKgM3 * latentHeatJPerKg))
  );
}
