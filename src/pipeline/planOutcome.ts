/** What a plan comes to: whether it clears the pour, and what it leaves. */
import { formatNumber } from '../core/units/formatNumber';
import { wallBand } from '../steps/shared/band';
import { decisionWord, holdsUpThePour } from '../steps/shared/decision';
import { isOfThePattern, patternAnew } from '../steps/walls/patternAnew';
import type { PatternAnew, PlanFound } from './plan';
import { stepTitle, type PlanState } from './planState';

export function outcomeOf({ verdicts }: PlanState, changes: number): PlanFound['outcome'] {
  const word = decisionWord([...verdicts.values()]);
  if (word === 'stop') return 'cannot be cleared';
  if (word === 'not yet known') return 'not yet known';
  return changes > 0 ? 'cleared by the changes' : 'cleared';
}

export function anewOf({ verdicts, context }: PlanState): PatternAnew | null {
  const stops = [...verdicts.values()].filter(({ word }) => word === 'stop');
  const mends = stops.map(({ id }) => id).filter(isOfThePattern);
  const band = wallBand(context.inputs);
  if (mends.length === 0 || band === null) return null;
  const { draftDeg, wallMm } = context.inputs.pattern;
  return {
    what: `Make the pattern anew at Pattern, with a wall of ${formatNumber(wallMm ?? band.wantedMm, 2)} mm and ${formatNumber(draftDeg, 1)}° of draft.`,
    mends,
  };
}

export function staysOf({ verdicts, context }: PlanState): ReadonlyMap<string, string> {
  const stops = [...verdicts.values()].filter(({ word }) => word === 'stop');
  return new Map(stops.map(({ id }) => [id, patternAnew(context, id) ?? '']));
}

export function leftOf(state: PlanState): readonly string[] {
  const stays = staysOf(state);
  const all = [...state.verdicts.values()];
  return (['stop', 'not yet known'] as const).flatMap((wanted) =>
    all
      .filter((one) => one.word === wanted && holdsUpThePour(one))
      .map(({ id, reason }) => `${stepTitle(id)}, ${wanted}: ${reason} ${stays.get(id) ?? ''}`.trimEnd()),
  );
}
