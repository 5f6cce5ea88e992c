/** Inputs of the Walls & draft step: what a wall may be for the ply stack, the least draft, and the least radii. */
import * as z from 'zod/mini';
import type { InputSpecs } from '../inputSpec';
import { numberIn } from '../part/inputs';

const limit = (label: string, unit: string, meaning: string, value: number, max: number, decimals: number) =>
  // A fiber fraction of 0 would divide by nothing.
  ({
    kind: 'number',
    label,
    unit,
    meaning,
    default: value,
    min: unit === '' ? 0.2 : 0,
    max,
    decimals,
  }) as const;

export const wallsSpecs = {
  'walls.toleranceMm': {
    kind: 'number',
    label: 'Print and stone may be off by',
    unit: 'mm',
    meaning:
      'The wall wanted lies this much under what the plies fill, so that no place comes out wider than they fill. Empty takes 4 % of it, 0.03 mm for three plies (common practice).',
    default: null,
    min: 0,
    max: 2,
    decimals: 2,
  },
  'walls.filmFaces': {
    kind: 'choice',
    label: 'Separator film',
    unit: '',
    meaning:
      'Film laid between stone and laminate so that nothing sticks. It takes its part of the wall, and its wrinkles print.',
    default: 'none',
    choices: [
      { value: 'none', label: 'none: sealed and released stone' },
      { value: 'one', label: 'on one face' },
      { value: 'both', label: 'on both faces' },
    ],
  },
  'walls.filmMm': {
    kind: 'number',
    label: 'Film thickness',
    unit: 'mm',
    meaning:
      'Of one layer, from its label or by caliper over a fold of ten; 0.02 to 0.05 mm is usual (from memory).',
    default: 0.03,
    min: 0,
    max: 1,
    decimals: 3,
  },
  'walls.filmLimitC': {
    kind: 'number',
    label: 'Film bears',
    unit: '°C',
    meaning:
      'The limit on the film’s data sheet; 0 while nobody has read it. Films differ from 80 to over 200 °C.',
    default: 0,
    min: 0,
    max: 400,
    decimals: 0,
  },
  'walls.goVoidPercent': limit(
    'Voids that are good',
    '%',
    'Share of the laminate that may be air in a sound part (common practice).',
    1,
    20,
    1,
  ),
  'walls.lookVoidPercent': limit(
    'Voids to be looked at',
    '%',
    'More air than this is a stop for the wall (common practice).',
    2.5,
    30,
    1,
  ),
  'walls.badVoidPercent': limit(
    'Voids that are bad anywhere',
    '%',
    'A place with more air than this is wrong whatever the rest is (common practice).',
    5,
    50,
    1,
  ),
  'walls.wovenGoFraction': limit(
    'Woven fiber that is good',
    '',
    'Fiber volume fraction up to which a woven stack is pressed without holding the mold open (common practice).',
    0.53,
    0.75,
    2,
  ),
  'walls.wovenLookFraction': limit(
    'Most woven fiber',
    '',
    'Past this fiber volume fraction a woven stack is short of resin and holds the mold open (common practice).',
    0.55,
    0.75,
    2,
  ),
  'walls.alignedGoFraction': limit(
    'Aligned fiber that is good',
    '',
    'The same for unidirectional and non-crimp plies (common practice).',
    0.6,
    0.85,
    2,
  ),
  'walls.alignedLookFraction': limit(
    'Most aligned fiber',
    '',
    'The same for unidirectional and non-crimp plies (common practice).',
    0.62,
    0.85,
    2,
  ),
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
  'walls.laidIn': {
    kind: 'choice',
    label: 'Plies are laid in',
    unit: '',
    meaning:
      'The half that the plies are pressed into by hand. In the negative the outer edges of the part are the tight ones.',
    default: 'negative',
    choices: [
      { value: 'negative', label: 'the negative (show face)' },
      { value: 'positive', label: 'the positive (core face)' },
    ],
  },
  'walls.leastOuterRadiusMm': limit(
    'Least radius of outer edges',
    'mm',
    'Outer edges of a part laid in the negative are its hollow corners: plies bridge tighter ones (common practice).',
    3,
    50,
    1,
  ),
  'walls.leastInnerRadiusMm': limit(
    'Least radius of inside corners',
    'mm',
    'The smallest hollow corner that the other half still presses the plies into (common practice).',
    1,
    50,
    1,
  ),
} as const satisfies InputSpecs;

export const wallsInputsSchema = z.object({
  toleranceMm: z.nullable(numberIn(wallsSpecs['walls.toleranceMm'])),
  filmFaces: z.enum(['none', 'one', 'both']),
  filmMm: numberIn(wallsSpecs['walls.filmMm']),
  filmLimitC: numberIn(wallsSpecs['walls.filmLimitC']),
  goVoidPercent: numberIn(wallsSpecs['walls.goVoidPercent']),
  lookVoidPercent: numberIn(wallsSpecs['walls.lookVoidPercent']),
  badVoidPercent: numberIn(wallsSpecs['walls.badVoidPercent']),
  wovenGoFraction: numberIn(wallsSpecs['walls.wovenGoFraction']),
  wovenLookFraction: numberIn(wallsSpecs['walls.wovenLookFraction']),
  alignedGoFraction: numberIn(wallsSpecs['walls.alignedGoFraction']),
  alignedLookFraction: numberIn(wallsSpecs['walls.alignedLookFraction']),
  measure: z.enum(['ray', 'ball']),
  leastDraftDeg: numberIn(wallsSpecs['walls.leastDraftDeg']),
  wrongShareAllowedPercent: numberIn(wallsSpecs['walls.wrongShareAllowedPercent']),
  laidIn: z.enum(['negative', 'positive']),
  leastOuterRadiusMm: numberIn(wallsSpecs['walls.leastOuterRadiusMm']),
  leastInnerRadiusMm: numberIn(wallsSpecs['walls.leastInnerRadiusMm']),
});
export type WallsInputs = z.infer<typeof wallsInputsSchema>;

export const defaultWallsInputs: WallsInputs = {
  toleranceMm: null,
  filmFaces: 'none',
  filmMm: 0.03,
  filmLimitC: 0,
  goVoidPercent: 1,
  lookVoidPercent: 2.5,
  badVoidPercent: 5,
  wovenGoFraction: 0.53,
  wovenLookFraction: 0.55,
  alignedGoFraction: 0.6,
  alignedLookFraction: 0.62,
  measure: 'ray',
  leastDraftDeg: 2,
  wrongShareAllowedPercent: 5,
  laidIn: 'negative',
  leastOuterRadiusMm: 3,
  leastInnerRadiusMm: 1,
};
