/**
 * Rate laws of cure, dα/dt from the degree of cure α and the temperature. The constants belong to one resin and come from
 * the user's own fit or a supplier; none is built in as a default. K = A exp(−E/RT), T in K.
 */
import { Problem } from '../problem';
import { gasConstant, kelvin } from './dose';

export interface RateConstant {
  /** Negative in one published law only. */
  readonly perS: number;
  readonly energyJPerMol: number;
}

/** (K1 + K2 α^m) (1 − α)^n. With K2 = 0 a law of order n, with K1 = 0 and m = n = 1 the logistic. */
export interface AutocatalyticLaw {
  readonly form: 'autocatalytic';
  readonly k1: RateConstant;
  readonly k2: RateConstant;
  readonly m: number;
  readonly n: number;
}

export interface DiffusionTerm {
  readonly k: RateConstant;
  readonly m: number;
  readonly n: number;
  /** Whether this term dies away once the resin turns glassy. */
  readonly limited: boolean;
}

/** Sum of K α^m (1 − α)^n, the limited terms over 1 + exp[C (α − αC0 − αCT T)], T in K. */
export interface DiffusionLimitedLaw {
  readonly form: 'diffusion-limited';
  readonly terms: readonly DiffusionTerm[];
  readonly sharpness: number;
  readonly criticalCure: number;
  readonly criticalCurePerK: number;
}

/** Up to `changeAt`: (K1 + K2 α)(1 − α)(B − α); over it: K3 (1 − α). The rate jumps there. */
export interface TwoStageLaw {
  readonly form: 'two-stage';
  readonly k1: RateConstant;
  readonly k2: RateConstant;
  readonly k3: RateConstant;
  readonly b: number;
  readonly changeAt: number;
}

export type CureLaw = AutocatalyticLaw | DiffusionLimitedLaw | TwoStageLaw;

export interface CureKinetics {
  readonly law: CureLaw;
  /** Degree of cure when the oven starts. A law that feeds on cured resin needs a little of it. */
  readonly startCure: number;
  /** Heat of the full reaction, J per gram of resin; 0 leaves the heat out. */
  readonly heatJPerG: number;
}

/** Rate constants in the order in which `rateWith` wants them. */
function rateConstants(law: CureLaw): readonly RateConstant[] {
  if (law.form === 'diffusion-limited') return law.terms.map(({ k }) => k);
  return law.form === 'autocatalytic' ? [law.k1, law.k2] : [law.k1, law.k2, law.k3];
}

/** All of a law that the temperature sets: its rate constants, 1/s, and last the degree of cure it slows at (else 0). */
export function constantsAt(law: CureLaw, temperatureC: number): number[] {
  const temperatureK = temperatureC + kelvin;
  const constants = rateConstants(law).map(
    ({ perS, energyJPerMol }) => perS * Math.exp(-energyJPerMol / (gasConstant * temperatureK)),
  );
  constants.push(
    law.form === 'diffusion-limited' ? law.criticalCure + law.criticalCurePerK * temperatureK : 0,
  );
  return constants;
}

/** base^exponent from its logarithm, at a third of the cost of the general power; 0⁰ = 1. */
const powerOf = (lnBase: number, exponent: number): number =>
  exponent === 0 ? 1 : Math.exp(exponent * lnBase);

/** 1/s, with the constants of a temperature. `second`: the later branch of a two-stage law, which holds from its change on. */
export function rateWith(
  law: CureLaw,
  constants: ArrayLike<number>,
  degree: number,
  second: boolean,
): number {
  // A stage of a Runge-Kutta step may look just past the ends.
  const cured = Math.min(1, Math.max(0, degree));
  const left = 1 - cured;
  if (law.form === 'autocatalytic')
    return (
      (constants[0]! + constants[1]! * (law.m === 1 ? cured : powerOf(Math.log(cured), law.m))) *
      powerOf(Math.log(left), law.n)
    );
  if (law.form === 'diffusion-limited') {
    const { terms, sharpness } = law;
    const slowed = 1 + Math.exp(sharpness * (cured - constants[terms.length]!));
    const [lnCured, lnLeft] = [Math.log(cured), Math.log(left)];
    let sum = 0;
    for (let at = 0; at < terms.length; at++) {
      const { m, n, limited } = terms[at]!;
      const shape = Math.exp((m === 0 ? 0 : m * lnCured) + (n === 0 ? 0 : n * lnLeft));
      sum += (constants[at]! * shape) / (limited ? slowed : 1);
    }
    return sum;
  }
  if (second) return constants[2]! * left;
  return (constants[0]! + constants[1]! * cured) * left * (law.b - cured);
}

/** 1/s. `second` as with `rateWith`. */
export function cureRatePerS(law: CureLaw, degree: number, temperatureC: number, second: boolean): number {
  return rateWith(law, constantsAt(law, temperatureC), degree, second);
}

/** Degree of cure at which the law changes; Infinity for the smooth ones. */
export const changeOf = (law: CureLaw): number => (law.form === 'two-stage' ? law.changeAt : Infinity);

/** Faster than this over the range of use is no prepreg: it would cure through in under a tenth of a second. */
const fastestPerS = 10;

/**
 * Looks at the law over all degrees of cure from 20 °C to `hottestC`.
 * @throws Problem `cure.kineticsStart`, `cure.kineticsBlowUp`, `cure.kineticsBackward`
 */
export function checkKinetics({ law, startCure, heatJPerG }: CureKinetics, hottestC: number): void {
  if (!(startCure >= 0 && startCure < 1) || !(heatJPerG >= 0 && heatJPerG < 5000))
    throw new Problem(
      'cure.kineticsStart',
      'The degree of cure at the start must be from 0 to less than 1, the heat of reaction from 0 to 5000 J/g.',
    );
  for (let temperatureC = 20; temperatureC <= hottestC + 10; temperatureC += 10)
    for (let part = 0; part < 50; part++) {
      const degree = part / 50;
      const rate = cureRatePerS(law, degree, temperatureC, degree >= changeOf(law));
      if (!Number.isFinite(rate) || rate > fastestPerS)
        throw new Problem(
          'cure.kineticsBlowUp',
          `These kinetics blow up: at ${temperatureC} °C and a degree of cure of ${degree.toFixed(2)} they cure ${Number.isFinite(rate) ? rate.toPrecision(3) : 'without bound'} per second. Check the factor A (per second or per minute?) and E in J/mol.`,
        );
      if (rate < 0)
        throw new Problem(
          'cure.kineticsBackward',
          `These kinetics run backward at ${temperatureC} °C and a degree of cure of ${degree.toFixed(2)}. Check the signs of A and the exponents.`,
        );
    }
}
