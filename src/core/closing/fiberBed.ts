/**
 * How a bed of fibers pushes back when it is pressed to a fiber volume fraction. Pressures in Pa, fractions
 * dimensionless. Laboratories differ by about 40 % in the pressure at one thickness (`fiberBedScatter` in
 * core/sources), so every law carries a stiffness factor.
 */
import { Problem } from '../problem';

/**
 * Woven and user curves: the power law Vf = a P^b through `referenceFraction` at `referencePa`, with exponent 1/b.
 * A bare power law still presses at its unloaded fraction; here that rest is taken off and the curve stretched so
 * that it passes through its reference point: p = P1 ((Vf/V1)^n − (Vu/V1)^n) / (1 − (Vu/V1)^n). It meets zero at Vu
 * without a jump.
 */
export interface PowerLawBed {
  readonly kind: 'power law';
  readonly referenceFraction: number;
  readonly referencePa: number;
  /** n = 1/b, dimensionless. */
  readonly exponent: number;
  readonly unloadedFraction: number;
  /** Past this the bed counts as choked. */
  readonly limitFraction: number;
}

/**
 * Aligned tows (Gutowski): p = As (√(Vf/V0) − 1) / (√(Va/Vf) − 1)^4. It meets zero at V0 by itself and grows beyond
 * all bounds at Va.
 */
export interface AlignedBed {
  readonly kind: 'aligned';
  /** As = 3 π E / β⁴. */
  readonly springPa: number;
  /** V0. */
  readonly unloadedFraction: number;
  /** Va. */
  readonly limitFraction: number;
}

export type FiberBed = PowerLawBed | AlignedBed;

/** As = 3 π E / β⁴ in Pa, for a fiber of modulus E (Pa) and waviness β (dimensionless). */
export function alignedSpringPa(fiberModulusPa: number, waviness: number): number {
  return (3 * Math.PI * fiberModulusPa) / waviness ** 4;
}

/** Usual constants (from memory): V0 0.50, Va 0.829, β 225, E 234 GPa. */
export const alignedBed: AlignedBed = {
  kind: 'aligned',
  springPa: alignedSpringPa(234e9, 225),
  unloadedFraction: 0.5,
  limitFraction: 0.829,
};

/**
 * As-received woven carbon: through Vf 0.52 at 0.05 MPa (`lomov2010`), exponent 1/0.06 and unloaded fraction from
 * common practice. The limit of 0.65 is common practice too: past it fabric is short of resin.
 */
export const wovenBed: PowerLawBed = {
  kind: 'power law',
  referenceFraction: 0.52,
  referencePa: 50_000,
  exponent: 1 / 0.06,
  unloadedFraction: 0.4,
  limitFraction: 0.65,
};

/** A measured place on a bed's curve. */
export interface BedPoint {
  readonly pressurePa: number;
  readonly fiberFraction: number;
}

/** How much the unloaded fraction lies under the first point of a user's curve: the woven default's own ratio. */
const unloadedRatio = wovenBed.unloadedFraction / wovenBed.referenceFraction;
/** Stiffer than any reported bed; a pair of points that asks for more is a reading error. */
const mostExponent = 200;

/**
 * The power law through two measured points, zero at 0.77 of the lighter one's fraction.
 * @throws Problem `closing.bedPoints` when the points don't lie on a curve that stiffens
 */
export function bedThroughPoints(one: BedPoint, other: BedPoint): PowerLawBed {
  const [light, heavy] = one.pressurePa <= other.pressurePa ? [one, other] : [other, one];
  const fractionsAreSound = light.fiberFraction > 0.05 && heavy.fiberFraction < 0.907;
  if (!(light.pressurePa > 0 && heavy.pressurePa > light.pressurePa) || !fractionsAreSound)
    throw new Problem(
      'closing.bedPoints',
      'The two measured points of the fiber bed need two different pressures and fiber shares from 5 to 90 %: check the weights and the thicknesses.',
    );
  const rise = heavy.fiberFraction / light.fiberFraction;
  const ratio = heavy.pressurePa / light.pressurePa;
  const excess = (exponent: number) => {
    const rest = unloadedRatio ** exponent;
    return (rise ** exponent - rest) / (1 - rest) - ratio;
  };
  let low = 1e-3;
  let high = mostExponent;
  if (!(rise > 1) || excess(low) > 0 || excess(high) < 0)
    throw new Problem(
      'closing.bedPoints',
      'The two measured points of the fiber bed do not stiffen as a stack of plies does: measure again, the second with a clearly heavier weight.',
    );
  for (let halving = 0; halving < 100; halving++) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) high = middle;
    else low = middle;
  }
  return {
    kind: 'power law',
    referenceFraction: light.fiberFraction,
    referencePa: light.pressurePa,
    exponent: (low + high) / 2,
    unloadedFraction: unloadedRatio * light.fiberFraction,
    limitFraction: Math.max(wovenBed.limitFraction, heavy.fiberFraction),
  };
}

/** Pressure of the bed at a fiber volume fraction, Pa; 0 at and below the unloaded one, infinite where no bed can be. */
export function bedPressurePa(bed: FiberBed, fiberFraction: number): number {
  if (!(fiberFraction > bed.unloadedFraction)) return 0;
  if (bed.kind === 'power law') {
    const rest = (bed.unloadedFraction / bed.referenceFraction) ** bed.exponent;
    return (bed.referencePa * ((fiberFraction / bed.referenceFraction) ** bed.exponent - rest)) / (1 - rest);
  }
  if (fiberFraction >= bed.limitFraction) return Infinity;
  const room = Math.sqrt(bed.limitFraction / fiberFraction) - 1;
  return (bed.springPa * (Math.sqrt(fiberFraction / bed.unloadedFraction) - 1)) / room ** 4;
}

/** Rise of the pressure with the fiber volume fraction, Pa, above the unloaded fraction. */
export function bedSlopePa(bed: FiberBed, fiberFraction: number): number {
  if (bed.kind === 'power law') {
    const rest = (bed.unloadedFraction / bed.referenceFraction) ** bed.exponent;
    const power = (fiberFraction / bed.referenceFraction) ** bed.exponent;
    return (bed.referencePa * bed.exponent * power) / (fiberFraction * (1 - rest));
  }
  const root = Math.sqrt(bed.limitFraction / fiberFraction);
  const room = root - 1;
  const stretch = Math.sqrt(fiberFraction / bed.unloadedFraction);
  return ((bed.springPa / (2 * fiberFraction)) * (stretch + (4 * (stretch - 1) * root) / room)) / room ** 4;
}

/** The fiber volume fraction at which the bed carries a pressure of 0 Pa or more. */
export function fractionAtPressure(bed: FiberBed, pressurePa: number): number {
  if (!(pressurePa > 0)) return bed.unloadedFraction;
  if (bed.kind === 'power law') {
    const rest = (bed.unloadedFraction / bed.referenceFraction) ** bed.exponent;
    return bed.referenceFraction * ((pressurePa * (1 - rest)) / bed.referencePa + rest) ** (1 / bed.exponent);
  }
  let low = bed.unloadedFraction;
  let high = bed.limitFraction;
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (bedPressurePa(bed, middle) > pressurePa) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
