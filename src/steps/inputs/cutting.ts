/** Inputs of the Ply cutting step: where the cloth is put down, and how its pieces are cut. */
import { choice, folded, number, optional, type InputsOf } from '../kit/inputTable';

export const cuttingTable = {
  startAlongMm: optional('Start, along the length', 'mm', null, [-2000, 2000, 1], {
    meaning:
      'Where each ply is put down first, from the middle of the part along its length. Not given, with the one across, takes the place from which the cloth shears least.',
  }),
  startAcrossMm: optional('Start, across', 'mm', null, [-2000, 2000, 1], {
    meaning: 'The same place across the length, to the left seen against the pull.',
  }),
  rimAllowanceMm: number('Allowance past the rim', 'mm', 0, [0, 50, 1], {
    meaning:
      'Cloth past the rim, trimmed after the cure; 0 cuts at the rim, so that nothing lies on the land.',
  }),
  overlapMm: number('Overlap at darts and seams', 'mm', 0, [0, 30, 1], {
    meaning: 'How far both edges of a dart or a seam lie over each other; 0 lets them meet.',
  }),
  seamAboveRimMm: optional('Seam over the rim', 'mm', null, [0.5, 1000, 1], {
    meaning:
      'Cuts each ply into a top and sides along a plane at that height over the rim. Not given cuts it in one.',
  }),
  paper: choice('Paper of the templates', 'a4', {
    meaning: 'Pieces that are larger than a sheet are tiled. As wide as the roll puts the whole nest on one.',
    choices: { a4: 'A4', letter: 'Letter', a3: 'A3', roll: 'as wide as the roll' },
  }),
  ...folded('Nest', {
    gapMm: number('Gap between pieces', 'mm', 4, [0, 100, 1], {
      meaning: 'Room for the blade; 3 to 5 is common practice.',
    }),
    fiberToleranceDeg: number('Fibers off the warp, at most', '°', 0, [0, 10, 1], {
      meaning:
        'Pieces may be turned so far where that saves cloth; 0 keeps every fiber where the drape has it.',
    }),
    halfTurns: choice('Turned by half', 'allowed', {
      meaning:
        'Plain, twill and satin look the same turned by half, and so do unidirectional and stitched cloths; a cloth with a tracer or a print does not.',
      choices: { allowed: 'may be', none: 'may not be: tracer or print' },
    }),
  }),
  ...folded('More', {
    stepMm: number('Step of the net', 'mm', 1, [0.5, 5, 2], {
      meaning: 'From thread to thread of the net that stands for the cloth; finer is slower.',
    }),
  }),
};

export type CuttingInputs = InputsOf<typeof cuttingTable>;
