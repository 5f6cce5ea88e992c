/**
 * The supplier's schedule as a dose: which share of the supplier's minimum cure the laminate has had. Two or more
 * supplier cures (hours at a temperature) are joined as if the rate followed Arrhenius between them. A dose says "minimum
 * met", never a degree of cure, and holds only near the supplier's own temperatures (`supplierDose` in core/sources).
 */
import { Problem } from '../problem';
import type { Curve } from './curve';

/** J/(mol K), as the check values use it. */
export const gasConstant = 8.314;
export const kelvin = 273.15;

/** One cure of the data sheet. */
export interface SupplierPoint {
  readonly hours: number;
  readonly temperatureC: number;
}

export interface SupplierCure {
  /** By rising temperature. */
  readonly points: readonly SupplierPoint[];
  /** Apparent activation energy between neighboring points, J/mol; empty with a single point. */
  readonly energiesJPerMol: readonly number[];
}

/** Resins of prepregs lie at 50 to 150 kJ/mol (common practice); far beyond it two cures are a slip of the keyboard. */
const steepestJPerMol = 1e6;

/** E = R ln(t1/t2) / (1/T1 − 1/T2), J/mol. */
export function apparentEnergyJPerMol(one: SupplierPoint, other: SupplierPoint): number {
  return (
    (gasConstant * Math.log(one.hours / other.hours)) /
    (1 / (one.temperatureC + kelvin) - 1 / (other.temperatureC + kelvin))
  );
}

/**
 * @throws Problem `cure.noSupplierPoint`, `cure.supplierPoint` (a point that is no cure, or two that contradict)
 */
export function supplierCure(given: readonly SupplierPoint[]): SupplierCure {
  if (given.length === 0)
    throw new Problem('cure.noSupplierPoint', "Enter at least one cure of the supplier's data sheet.");
  const points = given.toSorted((a, b) => a.temperatureC - b.temperatureC);
  points.forEach(({ hours, temperatureC }, i) => {
    if (!(hours > 0 && temperatureC > -50 && temperatureC < 400))
      throw new Problem(
        'cure.supplierPoint',
        'Each supplier cure needs a time above zero and a temperature in °C.',
      );
    const cooler = points[i - 1];
    if (cooler !== undefined && !(temperatureC > cooler.temperatureC && hours < cooler.hours))
      throw new Problem(
        'cure.supplierPoint',
        `The supplier cures ${cooler.hours} h at ${cooler.temperatureC} °C and ${hours} h at ${temperatureC} °C contradict each other: a hotter cure must be shorter.`,
      );
  });
  const energiesJPerMol = points.slice(1).map((point, i) => apparentEnergyJPerMol(points[i]!, point));
  const steep = energiesJPerMol.findIndex((energy) => !(energy <= steepestJPerMol));
  if (steep !== -1) {
    const [cooler, hotter] = [points[steep]!, points[steep + 1]!];
    throw new Problem(
      'cure.supplierPoint',
      `From ${cooler.hours} h at ${cooler.temperatureC} °C to ${hotter.hours} h at ${hotter.temperatureC} °C the supplier's cure would speed up faster than any resin does. Check the two, or leave one out.`,
    );
  }
  return { points, energiesJPerMol };
}

/**
 * Seconds that the supplier's minimum takes at a constant temperature: t1 exp[E/R (1/T − 1/T1)] from the nearest pair of
 * points. With a single point nothing is known below it (Infinity), and nothing is gained above it.
 */
export function requiredS({ points, energiesJPerMol }: SupplierCure, temperatureC: number): number {
  const first = points[0]!;
  if (points.length === 1) return temperatureC >= first.temperatureC ? 3600 * first.hours : Infinity;
  let pair = 0;
  while (pair < energiesJPerMol.length - 1 && temperatureC > points[pair + 1]!.temperatureC) pair++;
  const { hours, temperatureC: at } = points[pair]!;
  const inverse = 1 / (temperatureC + kelvin) - 1 / (at + kelvin);
  return 3600 * hours * Math.exp((energiesJPerMol[pair]! / gasConstant) * inverse);
}

/** Dose gained per second at a temperature. */
const dosePerS = (cure: SupplierCure, temperatureC: number): number => 1 / requiredS(cure, temperatureC);

/** Whether a temperature lies outside the supplier's own ones, so that the dose there is extrapolated. */
export function isExtrapolated({ points }: SupplierCure, temperatureC: number): boolean {
  return temperatureC < points[0]!.temperatureC || temperatureC > points[points.length - 1]!.temperatureC;
}

/** Dose over a span in which the temperature runs evenly from one value to another; Simpson over parts of 1 K or less. */
export function doseOver(cure: SupplierCure, fromC: number, untilC: number, spanS: number): number {
  const parts = Math.max(1, Math.ceil(Math.abs(untilC - fromC)));
  let sum = 0;
  let low = fromC;
  let atLow = dosePerS(cure, low);
  for (let part = 0; part < parts; part++) {
    const high = fromC + ((untilC - fromC) * (part + 1)) / parts;
    const atHigh = dosePerS(cure, high);
    sum += atLow + 4 * dosePerS(cure, (low + high) / 2) + atHigh;
    low = high;
    atLow = atHigh;
  }
  return (sum * spanS) / (6 * parts);
}

export interface DoseAlong {
  readonly total: number;
  /** Of each segment of the curve, steps included (0). */
  readonly perSegment: readonly number[];
  /** Dose at each point of the curve. */
  readonly atPoints: readonly number[];
  /** When it reaches 1; null when it does not. */
  readonly metAtS: number | null;
}

/** dose = ∫ dt / t_req(T(t)). */
export function doseAlong(cure: SupplierCure, { timesS, valuesC }: Curve): DoseAlong {
  const perSegment: number[] = [];
  const atPoints = [0];
  let total = 0;
  let metAtS: number | null = null;
  for (let i = 1; i < timesS.length; i++) {
    const span = timesS[i]! - timesS[i - 1]!;
    const gained = span === 0 ? 0 : doseOver(cure, valuesC[i - 1]!, valuesC[i]!, span);
    if (metAtS === null && total + gained >= 1 && gained > 0)
      metAtS = timesS[i - 1]! + (span * (1 - total)) / gained;
    total += gained;
    perSegment.push(gained);
    atPoints.push(total);
  }
  return { total, perSegment, atPoints, metAtS };
}
