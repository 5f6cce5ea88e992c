/** Degree of cure along a temperature curve, by integrating a rate law with error control. */
import { fineOde, integrateOde, type OdeTolerance } from '../numeric/ode';
import { valueAt, type Curve } from './curve';
import { changeOf, cureRatePerS, type CureKinetics } from './kinetics';

/** Carries a degree of cure over a span in which the temperature runs evenly; splits the span where the law changes. */
export function advanceCure(
  { law }: CureKinetics,
  degree: number,
  fromC: number,
  untilC: number,
  spanS: number,
  tolerance: OdeTolerance = fineOde,
): number {
  const change = changeOf(law);
  const rate = (second: boolean) => (t: number, y: number) =>
    cureRatePerS(law, y, fromC + ((untilC - fromC) * t) / spanS, second);
  let state = { t: 0, y: degree };
  if (spanS <= 0) return degree;
  if (degree < change) {
    state = integrateOde(rate(false), state, spanS, tolerance, change);
    if (state.t >= spanS && state.y < change) return state.y;
  }
  return state.t >= spanS ? state.y : integrateOde(rate(true), state, spanS, tolerance).y;
}

/**
 * Degree of cure at each of `timesS` (rising), from the start of the curve.
 * @throws Problem `numeric.blowsUp`
 */
export function degreesOfCure(kinetics: CureKinetics, curve: Curve, timesS: readonly number[]): number[] {
  const stops = [...new Set([...curve.timesS, ...timesS])].sort((a, b) => a - b);
  const found = new Map<number, number>();
  let degree = kinetics.startCure;
  stops.forEach((stop, i) => {
    const from = stops[i - 1];
    // valueAt gives the later value of a step; halfway and the start make the line that leads to the earlier one.
    if (from !== undefined) {
      const startC = valueAt(curve, from);
      const endC = startC + 2 * (valueAt(curve, (from + stop) / 2) - startC);
      degree = advanceCure(kinetics, degree, startC, endC, stop - from);
    }
    found.set(stop, degree);
  });
  return timesS.map((timeS) => found.get(timeS)!);
}
