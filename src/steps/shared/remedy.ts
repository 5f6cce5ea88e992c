/**
 * What a step proposes where a verdict of its own is not "go": a change as data, which the planner (`pipeline/remedies.ts`)
 * tries before anybody sees it. Only what a maker can do or choose; never another entry for a fact.
 */
import type { Verdict, VerdictWord } from '../../core/figure';
import type { Vec3 } from '../../core/mesh/types';
import type { StepContext } from './context';
import type { InputPatch } from './patch';

/** How much of the job a change costs; the cheaper of two that do as much is taken. */
export const changeCosts = {
  setting: 1,
  /** Clamps, cover, land, oven time, drying. */
  bench: 2,
  patternPrintedAnew: 4,
  /** Another number of plies, or another roll. */
  plies: 8,
  shape: 16,
} as const;

export interface Remedy {
  /** Stable: what is changed, e.g. `plies.stack`. */
  readonly id: string;
  /** What to do, one sentence in the maker's words with its number. */
  readonly what: string;
  readonly patch: InputPatch;
  readonly cost: number;
}

export interface RemedyFacts {
  readonly context: StepContext;
  /** Of all steps, by their id. */
  readonly verdicts: ReadonlyMap<string, Verdict>;
  /** Pulls worth trying, as long as they are not the present one. */
  readonly pulls: readonly Vec3[];
}

export type ProposeRemedies = (facts: RemedyFacts) => readonly Remedy[];

const troubles: ReadonlySet<VerdictWord> = new Set(['stop', 'look again']);

/** Whether one of these verdicts says stop or look again. */
export const isTroubled = ({ verdicts }: RemedyFacts, ...ids: readonly string[]): boolean =>
  ids.some((id) => troubles.has(verdicts.get(id)?.word ?? 'go'));
