/**
 * Steps down a convex energy over three unknowns within a few linear limits: Newton's, held short where the energy is flat,
 * and searched along so that the energy falls with every one of them (Armijo's condition). Such steps cannot circle.
 */
import { Problem } from '../problem';
import type { Slopes } from './closingEnergy';
import { leastQuadratic, valueOf, type LinearLimit, type Triple } from './smallQuadratic';

/** A step and what is known of it. */
export interface NewtonStep {
  readonly step: Triple;
  /** Push of each limit. */
  readonly push: readonly number[];
  /** What is out of balance before the step, N. */
  readonly missN: number;
  /** How far the limits that push are still away, mm. */
  readonly reachMm: number;
}

/** Longest single step, mm. */
const longestStepMm = 2;
/** A limit as near as this is met; the rest is rounding, mm. */
const metMm = 1e-10;
/** Armijo's share: the energy falls by at least so much of what the slope at the start promises. */
const fallShare = 0.1;

/** Newton's step within the limits, held short by stiffening what gives way without end. */
export function newtonStep(
  { gradient, hessian }: Slopes,
  limits: readonly LinearLimit[],
  q: Triple,
  scaleN: number,
): NewtonStep {
  const near = limits.map(({ row, least }) => ({ row, least: least - valueOf(row, q) }));
  for (let extra = 1e-9 * scaleN; ; extra *= 10) {
    const [a, b, c] = hessian;
    const stiffened: readonly [Triple, Triple, Triple] = [
      [a[0] + extra, a[1], a[2]],
      [b[0], b[1] + extra, b[2]],
      [c[0], c[1], c[2] + extra],
    ];
    const found = leastQuadratic(stiffened, gradient, near);
    const tooLong = found !== null && Math.max(...found.step.map(Math.abs)) > longestStepMm;
    if ((found === null || tooLong) && extra <= 1e6 * scaleN) continue;
    if (found === null)
      throw new Problem(
        'closing.noBalance',
        'The balance of the mold could not be followed for these numbers. That is a fault of the workbook, not of your entries: please note them down.',
      );
    return {
      ...found,
      missN: Math.max(...stiffened.map((row) => Math.abs(valueOf(row, found.step)))),
      reachMm: Math.max(0, ...near.map(({ least }, i) => (found.push[i]! > 0 ? -least : 0))),
    };
  }
}

/** Whether a step is too short to change the position. */
export const isRounding = (step: Triple, q: Triple): boolean =>
  step.every((one, i) => Math.abs(one) <= 4 * Number.EPSILON * (1 + Math.abs(q[i]!)));

/** Where a step ends: all of it when the energy falls enough on the way, else where it has flattened. */
export function steppedDown(
  gradientAt: (q: Triple) => Triple,
  q: Triple,
  { step, push }: NewtonStep,
  limits: readonly LinearLimit[],
): Triple {
  const at = (share: number): Triple => [
    q[0] + share * step[0],
    q[1] + share * step[1],
    q[2] + share * step[2],
  ];
  // What the limits that hold take is left out: it goes along no step, and its rounding would drown the rest near the end.
  let held: Triple = [0, 0, 0];
  let approachN = 0;
  for (const [i, { row, least }] of limits.entries()) {
    const own = push[i]!;
    held = [held[0] + own * row[0], held[1] + own * row[1], held[2] + own * row[2]];
    const slackMm = valueOf(row, q) - least;
    if (slackMm > metMm) approachN += own * slackMm;
  }
  const slopeAt = (share: number) => {
    const [a, b, c] = gradientAt(at(share));
    return valueOf([a - held[0], b - held[1], c - held[2]], step) - approachN;
  };
  const first = slopeAt(0);
  const last = slopeAt(1);
  // The slope rises along the step, so each half of it changes the energy by no more than its slope at the far end says.
  if (last <= 0 || 0.5 * (slopeAt(0.5) + last) <= fallShare * first) return at(1);
  let [low, high] = [0, 1];
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    const slope = slopeAt(middle);
    if (slope > 0) high = middle;
    else if (slope >= 0.25 * first) return at(middle);
    else low = middle;
  }
  return at(low);
}
