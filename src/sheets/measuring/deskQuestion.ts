/** What the desk asks of a project, and what it makes of a stage that ended without an answer. */
import { Problem } from '../../core/problem';
import type { Question } from '../../pipeline/question';
import { stageNames } from '../../pipeline/stages';
import type { StageName } from '../../pipeline/told';
import type { DeskProject } from './deskState';

/** What is left of a failed job as a sentence for the page. */
export const sentenceOf = (error: unknown): string =>
  error instanceof Error ? error.message : `Something unexpected went wrong: ${String(error)}`;

/** Nothing is drawn of another pattern. */
export const nothingShown = { shape: null, reply: null, lastRun: null };

export const isCanceled = (error: unknown) => error instanceof Problem && error.code === 'job.canceled';

/** What is stopped holds up all that would come after it. */
export const stoppedWith = (stopped: StageName | null): ReadonlySet<StageName> =>
  new Set(stopped === null ? [] : stageNames.slice(stageNames.indexOf(stopped)));

export function questionOf({ pattern, inputs, thermocouple }: DeskProject): Question | null {
  if (pattern === null) return null;
  return { mesh: pattern.meshKey, declaredUnit: pattern.declaredUnit, inputs, thermocouple };
}

/** The stage in work, and what it was asked. */
export interface StageInWork {
  readonly name: StageName;
  readonly key: string | null;
  readonly own: AbortController;
}
