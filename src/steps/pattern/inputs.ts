/** Inputs of the Pattern step: the shell that is made from the outside of the import. */
import * as z from 'zod/mini';
import type { InputSpecs } from '../inputSpec';
import { numberIn } from '../part/inputs';

export const patternSpecs = {
  'pattern.wallMm': {
    kind: 'number',
    label: 'Wall',
    unit: 'mm',
    meaning: 'Wall of the made pattern; not given takes the wall that the ply stack wants.',
    default: null,
    min: 0.4,
    max: 5,
    decimals: 2,
  },
  'pattern.draftDeg': {
    kind: 'number',
    label: 'Draft',
    unit: '°',
    meaning: 'Least draft of both faces of the made pattern.',
    default: 3,
    min: 0.5,
    max: 15,
    decimals: 1,
  },
  'pattern.neutralPlane': {
    kind: 'choice',
    label: 'Outline stays as drawn',
    unit: '',
    meaning:
      'Where draft changes nothing: at the rim the two halves of an enclosure still meet, and the top gets smaller; at the top the rim gets wider.',
    default: 'rim',
    choices: [
      { value: 'rim', label: 'at the rim' },
      { value: 'top', label: 'at the top' },
    ],
  },
  'pattern.insideRadiusMm': {
    kind: 'number',
    label: 'Least inside radius',
    unit: 'mm',
    meaning: 'Smallest radius of the inside corners of the made core face.',
    default: 1,
    min: 0.4,
    max: 20,
    decimals: 2,
  },
  'pattern.edges': {
    kind: 'choice',
    label: 'Outer edges',
    unit: '',
    meaning:
      'Eased: rounded by wall and inside radius together, the wall is the same there too. Sharp: as drawn, the wall is thicker behind them.',
    default: 'eased',
    choices: [
      { value: 'eased', label: 'eased' },
      { value: 'sharp', label: 'sharp' },
    ],
  },
  'pattern.keepHolesOverMm': {
    kind: 'number',
    label: 'Keep holes wider than',
    unit: 'mm',
    meaning:
      'Holes of the show face that are wider stay open; all others are covered and cut after the cure. Not given covers all.',
    default: null,
    min: 0,
    max: 500,
    decimals: 1,
  },
  'pattern.gridMm': {
    kind: 'number',
    label: 'Grid',
    unit: 'mm',
    meaning:
      'Step of the grid that the pattern is made on; not given takes half of the wall, 0.4 mm at most.',
    default: null,
    min: 0.1,
    max: 1,
    decimals: 2,
  },
} as const satisfies InputSpecs;

export const patternInputsSchema = z.object({
  wallMm: z.nullable(numberIn(patternSpecs['pattern.wallMm'])),
  draftDeg: numberIn(patternSpecs['pattern.draftDeg']),
  neutralPlane: z.enum(['rim', 'top']),
  insideRadiusMm: numberIn(patternSpecs['pattern.insideRadiusMm']),
  edges: z.enum(['eased', 'sharp']),
  keepHolesOverMm: z.nullable(numberIn(patternSpecs['pattern.keepHolesOverMm'])),
  gridMm: z.nullable(numberIn(patternSpecs['pattern.gridMm'])),
});
export type PatternInputs = z.infer<typeof patternInputsSchema>;

export const defaultPatternInputs: PatternInputs = {
  wallMm: null,
  draftDeg: 3,
  neutralPlane: 'rim',
  insideRadiusMm: 1,
  edges: 'eased',
  keepHolesOverMm: null,
  gridMm: null,
};
