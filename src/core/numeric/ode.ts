/** One ordinary differential equation, integrated with error control. */
import { Problem } from '../problem';

export interface OdeTolerance {
  /** Error allowed per step, in the unit of y. */
  readonly absolute: number;
  readonly mostSteps: number;
  /** First step tried, as a share of the whole span; 1 where the rate is known to change little over it. */
  readonly firstShare: number;
}

export const fineOde: OdeTolerance = { absolute: 1e-9, mostSteps: 200_000, firstShare: 1 / 16 };

export interface OdeState {
  readonly t: number;
  readonly y: number;
}

interface OdeStep {
  next: number;
  error: number;
}

/**
 * One step of size h: the new y and how far two orders differ. Pair of orders 5 and 4 of Dormand and Prince (J. Comput. Appl.
 * Math. 6 (1980) 19-26), written out because it is called millions of times. The result is filled into `into`.
 */
function step(
  rate: (t: number, y: number) => number,
  t: number,
  y: number,
  h: number,
  into: OdeStep,
): OdeStep {
  const a = rate(t, y);
  const b = rate(t + h / 5, y + (h * a) / 5);
  const c = rate(t + 0.3 * h, y + h * ((3 / 40) * a + (9 / 40) * b));
  const d = rate(t + 0.8 * h, y + h * ((44 / 45) * a - (56 / 15) * b + (32 / 9) * c));
  const e = rate(
    t + (8 / 9) * h,
    y + h * ((19372 / 6561) * a - (25360 / 2187) * b + (64448 / 6561) * c - (212 / 729) * d),
  );
  const f = rate(
    t + h,
    y + h * ((9017 / 3168) * a - (355 / 33) * b + (46732 / 5247) * c + (49 / 176) * d - (5103 / 18656) * e),
  );
  into.next =
    y + h * ((35 / 384) * a + (500 / 1113) * c + (125 / 192) * d - (2187 / 6784) * e + (11 / 84) * f);
  const g = rate(t + h, into.next);
  into.error = Math.abs(
    h *
      ((71 / 57600) * a -
        (71 / 16695) * c +
        (71 / 1920) * d -
        (17253 / 339200) * e +
        (22 / 525) * f -
        (1 / 40) * g),
  );
  return into;
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
  let h = (until - t) * tolerance.firstShare;
  const taken: OdeStep = { next: y, error: 0 };
  for (let count = 0; t < until; count++) {
    const last = t + h >= until;
    const size = last ? until - t : h;
    const { next, error } = step(rate, t, y, size, taken);
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
  const taken: OdeStep = { next: y, error: 0 };
  for (let i = 0; i < 60; i++) {
    const middle = (short + long) / 2;
    if (step(rate, t, y, middle, taken).next < stopAtY) short = middle;
    else long = middle;
  }
  return { t: t + long, y: stopAtY };
}
