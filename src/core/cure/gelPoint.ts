/**
 * Where along an oven program a resin gels, from one gel time of its data sheet: ∫ dt / t_gel(T(t)) reaches 1. How the gel
 * time falls with heat is taken from the supplier's own cures where two or more are given, since both count the same
 * reaction; else from a usual activation energy. Gelling, unlike full cure, is not slowed by glass, so no more is needed.
 */
import { doseAlong, gasConstant, kelvin, requiredS, type SupplierCure } from './dose';
import { curveOf, valueAt, type Curve } from './curve';

/** One gel time of the data sheet. */
export interface GelTime {
  readonly minutes: number;
  readonly temperatureC: number;
}

export interface GelPoint {
  readonly temperatureC: number;
  /** From the start of the curve. */
  readonly timeS: number;
}

/** Rate laws of epoxy prepregs run at 57 to 82 kJ/mol (from memory); the middle. */
export const usualGelEnergyJPerMol = 70_000;
export const usualGelEnergiesJPerMol = [57_000, 82_000] as const;

/** Cures that speed up more steeply than any prepreg's are a slip, not its law. */
const steepestJPerMol = 200_000;

/** Any second point serves to draw the line of the usual energy through the first. */
const apartK = 10;

/** Whether the supplier's cures tell how the gel time falls with heat. */
export const tellsGelEnergy = (supplier: SupplierCure | null): supplier is SupplierCure =>
  supplier !== null &&
  supplier.energiesJPerMol.length > 0 &&
  supplier.energiesJPerMol.every((energy) => energy <= steepestJPerMol);

/**
 * Gel times over temperature, in the form of a supplier's cure: its "minimum cure" is the gel.
 * @param energyJPerMol goes by where the supplier's cures do not tell it
 */
export function gelTimes(
  { minutes, temperatureC }: GelTime,
  supplier: SupplierCure | null,
  energyJPerMol: number = usualGelEnergyJPerMol,
): SupplierCure {
  const hours = minutes / 60;
  if (tellsGelEnergy(supplier)) {
    const share = (3600 * hours) / requiredS(supplier, temperatureC);
    return { ...supplier, points: supplier.points.map((one) => ({ ...one, hours: one.hours * share })) };
  }
  const inverse = 1 / (temperatureC + apartK + kelvin) - 1 / (temperatureC + kelvin);
  const hotter = {
    hours: hours * Math.exp((energyJPerMol / gasConstant) * inverse),
    temperatureC: temperatureC + apartK,
  };
  return { points: [{ hours, temperatureC }, hotter], energiesJPerMol: [energyJPerMol] };
}

/** null: the curve ends before the resin gels. */
export function gelAlong(times: SupplierCure, curve: Curve): GelPoint | null {
  const fine = inKelvins(curve);
  const timeS = doseAlong(times, fine).metAtS;
  return timeS === null ? null : { temperatureC: valueAt(fine, timeS), timeS };
}

/** The same curve with a point at least every kelvin: within a piece the dose is taken to grow evenly. */
function inKelvins({ timesS, valuesC }: Curve): Curve {
  const points: [number, number][] = [[timesS[0]!, valuesC[0]!]];
  for (let i = 1; i < timesS.length; i++) {
    const [fromS, fromC] = [timesS[i - 1]!, valuesC[i - 1]!];
    const [spanS, spanK] = [timesS[i]! - fromS, valuesC[i]! - fromC];
    const parts = spanS > 0 ? Math.max(1, Math.ceil(Math.abs(spanK))) : 1;
    for (let part = 1; part < parts; part++)
      points.push([fromS + (spanS * part) / parts, fromC + (spanK * part) / parts]);
    points.push([timesS[i]!, valuesC[i]!]);
  }
  return curveOf(points);
}
