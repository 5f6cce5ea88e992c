/** Where a plan stands: the reports for some inputs, and how good they are. */
import type { StepReport, Verdict, VerdictWord } from '../core/figure';
import { worstWord } from '../core/figure';
import type { PatternRecord, StepContext } from '../steps/shared/context';
import { stepReports, steps } from '../steps/registry';
import { contextOf } from './evaluate';
import type { TakenAsGiven } from './plan';
import type { Evaluated } from './whatIf';

/** It repeats what the other steps say. */
const sumsUp = 'checklist';

export interface PlanState {
  readonly evaluated: Evaluated;
  readonly context: StepContext;
  /** Of all steps that judge for themselves, by the verdict's id. */
  readonly verdicts: ReadonlyMap<string, Verdict>;
  readonly words: Readonly<Record<string, VerdictWord>>;
  readonly stops: number;
  readonly unknown: number;
  readonly looks: number;
}

export function stateOf(
  evaluated: Evaluated,
  pattern: PatternRecord | null,
  taken: TakenAsGiven = {},
): PlanState {
  const context: StepContext = {
    inputs: evaluated.question.inputs,
    pattern,
    ...taken,
    ...contextOf(evaluated.answers),
  };
  const reports = [...stepReports(context)].filter(([step]) => step !== sumsUp);
  const all = reports.flatMap(([, { verdicts }]) => verdicts);
  const ofWord = (wanted: VerdictWord) => all.filter(({ word }) => word === wanted).length;
  return {
    evaluated,
    context,
    verdicts: new Map(all.map((verdict) => [verdict.id, verdict])),
    words: wordsOf(reports),
    stops: ofWord('stop'),
    unknown: ofWord('not yet known'),
    looks: ofWord('look again'),
  };
}

const wordsOf = (reports: readonly (readonly [string, StepReport])[]) =>
  Object.fromEntries(reports.map(([step, { verdicts }]) => [step, worstWord(verdicts) ?? 'not yet known']));

/** Fewer stops, then fewer look-agains; what was known stays known, so that no stop is mended by not looking. */
export function isBetter(one: PlanState, other: PlanState): boolean {
  if (one.unknown > other.unknown) return false;
  return one.stops === other.stops ? one.looks < other.looks : one.stops < other.stops;
}

const rank: Readonly<Record<VerdictWord, number>> = { go: 0, 'look again': 1, 'not yet known': 2, stop: 3 };

/** Verdicts that are better with the change than without it, the worst first. */
export function turnedBy(before: PlanState, after: PlanState): readonly Verdict[] {
  return [...before.verdicts.values()]
    .filter(({ id, word }) => rank[after.verdicts.get(id)?.word ?? 'go'] < rank[word])
    .toSorted((a, b) => rank[b.word] - rank[a.word]);
}

export const stepTitle = (verdictId: string): string =>
  steps.find(({ id }) => id === verdictId.split('.')[0])?.title ?? '';
