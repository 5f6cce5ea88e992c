/** All inputs of a project, step by step. */
import * as z from 'zod/mini';
import { defaultPartInputs, partInputsSchema, partSpecs } from './part/inputs';
import { defaultPliesInputs, pliesInputsSchema, pliesSpecs } from './plies/inputs';
import { defaultWallsInputs, wallsInputsSchema, wallsSpecs } from './walls/inputs';
import type { InputSpecs } from './inputSpec';

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
