/** Inputs of the Walls & draft step: what a wall may be for the ply stack, the least draft, and the least radii. */
import { choice, folded, number, optional, type InputsOf } from '../kit/inputTable';

export const wallsTable = {
  toleranceMm: optional('Print and stone may be off by', 'mm', null, [0, 2, 2], {
    meaning:
      'The wall wanted lies this much under what the plies fill, so that no place comes out wider than they fill. Empty takes 4 % of it, 0.03 mm for three plies (common practice).',
  }),
  filmFaces: choice('Separator film', 'none', {
    meaning:
      'Film laid between stone and laminate so that nothing sticks. It takes its part of the wall, and its wrinkles print.',
    choices: { none: 'none: sealed and released stone', one: 'on one face', both: 'on both faces' },
  }),
  filmMm: number('Film thickness', 'mm', 0.03, [0, 1, 3], {
    meaning:
      'Of one layer, from its label or by caliper over a fold of ten; 0.02 to 0.05 mm is usual (from memory).',
  }),
  filmLimitC: number('Film bears', '°C', 0, [0, 400, 0], {
    meaning:
      'The limit on the film’s data sheet; 0 while nobody has read it. Films differ from 80 to over 200 °C.',
  }),
  leastDraftDeg: number('Least draft I accept', '°', 2, [0, 45, 1], {
    meaning: 'Faces with less draft than this drag on the stone when the mold opens.',
  }),
  wrongShareAllowedPercent: number('Share that may have a wrong wall', '% of area', 5, [0, 100, 0], {
    meaning: 'Share of the show face that may be outside the band before the verdict says stop.',
  }),
  laidIn: choice('Plies are laid in', 'negative', {
    meaning:
      'The half that the plies are pressed into by hand. In the negative the outer edges of the part are the tight ones.',
    choices: { negative: 'the negative (show face)', positive: 'the positive (core face)' },
  }),
  measure: choice('Wall measured by', 'ray', {
    meaning:
      'Which wall the verdict uses: along the normal of the face, or the largest sphere that fits in the wall there.',
    choices: { ray: 'along the normal', ball: 'largest sphere' },
  }),
  ...folded('Limits', {
    goVoidPercent: number('Voids that are good', '%', 1, [0, 20, 1], {
      meaning: 'Share of the laminate that may be air in a sound part (common practice).',
    }),
    lookVoidPercent: number('Voids to be looked at', '%', 2.5, [0, 30, 1], {
      meaning: 'More air than this is a stop for the wall (common practice).',
    }),
    badVoidPercent: number('Voids that are bad anywhere', '%', 5, [0, 50, 1], {
      meaning: 'A place with more air than this is wrong whatever the rest is (common practice).',
    }),
    // Fiber fractions start at 0.2: 0 would divide by nothing.
    wovenGoFraction: number('Woven fiber that is good', '', 0.53, [0.2, 0.75, 2], {
      meaning:
        'Fiber volume fraction up to which a woven stack is pressed without holding the mold open (common practice).',
    }),
    wovenLookFraction: number('Most woven fiber', '', 0.55, [0.2, 0.75, 2], {
      meaning:
        'Past this fiber volume fraction a woven stack is short of resin and holds the mold open (common practice).',
    }),
    alignedGoFraction: number('Aligned fiber that is good', '', 0.6, [0.2, 0.85, 2], {
      meaning: 'The same for unidirectional and non-crimp plies (common practice).',
    }),
    alignedLookFraction: number('Most aligned fiber', '', 0.62, [0.2, 0.85, 2], {
      meaning: 'The same for unidirectional and non-crimp plies (common practice).',
    }),
    leastOuterRadiusMm: number('Least radius of outer edges', 'mm', 3, [0, 50, 1], {
      meaning:
        'Outer edges of a part laid in the negative are its hollow corners: plies bridge tighter ones (common practice).',
    }),
    leastInnerRadiusMm: number('Least radius of inside corners', 'mm', 1, [0, 50, 1], {
      meaning:
        'The smallest hollow corner that the other half still presses the plies into (common practice).',
    }),
  }),
};

export type WallsInputs = InputsOf<typeof wallsTable>;
