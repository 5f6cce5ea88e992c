/** What the stages are asked: which saved mesh, and what the maker gave. */
import type { LaminatePlace } from '../core/cure/laminatePlace';
import type { SavedMeshChoices } from '../core/mesh/partFromSaved';
import type { LengthUnit } from '../core/units/length';
import type { ProjectInputs } from '../steps/inputs/project';

export interface Question {
  /** Names the mesh that is open: the same name, the same mesh. */
  readonly mesh: string;
  /** Unit that the file itself declares. */
  readonly declaredUnit: LengthUnit | null;
  readonly inputs: ProjectInputs;
  /** Where a thermocouple sits whose curve is wanted too, the part's own axes; null: nowhere. */
  readonly thermocouple: LaminatePlace | null;
}

/** How the inputs turn the saved mesh into the part in mm. */
export function meshChoices({
  inputs,
  declaredUnit,
}: Pick<Question, 'inputs' | 'declaredUnit'>): SavedMeshChoices {
  const { unit, body, scale, pull, winding } = inputs.part;
  return { unit: unit === 'unconfirmed' ? null : unit, declaredUnit, body, scale, pull, winding };
}
