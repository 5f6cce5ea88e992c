/** Inputs of the Ply cutting step: where the cloth is put down, and how its pieces are cut. */
import { folded, number, optional, type InputsOf } from '../kit/inputTable';

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
  ...folded('More', {
    stepMm: number('Step of the net', 'mm', 1, [0.5, 5, 2], {
      meaning: 'From thread to thread of the net that stands for the cloth; finer is slower.',
    }),
  }),
};

export type CuttingInputs = InputsOf<typeof cuttingTable>;
