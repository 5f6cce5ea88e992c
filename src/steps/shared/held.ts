/**
 * A model that nothing can be said about beyond Part: which face people see is not answered, or it cannot be a pattern at all.
 * The steps after Part then read "not yet known" and give no recipe, and so does the paper.
 */
import type { Verdict } from '../../core/figure';
import type { BodyFacts } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import type { Missing, StepContext } from './context';

/** Above this share of the surface that neither half reaches, the part is closed round what it holds (our own judgement). */
const closedShare = 0.25;
/** A body with less than this share of the largest one's box is a detail beside it, not another part (our own judgement). */
const partShare = 0.1;

type Held = Pick<StepContext, 'inputs' | 'measured'>;

const asked: Missing = {
  reason: 'Which face people see is not answered yet, and everything after Part hangs on it.',
  fix: 'Choose one of the two pictures at Part, or give the pull.',
};

/** What Part says of a model that cannot be a pattern as it is; null where it can. */
export function noPattern({ inputs, measured }: Held): Missing | null {
  if (measured === null) return null;
  const { summary, health } = measured;
  const apart = inputs.part.body === 0 ? bodiesApart(health.bodies) : 1;
  if (apart > 1)
    return {
      reason: `${apart} parts lie beside each other in this file. A mold is made of one of them.`,
      fix: 'Choose the body that is the part.',
    };
  const trappedShare = summary.areaMm2 > 0 ? summary.kindAreaMm2.trapped / summary.areaMm2 : 0;
  if (trappedShare > closedShare)
    return {
      reason: `${formatNumber(100 * trappedShare, 0)} % of the surface is out of reach of both mold halves: the model is closed all round, so no plies can be laid in it.`,
      fix: 'Cut the model into two halves where it is to be parted, and import one of them.',
    };
  if (summary.hollowAlongPull)
    return {
      reason:
        'The hollow side looks along the pull: ribs and floor of the inside would be the face that people see.',
      fix: 'Turn the pull around, so that it points out of the closed side.',
    };
  return null;
}

/** Why nothing after Part can be said; null where it can. */
export function whyHeld(context: Held): Missing | null {
  const none = noPattern(context);
  if (none !== null) return none;
  return context.inputs.part.rightWayUp === 'asked' ? asked : null;
}

/** What a step says instead of its own verdicts. */
export const heldVerdict = (stepId: string, { reason, fix }: Missing): Verdict => ({
  id: `${stepId}.held`,
  word: 'not yet known',
  reason,
  fix,
});

/** The context without what was measured along a pull that may be the wrong one. */
export const withheld = (context: StepContext, held: Missing): StepContext => ({
  ...context,
  measured: null,
  mold: null,
  pourFindings: null,
  moldProblem: null,
  otherHalf: null,
  cure: null,
  cureProblem: null,
  awaited: [],
  held,
});

const boxVolumeMm3 = ({ boxMin, boxMax }: BodyFacts) =>
  boxMax.reduce((volume, high, axis) => volume * (high - boxMin[axis]!), 1);
const boxesMeet = (one: BodyFacts, other: BodyFacts) =>
  one.boxMax.every((high, axis) => high > other.boxMin[axis]! && other.boxMax[axis]! > one.boxMin[axis]!);

/** How many bodies of about a part's size share no place with any other. */
function bodiesApart(bodies: readonly BodyFacts[]): number {
  const largest = Math.max(0, ...bodies.map(boxVolumeMm3));
  const parts = bodies.filter((body) => boxVolumeMm3(body) >= partShare * largest);
  return parts.filter((one) => parts.every((other) => other === one || !boxesMeet(one, other))).length;
}
