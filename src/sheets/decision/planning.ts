/** A plan on the page: what was found, for which inputs, and what of it is made. */
import type { PlanFound, PlannedChange } from '../../pipeline/plan';
import { projectInputsSchema, type ProjectInputs } from '../../steps/inputs/project';
import { patched, type InputPatch } from '../../steps/shared/patch';

export interface FoundPlan {
  readonly plan: PlanFound;
  /** That it was looked for with. */
  readonly inputs: ProjectInputs;
}

type Patched = Pick<PlannedChange, 'patch'>;

/** What the Decision sheet is given of planning. */
export interface Planning {
  readonly found: FoundPlan | null;
  readonly isLooking: boolean;
  /** Begins to look; null without a pattern. */
  readonly look: (() => void) | null;
  /** Enters the changes, as one step of undo. */
  readonly apply: (changes: readonly Patched[]) => void;
}

export const patchOf = (changes: readonly Patched[]): InputPatch =>
  Object.assign({}, ...changes.map(({ patch }) => patch)) as InputPatch;

const textOf = (inputs: ProjectInputs | null): string | null =>
  inputs === null ? null : JSON.stringify(projectInputsSchema.parse(inputs));

/** Whether entering the change would change nothing. */
export const isMade = (inputs: ProjectInputs, { patch }: Patched): boolean =>
  textOf(patched(inputs, patch)) === textOf(inputs);

/** Whether nothing but the plan's own changes has been entered since it was looked for. */
export function stillFits({ plan, inputs }: FoundPlan, present: ProjectInputs): boolean {
  const patch = patchOf(plan.changes);
  return textOf(patched(inputs, patch)) === textOf(patched(present, patch));
}
