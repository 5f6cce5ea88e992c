/** Inputs of the Pattern step: the shell that is made from the outside of the import. */
import { choice, folded, number, optional, type InputsOf } from '../kit/inputTable';

export const patternTable = {
  wallMm: optional('Wall', 'mm', null, [0.4, 5, 2], {
    meaning: 'Wall of the made pattern; not given takes the wall that the ply stack wants.',
  }),
  draftDeg: number('Draft', '°', 3, [0.5, 15, 1], {
    meaning: 'Least draft of both faces of the made pattern.',
  }),
  neutralPlane: choice('Outline stays as drawn', 'rim', {
    meaning:
      'Where draft changes nothing: at the rim the two halves of an enclosure still meet, and the top gets smaller; at the top the rim gets wider.',
    choices: { rim: 'at the rim', top: 'at the top' },
  }),
  insideRadiusMm: number('Least inside radius', 'mm', 1, [0.4, 20, 2], {
    meaning: 'Smallest radius of the inside corners of the made core face.',
  }),
  edges: choice('Outer edges', 'eased', {
    meaning:
      'Eased: rounded by wall and inside radius together, the wall is the same there too. Sharp: as drawn, the wall is thicker behind them.',
    choices: { eased: 'eased', sharp: 'sharp' },
  }),
  keepHolesOverMm: optional('Keep holes wider than', 'mm', null, [0, 500, 1], {
    meaning:
      'Holes of the show face that are wider stay open; all others are covered and cut after the cure. Not given covers all.',
  }),
  ...folded('More', {
    nozzleMm: number('Nozzle', 'mm', 0.4, [0.1, 2, 2], {
      meaning: 'Diameter of the nozzle that the pattern is printed with.',
    }),
    layerMm: number('Layer height', 'mm', 0.2, [0.02, 1, 2], {
      meaning: 'Height of a layer of the print; how rough it leaves the show face goes by it.',
    }),
    gridMm: optional('Grid', 'mm', null, [0.1, 1, 2], {
      meaning:
        'Step of the grid that the pattern is made on; not given takes half of the wall, 0.4 mm at most.',
    }),
  }),
};

export type PatternInputs = InputsOf<typeof patternTable>;
