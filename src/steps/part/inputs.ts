/** Inputs of the Part step: how the saved mesh becomes the part in mm. */
import * as z from 'zod/mini';
import type { InputSpecs, NumberSpec } from '../inputSpec';

export const partSpecs = {
  'part.unit': {
    kind: 'choice',
    label: 'Unit of the file',
    unit: '',
    meaning: 'Length unit of the numbers in the model file; "not confirmed" takes the guess and says so.',
    default: 'unconfirmed',
    choices: [
      { value: 'unconfirmed', label: 'not confirmed' },
      { value: 'mm', label: 'millimeters' },
      { value: 'cm', label: 'centimeters' },
      { value: 'm', label: 'meters' },
      { value: 'in', label: 'inches' },
    ],
  },
  'part.body': {
    kind: 'number',
    label: 'Body',
    unit: '',
    meaning:
      'Which body of the file is the part: 0 takes all of them together, 1 is the one with most facets.',
    default: 0,
    min: 0,
    max: 100_000,
    decimals: 0,
    whole: true,
  },
  'part.scale': {
    kind: 'number',
    label: 'Scale',
    unit: '',
    meaning: 'Factor on all three axes, after the unit; 1 leaves the size as it is.',
    default: 1,
    min: 0.001,
    max: 1000,
    decimals: 4,
  },
  'part.pull': {
    kind: 'other',
    label: 'Pull',
    unit: '',
    meaning:
      'Direction x,y,z in which the negative mold half leaves the show face; made a unit vector before use.',
    default: [0, 0, 1],
  },
  'part.winding': {
    kind: 'choice',
    label: 'Flipped facets',
    unit: '',
    meaning: 'Whether facets that are wound inside out are turned right for measuring.',
    default: 'repair',
    choices: [
      { value: 'repair', label: 'turn them right' },
      { value: 'asFile', label: 'leave as in the file' },
    ],
  },
  'part.nominalWall': {
    kind: 'choice',
    label: 'Wall comes from',
    unit: '',
    meaning: 'The model itself, or (for a pattern drawn solid) the number of lines the print lays.',
    default: 'model',
    choices: [
      { value: 'model', label: 'the model' },
      { value: 'print', label: 'the print: lines x line width' },
    ],
  },
  'part.printLines': {
    kind: 'number',
    label: 'Lines in the printed wall',
    unit: 'lines',
    meaning: 'How many lines side by side the print lays for the wall of a pattern drawn solid.',
    default: 2,
    min: 1,
    max: 20,
    decimals: 0,
    whole: true,
  },
  'part.openFace': {
    kind: 'choice',
    label: 'Open face',
    unit: '',
    meaning: 'Which side of a pattern drawn solid stays open, against the pull or one of the six axes.',
    default: 'againstPull',
    choices: [
      { value: 'againstPull', label: 'the side away from the pull' },
      { value: '+x', label: '+x' },
      { value: '-x', label: '-x' },
      { value: '+y', label: '+y' },
      { value: '-y', label: '-y' },
      { value: '+z', label: '+z' },
      { value: '-z', label: '-z' },
    ],
  },
} as const satisfies InputSpecs;

/** A number that keeps the range of its spec. */
export function numberIn(spec: NumberSpec) {
  const range = z.number().check(z.minimum(spec.min), z.maximum(spec.max));
  return spec.whole ? range.check(z.multipleOf(1)) : range;
}

export const partInputsSchema = z.object({
  unit: z.enum(['unconfirmed', 'mm', 'cm', 'm', 'in']),
  body: numberIn(partSpecs['part.body']),
  scale: numberIn(partSpecs['part.scale']),
  pull: z.tuple([z.number(), z.number(), z.number()]),
  winding: z.enum(['repair', 'asFile']),
  nominalWall: z.enum(['model', 'print']),
  printLines: numberIn(partSpecs['part.printLines']),
  openFace: z.enum(['againstPull', '+x', '-x', '+y', '-y', '+z', '-z']),
});
export type PartInputs = z.infer<typeof partInputsSchema>;

export const defaultPartInputs: PartInputs = {
  unit: 'unconfirmed',
  body: 0,
  scale: 1,
  pull: [0, 0, 1],
  winding: 'repair',
  nominalWall: 'model',
  printLines: 2,
  openFace: 'againstPull',
};
