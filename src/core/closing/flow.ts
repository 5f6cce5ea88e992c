/** How quickly resin flows through a bed of fibers: whether it can leave before it sets. */

/** Carman-Kozeny permeability, m²: rf² (1 − Vf)³ / (4 k0 Vf²); k0 about 0.7 along and 11 across the fibers (from memory). */
export function permeabilityM2(fiberRadiusM: number, fiberFraction: number, k0: number): number {
  return (fiberRadiusM ** 2 * (1 - fiberFraction) ** 3) / (4 * k0 * fiberFraction ** 2);
}

/** A resin's viscosity law μ = μ∞ exp(U / RT + κ α). */
export interface ViscosityLaw {
  readonly floorPaS: number;
  readonly activationJMol: number;
  readonly cureFactor: number;
}

/** Amine-cured epoxy of a prepreg (Lee, Loos and Springer 1982, from memory); stands in for resins without a card. */
export const aminePrepregEpoxy: ViscosityLaw = {
  floorPaS: 7.93e-14,
  activationJMol: 9.08e4,
  cureFactor: 14.1,
};

/**
 * Resins of prepregs at one temperature, and beds of one fiber share, differ from these two laws by about this factor
 * either way (from memory): times are off by as much, lengths by its root.
 */
export const flowLawFactor = 3;

const gasConstant = 8.314;

/** Pa s, at a temperature in °C and a degree of cure from 0 to 1. */
export function viscosityPaS(law: ViscosityLaw, temperatureC: number, degreeOfCure: number): number {
  const kelvin = temperatureC + 273.15;
  return law.floorPaS * Math.exp(law.activationJMol / (gasConstant * kelvin) + law.cureFactor * degreeOfCure);
}

/** Time for a front to run a length through the bed, s: μ (1 − Vf) L² / (2 K Δp), one-dimensional Darcy flow. */
export function flowTimeS(
  viscosity: number,
  fiberFraction: number,
  lengthM: number,
  permeability: number,
  pressurePa: number,
): number {
  return (viscosity * (1 - fiberFraction) * lengthM ** 2) / (2 * permeability * pressurePa);
}

/**
 * Least resin pressure that keeps water in the prepreg from boiling into voids, atm absolute: 4962 exp(−4892 / T) RH
 * (Kardos, Dudukovic and Dave 1986, coefficients from memory). RH in % is what the prepreg was stored at.
 */
export function leastVoidFreeAtm(temperatureC: number, humidityPercent: number): number {
  return 4962 * Math.exp(-4892 / (temperatureC + 273.15)) * humidityPercent;
}
