/** All inputs of a project, step by step. */
import * as z from 'zod/mini';
import { defaultPartInputs, partInputsSchema, partSpecs } from './part/inputs';
import {
  defaultPliesInputs,
  materialSpecs,
  patchSpecs,
  pliesInputsSchema,
  pliesSpecs,
  plySpecs,
} from './plies/inputs';
import { defaultWallsInputs, wallsInputsSchema, wallsSpecs } from './walls/inputs';
import type { InputSpec, InputSpecs } from './inputSpec';

export const projectInputsSchema = z.object({
  part: partInputsSchema,
  walls: wallsInputsSchema,
  plies: pliesInputsSchema,
});
export type ProjectInputs = z.infer<typeof projectInputsSchema>;

export const defaultProjectInputs: ProjectInputs = {
  part: defaultPartInputs,
  walls: defaultWallsInputs,
  plies: defaultPliesInputs,
};

export const inputSpecs: InputSpecs = { ...partSpecs, ...wallsSpecs, ...pliesSpecs };

/** Number fields of the entries of each list; the path of a field is `<list>.<position>.<field>`. */
export const entrySpecs: Readonly<Record<string, InputSpecs>> = {
  'plies.materials': materialSpecs,
  'plies.stack': plySpecs,
  'plies.patches': patchSpecs,
};

/** The spec of an input by its path, also of a field inside a list's entry. */
export function specAt(path: string): InputSpec | undefined {
  const [step, list, , field] = path.split('.');
  return field === undefined ? inputSpecs[path] : entrySpecs[`${step}.${list}`]?.[field];
}
