/** The changes that a plan has kept so far: what each mends, and which of them stays when two are of the same inputs. */
import type { Remedy } from '../steps/shared/remedy';
import { isOfThePattern } from '../steps/walls/patternAnew';
import type { Turned } from './plan';
import { turnedBy, type PlanState } from './planState';

export interface StepRemedy extends Remedy {
  readonly step: string;
  readonly isHeavy: boolean;
}

export interface KeptRemedy extends StepRemedy {
  readonly why: string;
  readonly turns: readonly Turned[];
}

/** What turns, and what then holds; a verdict that is gone has nothing to say any more. */
export const turnsOf = (before: PlanState, after: PlanState): readonly Turned[] =>
  turnedBy(before, after).map(({ id, word: from }) => {
    const { word: to, reason: says } = after.verdicts.get(id) ?? { word: 'go' as const, reason: '' };
    return { id, from, to, says };
  });

/** A later change of the same inputs takes the place of an earlier one, and mends what that one has mended. */
export function merged(
  before: readonly KeptRemedy[],
  added: readonly KeptRemedy[],
  reached: PlanState,
): readonly KeptRemedy[] {
  const isReplacedBy = ({ patch }: KeptRemedy, by: readonly KeptRemedy[]) => {
    const paths = new Set(by.flatMap((one) => Object.keys(one.patch)));
    return Object.keys(patch).every((path) => paths.has(path));
  };
  return [
    ...before.filter((one) => !isReplacedBy(one, added)),
    ...added.map((one) => before.filter((old) => isReplacedBy(old, [one])).reduce(inPlaceOf(reached), one)),
  ];
}

/** Of what both turn, the mark before the earlier one and what holds now. */
const inPlaceOf =
  ({ verdicts }: PlanState) =>
  (later: KeptRemedy, earlier: KeptRemedy): KeptRemedy => {
    const mended = earlier.turns.flatMap((turn) => {
      const { word: to, reason: says } = verdicts.get(turn.id) ?? { word: 'go' as const, reason: '' };
      return to === turn.from ? [] : [{ ...turn, to, says }];
    });
    const ids = new Set(mended.map(({ id }) => id));
    return {
      ...later,
      why: mended.length > 0 ? earlier.why : later.why,
      turns: [...mended, ...later.turns.filter(({ id }) => !ids.has(id))],
    };
  };

const fitsTheWall: ReadonlySet<string> = new Set(['plies', 'closing']);

/** Where the wall stays wrong as printed, other stacks and clamps would only be fitted to what has to be printed anew. */
export function fittedToRightWall(
  { verdicts }: PlanState,
  changes: readonly KeptRemedy[],
): readonly KeptRemedy[] {
  if (verdicts.get('walls.band')?.word !== 'stop') return changes;
  return changes.filter(
    ({ step, turns }) => !fitsTheWall.has(step) && !turns.every(({ id }) => isOfThePattern(id)),
  );
}
