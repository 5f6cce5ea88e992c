/** Inputs of the Walls & draft step: how far a wall may be off the ply stack, and the least draft. */
import * as z from 'zod/mini';
import type { InputSpecs } from '../inputSpec';
import { numberIn } from '../part/inputs';

export const wallsSpecs = {
  'walls.overMm': {
    kind: 'number',
    label: 'Wall may be over the stack by',
    unit: 'mm',
    meaning: 'How much wider than the stack as laid a wall may be before it counts as wrong.',
    default: 0.05,
    min: 0,
    max: 5,
    decimals: 2,
  },
  'walls.underMm': {
    kind: 'number',
    label: 'Wall may be under the stack by',
    unit: 'mm',
    meaning: 'How much narrower than the cured stack a wall may be before it counts as wrong.',
    default: 0.05,
    min: 0,
    max: 5,
    decimals: 2,
  },
  'walls.measure': {
    kind: 'choice',
    label: 'Wall measured by',
    unit: '',
    meaning: 'Which wall the verdict uses: the ray along the normal, or the largest touching ball.',
    default: 'ray',
    choices: [
      { value: 'ray', label: 'ray along the normal' },
      { value: 'ball', label: 'largest touching ball' },
    ],
  },
  'walls.leastDraftDeg': {
    kind: 'number',
    label: 'Least draft I accept',
    unit: '°',
    meaning: 'Faces with less draft than this drag on the stone when the mold opens.',
    default: 2,
    min: 0,
    max: 45,
    decimals: 1,
  },
  'walls.wrongShareAllowedPercent': {
    kind: 'number',
    label: 'Wrong wall allowed on',
    unit: '% of area',
    meaning: 'Share of the show face that may be outside the band before the verdict says stop.',
    default: 5,
    min: 0,
    max: 100,
    decimals: 0,
  },
} as const satisfies InputSpecs;

export const wallsInputsSchema = z.object({
  overMm: numberIn(wallsSpecs['walls.overMm']),
  underMm: numberIn(wallsSpecs['walls.underMm']),
  measure: z.enum(['ray', 'ball']),
  leastDraftDeg: numberIn(wallsSpecs['walls.leastDraftDeg']),
  wrongShareAllowedPercent: numberIn(wallsSpecs['walls.wrongShareAllowedPercent']),
});
export type WallsInputs = z.infer<typeof wallsInputsSchema>;

export const defaultWallsInputs: WallsInputs = {
  overMm: 0.05,
  underMm: 0.05,
  measure: 'ray',
  leastDraftDeg: 2,
  wrongShareAllowedPercent: 5,
};
