/** One ordinary differential equation, integrated with error control. */
import { Problem } from '../problem';

export interface OdeTolerance {
  /** Error allowed per step, in the unit of y. */
  readonly absolute: number;
  readonly mostSteps: number;
}

export const fineOde: OdeTolerance = { absolute: 1e-9, mostSteps: 200_000 };

export interface OdeState {
  readonly t: number;
  readonly y: number;
}

/** Dormand and Prince's pair of orders 5 and 4 (J. Comput. Appl. Math. 6 (1980) 19-26): nodes, stages, error weights. */
const nodes = [1 / 5, 3 / 10, 4 / 5, 8 / 9, 1] as const;
const stages = [
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
] as const;
const weights = [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84] as const;
const errorWeights = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40] as const;

/** One step of size h: the new y and how far the two orders differ. */
function step(rate: (t: number, y: number) => number, t: number, y: number, h: number) {
  const slopes = [rate(t, y)];
  stages.forEach((row, i) => {
    let sum = 0;
    row.forEach((share, j) => (sum += share * slopes[j]!));
    slopes.push(rate(t + nodes[i]! * h, y + h * sum));
  });
  const next = y + h * weights.reduce<number>((sum, weight, i) => sum + weight * slopes[i]!, 0);
  slopes.push(rate(t + h, next));
  const error = h * errorWeights.reduce<number>((sum, weight, i) => sum + weight * slopes[i]!, 0);
  return { next, error: Math.abs(error) };
}

/**
 * y at `until` from dy/dt = rate(t, y). With `stopAtY`, ends where y first reaches it from below, if that is earlier:
 * what lies beyond may follow another law.
 * @throws Problem `numeric.blowsUp` when y leaves the numbers or the steps run out
 */
export function integrateOde(
  rate: (t: number, y: number) => number,
  from: OdeState,
  until: number,
  tolerance: OdeTolerance = fineOde,
  stopAtY: number = Infinity,
): OdeState {
  let { t, y } = from;
  let h = (until - t) / 16;
  for (let count = 0; t < until; count++) {
    const last = t + h >= until;
    const size = last ? until - t : h;
    const { next, error } = step(rate, t, y, size);
    if (count > tolerance.mostSteps || Number.isNaN(size))
      throw new Problem('numeric.blowsUp', 'The calculation runs away: the rate is too large to follow.');
    const fits = Number.isFinite(next) && error <= tolerance.absolute;
    if (fits && next >= stopAtY && y < stopAtY) return crossing(rate, { t, y }, size, stopAtY);
    if (fits) {
      t = last ? until : t + size;
      y = next;
    }
    const growth = Number.isFinite(error) ? 0.9 * (tolerance.absolute / Math.max(error, 1e-300)) ** 0.2 : 0.2;
    h = size * Math.min(5, Math.max(0.2, growth));
    if (!(t + h > t) && t < until)
      throw new Problem('numeric.blowsUp', 'The calculation runs away: the rate is too large to follow.');
  }
  return { t, y };
}

/** Shortens a step that passes `stopAtY` until it ends there. */
function crossing(
  rate: (t: number, y: number) => number,
  { t, y }: OdeState,
  size: number,
  stopAtY: number,
): OdeState {
  let [short, long] = [0, size];
  for (let i = 0; i < 60; i++) {
    const middle = (short + long) / 2;
    if (step(rate, t, y, middle).next < stopAtY) short = middle;
    else long = middle;
  }
  return { t: t + long, y: stopAtY };
}
