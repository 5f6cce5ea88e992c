/**
 * The planner: tries the remedies that the steps propose and keeps those that help. Of all changes tried in a round the one
 * that leaves the fewest stops, then the fewest look-agains, then costs least is kept; where none helps alone, two together
 * are tried. Quick changes come first, those that need stone cast or an oven run after them, and what is not needed in the
 * end is taken back. Deterministic, and bounded by the number of what-ifs.
 */
import type { Vec3 } from '../core/mesh/types';
import type { PatternRecord } from '../steps/shared/context';
import type { InputPatch } from '../steps/shared/patch';
import { whyHeld } from '../steps/shared/held';
import { isTroubled, type Remedy } from '../steps/shared/remedy';
import { steps } from '../steps/registry';
import { fittedToRightWall, merged, turnsOf, type KeptRemedy, type StepRemedy } from './keptRemedies';
import type { PlanFound, TakenAsGiven, TriedFix } from './plan';
import { anewOf, leftOf, outcomeOf, staysOf } from './planOutcome';
import { isBetter, stateOf, turnedBy, type PlanState } from './planState';
import { unchanged } from './evaluate';
import { patched } from '../steps/shared/patch';
import { whatIf, type Evaluated } from './whatIf';
import type { OnProgress, StageName } from './told';

/** A plan with everything worked out under all its changes. */
export interface Plan extends PlanFound {
  readonly evaluated: Evaluated;
}

export interface PlanOptions {
  readonly pattern: PatternRecord | null;
  readonly taken?: TakenAsGiven;
  /** Stages that the question as given was answered without. */
  readonly skips: ReadonlySet<StageName>;
  readonly onProgress: OnProgress;
  /** Asked before each what-if; the plan then ends with what it has. */
  readonly isStopped?: () => boolean;
  /** What-ifs that need no stone cast and no oven run, and those that do. */
  readonly most?: { readonly quick: number; readonly heavy: number };
}

interface Trial {
  readonly changes: readonly StepRemedy[];
  readonly state: PlanState;
}

const usualMost = { quick: 160, heavy: 10 } as const;
/** Verdicts do not read them: they only name places. */
const neverTried: readonly StageName[] = ['places', 'fine oven run'];
const ofTheOven: readonly StageName[] = [...neverTried, 'oven run'];
const ofTheStone: readonly StageName[] = [...ofTheOven, 'halves', 'filled mold'];
/** Stages that changes of a step are tried with; others are taken as they were until the end. */
const skippedFor = (step: string, castsOrHeats: boolean): ReadonlySet<StageName> =>
  new Set(!castsOrHeats ? ofTheStone : step === 'cure' ? neverTried : ofTheOven);
/** A change of a step is heavy when none of these is as it was. */
const ownHeavyStages: Readonly<Record<string, readonly StageName[]>> = {
  part: ['measurement'],
  mold: ['halves'],
  cure: ['oven run', 'fine oven run'],
};
const mostFixes = 3;
const mostPairs = 10;
/** Their verdicts rest on the balance of the closed mold, which takes longest of what is quick. */
const ofTheBalance: ReadonlySet<string> = new Set(['plies', 'closing']);

export async function planFor(given: Evaluated, options: PlanOptions): Promise<Plan> {
  return new Planner(given, options).plan();
}

class Planner {
  private readonly given: Evaluated;
  private readonly options: PlanOptions;
  private readonly left: { quick: number; heavy: number };
  private pulls: readonly Vec3[] | null = null;
  private readonly fixes = new Map<string, TriedFix[]>();

  constructor(given: Evaluated, options: PlanOptions) {
    this.given = given;
    this.options = options;
    this.left = { ...(options.most ?? usualMost) };
  }

  private stateOf(evaluated: Evaluated): PlanState {
    return stateOf(evaluated, this.options.pattern, this.options.taken);
  }

  async plan(): Promise<Plan> {
    const now = this.stateOf(this.given);
    let changes: readonly KeptRemedy[] = [];
    let state = now;
    // Of a model that nothing can be said about, no change can be tried.
    while (whyHeld(now.context) === null) {
      const kept = await this.round(state, state === now);
      if (kept === null) break;
      const turns = turnsOf(state, kept.state);
      const why = turnedBy(state, kept.state)[0]?.reason ?? '';
      changes = merged(
        changes,
        kept.changes.map((change) => ({ ...change, why, turns })),
        kept.state,
      );
      state = kept.state;
    }
    return this.finished(now, fittedToRightWall(state, await this.needed(now, changes, state)));
  }

  /** The best single change, quick ones first, then the best two together; null where none is better. */
  private async round(state: PlanState, isFirst: boolean): Promise<Trial | null> {
    const proposed = await this.proposals(state);
    for (const group of [proposed.filter((one) => !one.isHeavy), proposed.filter((one) => one.isHeavy)]) {
      const trials: Trial[] = [];
      for (const remedy of group) {
        const trial = await this.tried(state, [remedy]);
        if (trial === null) continue;
        trials.push(trial);
        if (isFirst) this.noteFixes(state, trial);
        // Stone and oven take seconds: the first that helps, by cost, is as good as the best.
        if (remedy.isHeavy && isBetter(trial.state, state)) break;
      }
      const best = bestOf(trials, state);
      if (best !== null) return best;
    }
    return this.bestPair(
      state,
      proposed.filter((one) => !one.isHeavy),
    );
  }

  private async bestPair(state: PlanState, remedies: readonly StepRemedy[]): Promise<Trial | null> {
    const pairs = remedies.flatMap((one, at) =>
      remedies.slice(at + 1).flatMap((other) => (one.id === other.id ? [] : [[one, other] as const])),
    );
    const trials: Trial[] = [];
    for (const pair of pairs.toSorted((a, b) => costOf(a) - costOf(b)).slice(0, mostPairs)) {
      const trial = await this.tried(state, pair);
      if (trial !== null) trials.push(trial);
    }
    return bestOf(trials, state);
  }

  private async proposals(state: PlanState): Promise<readonly StepRemedy[]> {
    const { context, verdicts, evaluated } = state;
    const without = { context, verdicts, pulls: [] };
    const pulls = isTroubled(without, 'part.pull', 'walls.locks', 'mold.locking')
      ? await this.pullsWorthTrying()
      : [];
    return steps
      .flatMap(({ id: step, remedies }) =>
        (remedies?.({ context, verdicts, pulls }) ?? []).map((remedy) => ({ ...remedy, step })),
      )
      .map((remedy) => ({ ...remedy, isHeavy: mustCastOrHeat(remedy, evaluated) }))
      .toSorted(
        (a, b) => Number(ofTheBalance.has(a.step)) - Number(ofTheBalance.has(b.step)) || a.cost - b.cost,
      );
  }

  /** Looked for once. Off the rim's normal a pull is the maker's to choose. */
  private async pullsWorthTrying(): Promise<readonly Vec3[]> {
    const { memory, question } = this.given;
    this.pulls ??= [(await memory.fork().ask('right way up', question, null, this.options.onProgress)).pull];
    return this.pulls;
  }

  private async tried(state: PlanState, changes: readonly StepRemedy[]): Promise<Trial | null> {
    const heavy = changes.find((one) => one.isHeavy);
    const kind = heavy === undefined ? 'quick' : 'heavy';
    if (this.left[kind] <= 0 || this.options.isStopped?.() === true) return null;
    this.left[kind] -= 1;
    const done = usualMost.quick + usualMost.heavy - this.left.quick - this.left.heavy;
    this.options.onProgress('trying changes', Math.min(1, done / (usualMost.quick + usualMost.heavy)));
    const skips = skippedFor(heavy?.step ?? '', heavy !== undefined);
    const found = await whatIf(state.evaluated, patchOf(changes), skips, this.options.onProgress);
    if (found === null) return null;
    // What was left out stays as it was; the end of the plan works it out.
    const { 'fine oven run': fine, ...rest } = { ...state.evaluated.answers, ...found.answers };
    const isFineOutdated = fine === undefined || found.answers['oven run'] !== undefined;
    const answers = isFineOutdated ? rest : { ...rest, 'fine oven run': fine };
    return { changes, state: this.stateOf({ ...found, answers }) };
  }

  private noteFixes(before: PlanState, { changes, state }: Trial): void {
    const [change] = changes;
    if (change === undefined || state.stops > before.stops || state.unknown > before.unknown) return;
    for (const { id } of turnedBy(before, state)) {
      const { word, reason } = state.verdicts.get(id) ?? { word: 'go', reason: 'nothing to say any more.' };
      const { what, patch } = change;
      const fixes = [...(this.fixes.get(id) ?? []), { what, patch, says: `${word}: ${reason}` }];
      this.fixes.set(id, fixes.slice(0, mostFixes));
    }
  }

  /** Without the changes that another one has made idle; the dearest is tried first. */
  private async needed(now: PlanState, changes: readonly KeptRemedy[], state: PlanState) {
    let kept = changes;
    for (const change of changes.toSorted((a, b) => b.cost - a.cost)) {
      const rest = kept.filter((one) => one !== change);
      if (rest.length === 0 || changes.some((one) => one.isHeavy)) continue;
      const trial = await this.tried(now, rest);
      if (trial !== null && !isBetter(state, trial.state) && trial.state.unknown <= state.unknown)
        kept = rest;
    }
    return kept;
  }

  /** Everything worked out with the changes; last ones that turn out to do harm are dropped. */
  private async finished(now: PlanState, wanted: readonly KeptRemedy[]): Promise<Plan> {
    const { skips, onProgress } = this.options;
    let changes = wanted;
    let after = now;
    for (; changes.length > 0; changes = changes.slice(0, -1)) {
      const found = await whatIf(this.given, patchOf(changes), skips, onProgress);
      if (found === null) continue;
      const reached = this.stateOf(found);
      if (!isBetter(reached, now)) continue;
      after = reached;
      break;
    }
    return {
      outcome: outcomeOf(after, changes.length),
      now: now.words,
      changes: changes.map(({ id, what, why, turns, patch, step }) => ({
        id,
        what,
        why,
        turns,
        patch,
        step,
      })),
      after: after.words,
      anew: anewOf(after),
      left: leftOf(after),
      stays: staysOf(after),
      fixes: this.fixes,
      evaluated: after.evaluated,
    };
  }
}

const patchOf = (changes: readonly Remedy[]): InputPatch =>
  Object.assign({}, ...changes.map(({ patch }) => patch)) as InputPatch;

const costOf = (changes: readonly Remedy[]) => changes.reduce((sum, { cost }) => sum + cost, 0);

/** The best of the trials where one is better than things are; of equals the cheapest, then the earliest. */
function bestOf(trials: readonly Trial[], present: PlanState): Trial | null {
  const better = trials.filter(({ state }) => isBetter(state, present));
  const ranked = better.toSorted(
    (a, b) =>
      a.state.stops - b.state.stops || a.state.looks - b.state.looks || costOf(a.changes) - costOf(b.changes),
  );
  return ranked[0] ?? null;
}

/** Whether what the step judges by must be cast or run anew to try it. */
function mustCastOrHeat(
  { step, patch }: Remedy & { readonly step: string },
  { question, answers }: Evaluated,
): boolean {
  const own = ownHeavyStages[step];
  const inputs = patched(question.inputs, patch);
  if (own === undefined || inputs === null) return false;
  const known = unchanged(answers, { ...question, inputs });
  return own.every((stage) => known[stage] === undefined);
}
