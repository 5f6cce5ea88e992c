/**
 * Gypsum turning back to plaster inside the hot mold: CaSO4·2H2O -> CaSO4·½H2O + 1½ H2O vapor, a heat sink of about
 * 482 kJ/kg. How fast it goes in dense set stone is not known, so it is worked out three ways and shown as a band.
 *
 * Open air: first-order in what is left, with the energy and the temperature span published for powdered gypsum heated at
 * 5 K/min (`strydom1995` in core/sources). Vapor-held: the same, slowed to nothing where the vapor in the pores, at the
 * pressure of the air, stands at or over the equilibrium of gypsum and hemihydrate (`gypsumEquilibrium` in core/sources).
 */
import { bracketedRoot } from '../numeric/roots';
import { Problem } from '../problem';
import { dehydrationHeatKJPerKg } from '../stone/dehydration';
import { crystalWaterPercent, gypsumMolarMassesGPerMol } from '../stone/gypsum';
import { gasConstant, kelvin } from './dose';

export type DehydrationTreatment = 'none' | 'vapor-held' | 'open air';

/** In the order of the band, hottest laminate first. */
export const dehydrationTreatments: readonly DehydrationTreatment[] = ['none', 'vapor-held', 'open air'];

export interface DehydrationChoices {
  readonly treatment: DehydrationTreatment;
  /** Factor on the rate, for the reader who asks what if; 1 is as published. */
  readonly rateFactor: number;
}

const dehydrationEnergyJPerMol = 100_000;
/** The main step at this heating rate runs through this span (published, abstract); half is taken to be gone in its middle. */
const mainStep = { heatingKPerS: 5 / 60, fromC: 95, untilC: 170 } as const;

/** Heat taken, J per kg of dihydrate that turns. */
export const dehydrationJPerKg = 1000 * dehydrationHeatKJPerKg('alpha');
/** Vapor given off, kg per kg of dihydrate that turns. */
export const vaporPerDihydrate = crystalWaterPercent().toHemihydrate / 100;

/**
 * Gypsum and hemihydrate are in balance with water vapor of one atmosphere here, °C: published lines say 106.5, the
 * transition measured in water about 100, so it lies between 100 and 109 (`gypsumEquilibrium` in core/sources).
 */
const equilibriumAtOneAtmC = 107.5;
/** Heat of the balance per mol of water, J/mol. */
const heatPerWaterJPerMol = (dehydrationJPerKg * gypsumMolarMassesGPerMol.dihydrate) / 1000 / 1.5;

const arrhenius = (temperatureC: number) =>
  Math.exp(-dehydrationEnergyJPerMol / (gasConstant * (temperatureC + kelvin)));

/** ∫ exp(−E/RT) dt on the way up to a temperature at the heating rate of the main step, s. */
function arrheniusSeconds(untilC: number): number {
  const parts = 400;
  let sum = 0;
  for (let part = 0; part < parts; part++) sum += arrhenius((untilC * (part + 0.5)) / parts);
  return (sum * untilC) / parts / mainStep.heatingKPerS;
}

/** 1/s: such that half has turned in the middle of the main step. */
const frequencyPerS = Math.LN2 / arrheniusSeconds((mainStep.fromC + mainStep.untilC) / 2);

/** Vapor pressure of the balance over one atmosphere, dimensionless. */
export function equilibriumPressureAtm(temperatureC: number): number {
  const inverse = 1 / (temperatureC + kelvin) - 1 / (equilibriumAtOneAtmC + kelvin);
  return Math.exp((-heatPerWaterJPerMol / gasConstant) * inverse);
}

/** Where the balance stands at a vapor pressure, °C; indicative only. */
export function equilibriumC(pressureAtm: number): number {
  return bracketedRoot((at) => equilibriumPressureAtm(at) - pressureAtm, -20, 250);
}

/** Share of what is left that turns per second. */
export function dehydrationPerS(temperatureC: number, { treatment, rateFactor }: DehydrationChoices): number {
  if (treatment === 'none') return 0;
  const free = rateFactor * frequencyPerS * arrhenius(temperatureC);
  return treatment === 'open air' ? free : free * Math.max(0, 1 - 1 / equilibriumPressureAtm(temperatureC));
}

/** @throws Problem `cure.dehydration` */
export function checkDehydration({ rateFactor }: DehydrationChoices): void {
  if (!(rateFactor >= 0 && rateFactor <= 100))
    throw new Problem('cure.dehydration', 'The factor on the dehydration rate must be from 0 to 100.');
}
