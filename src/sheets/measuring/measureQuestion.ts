import type { MeasureChoices } from '../../jobs/protocol';
import type { PatternRecord } from '../../steps/context';
import type { ProjectInputs } from '../../steps/inputs';

/** How the project's inputs turn the saved mesh into the part that is measured. */
export function measureChoices(
  inputs: ProjectInputs,
  declaredUnit: PatternRecord['declaredUnit'],
): MeasureChoices {
  const { part } = inputs;
  return {
    unit: part.unit === 'unconfirmed' ? null : part.unit,
    declaredUnit,
    body: part.body,
    scale: part.scale,
    pull: part.pull,
    winding: part.winding,
  };
}

/** Same text, same measurement: everything that goes into one. */
export function measureQuestion(meshKey: string, choices: MeasureChoices): string {
  return `${meshKey} ${JSON.stringify(choices)}`;
}
