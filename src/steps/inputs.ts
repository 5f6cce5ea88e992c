/** All inputs of a project, step by step. */
import * as z from 'zod/mini';
import { isFew, mostCounts } from '../core/counts';
import {
  defaultMoldInputs,
  moldGroupSpecs,
  moldEntrySpecs,
  moldInputsSchema,
  moldSpecs,
} from './mold/inputs';
import {
  bedPointSpecs,
  clampSpecs,
  closingInputsSchema,
  closingSpecs,
  defaultClosingInputs,
} from './closing/inputs';
import {
  cureEntrySpecs,
  cureGroupSpecs,
  cureInputsSchema,
  cureSpecs,
  defaultCureInputs,
} from './cure/inputs';
import { defaultPartInputs, partInputsSchema, partSpecs } from './part/inputs';
import {
  defaultPliesInputs,
  materialSpecs,
  patchSpecs,
  pliesInputsSchema,
  pliesSpecs,
  plySpecs,
} from './plies/inputs';
import { defaultPatternInputs, patternInputsSchema, patternSpecs } from './pattern/inputs';
import { defaultWallsInputs, wallsInputsSchema, wallsSpecs } from './walls/inputs';
import type { InputSpec, InputSpecs } from './inputSpec';

export const projectInputsSchema = z
  .object({
    part: partInputsSchema,
    pattern: patternInputsSchema,
    walls: wallsInputsSchema,
    plies: pliesInputsSchema,
    closing: closingInputsSchema,
    mold: moldInputsSchema,
    cure: cureInputsSchema,
  })
  .check(({ value, issues }) => {
    for (const [step, inputs] of Object.entries(value))
      for (const [list, entries] of Object.entries(inputs))
        if (Array.isArray(entries) && !isFew('listEntries', entries.length))
          issues.push({
            code: 'custom',
            input: entries,
            path: [step, list],
            message: `must have no more than ${mostCounts.listEntries} entries`,
          });
  });
export type ProjectInputs = z.infer<typeof projectInputsSchema>;

export const defaultProjectInputs: ProjectInputs = {
  part: defaultPartInputs,
  pattern: defaultPatternInputs,
  walls: defaultWallsInputs,
  plies: defaultPliesInputs,
  closing: defaultClosingInputs,
  mold: defaultMoldInputs,
  cure: defaultCureInputs,
};

export const inputSpecs: InputSpecs = {
  ...partSpecs,
  ...patternSpecs,
  ...wallsSpecs,
  ...pliesSpecs,
  ...closingSpecs,
  ...moldSpecs,
  ...cureSpecs,
};

/** Number fields of the entries of each list; the path of a field is `<list>.<position>.<field>`. */
export const entrySpecs: Readonly<Record<string, InputSpecs>> = {
  'plies.materials': materialSpecs,
  'plies.stack': plySpecs,
  'plies.patches': patchSpecs,
  'closing.clamps': clampSpecs,
  'closing.bedPoints': bedPointSpecs,
  ...moldEntrySpecs,
  ...cureEntrySpecs,
};

/** Fields of the inputs that are a group of numbers, null until given; the path of a field is `<group>.<field>`. */
export const groupSpecs: Readonly<Record<string, InputSpecs>> = {
  ...moldGroupSpecs,
  ...cureGroupSpecs,
};

/** The spec of an input by its path, also of a field inside a list's entry or a group. */
export function specAt(path: string): InputSpec | undefined {
  const [step, list, position = '', field] = path.split('.');
  const of = `${step}.${list}`;
  return field === undefined ? (inputSpecs[path] ?? groupSpecs[of]?.[position]) : entrySpecs[of]?.[field];
}
