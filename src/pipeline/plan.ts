/** What the planner (`remedies.ts`) has found, as plain data for page, command and wire. */
import type { VerdictWord } from '../core/figure';
import type { PatternRecord, StepContext } from '../steps/shared/context';
import type { InputPatch } from '../steps/shared/patch';

/** What a plan takes as it is: it hangs on other halves and contents, which no change of a plan touches. */
export type TakenAsGiven = Pick<StepContext, 'fit' | 'otherHalf'>;

/** What the question for a plan is given beside the inputs. */
export interface PlanGiven {
  readonly pattern: PatternRecord;
  readonly taken: TakenAsGiven;
}

/** A verdict that is better with a change than before it. */
export interface Turned {
  readonly id: string;
  readonly from: VerdictWord;
  readonly to: VerdictWord;
  /** What the verdict then says; '' where it is gone. */
  readonly says: string;
}

export interface PlannedChange {
  readonly id: string;
  readonly what: string;
  /** The worst verdict that it mends, as it stood before. */
  readonly why: string;
  /** What turns with it, once the changes before it are made; the worst first. */
  readonly turns: readonly Turned[];
  readonly patch: InputPatch;
  readonly step: string;
}

export interface PatternAnew {
  readonly what: string;
  /** The stops that are about what is printed, by their ids. */
  readonly mends: readonly string[];
}

export interface TriedFix {
  readonly what: string;
  readonly patch: InputPatch;
  /** What the verdict says with it. */
  readonly says: string;
}

export interface PlanFound {
  readonly outcome: 'cleared' | 'cleared by the changes' | 'not yet known' | 'cannot be cleared';
  /** Worst word of each step. */
  readonly now: Readonly<Record<string, VerdictWord>>;
  readonly changes: readonly PlannedChange[];
  readonly after: Readonly<Record<string, VerdictWord>>;
  /** The pattern made anew at the Pattern step, where that is what it takes; it was not tried here. */
  readonly anew: PatternAnew | null;
  /** What still says stop or is not known, and what would mend it. */
  readonly left: readonly string[];
  /** Stops that no change mends, by the verdict's id, with what would; '' where nothing is known that does. */
  readonly stays: ReadonlyMap<string, string>;
  /** Single changes that better a verdict as things are now, by its id. */
  readonly fixes: ReadonlyMap<string, readonly TriedFix[]>;
}
