/** Inputs of the Fit step: the other half, contents, transmitters, seam. */
import * as z from 'zod/mini';
import { choice, folded, list, number, optional, other, plain, type InputsOf } from '../kit/inputTable';

const id = plain(z.string().check(z.minLength(1)), '');
const name = (start: string) => plain(z.string().check(z.maxLength(80)), start);
const place = (axis: string) =>
  number(`Place ${axis}`, 'mm', 0, [-2000, 2000, 1], { meaning: 'Of its middle, in the axes of the model.' });
const turn = (axis: string) =>
  number(`Turned about ${axis}`, '°', 0, [-360, 360, 1], {
    meaning: 'About x first, then y, then z, axes of the model, right-handed.',
  });

/** One thing inside; paths are `fit.contents.N.<field>`. */
export const contentTable = {
  id,
  name: name('Board'),
  what: choice('What', 'board', {
    meaning: 'Boards get posts; cells get the caution about heat.',
    choices: { board: 'board', cell: 'cell', screen: 'screen', button: 'button', other: 'other' },
  }),
  shape: choice('Shape', 'box', {
    meaning: 'A cylinder has its diameter as length and width, and stands along its height.',
    choices: { box: 'box', cylinder: 'cylinder' },
  }),
  lengthMm: number('Length', 'mm', 40, [0.1, 2000, 2], {
    meaning: 'Along x before it is turned; the diameter of a cylinder.',
  }),
  widthMm: number('Width', 'mm', 25, [0.1, 2000, 2], {
    meaning: 'Along y before it is turned; a cylinder takes its length instead.',
  }),
  heightMm: number('Height', 'mm', 4, [0.1, 2000, 2], {
    meaning: 'Along z before it is turned, with everything that stands on it.',
  }),
  xMm: place('x'),
  yMm: place('y'),
  zMm: place('z'),
  turnXDeg: turn('x'),
  turnYDeg: turn('y'),
  turnZDeg: turn('z'),
};
export type Content = InputsOf<typeof contentTable>;

/** One transmitter; paths are `fit.transmitters.N.<field>`. */
export const transmitterTable = {
  id,
  name: name('Radio'),
  frequencyMHz: number('Frequency', 'MHz', 2450, [0.01, 100_000, 3], {
    meaning: 'From the data sheet of the transmitter.',
  }),
  works: choice('Works by', 'antenna', {
    meaning: 'A coil works by its magnetic near field, an antenna by the wave that leaves it.',
    choices: { coil: 'coil', antenna: 'antenna' },
  }),
  windowMm: number('Window across', 'mm', 0, [0, 2000, 1], {
    meaning: 'Longest way across an opening, or a piece of glass cloth, that it looks through; 0 for none.',
  }),
};

/** One place where both rims were measured; paths are `fit.measuredRims.N.<field>`. */
export const measuredRimTable = {
  id,
  place: name('1'),
  ownMm: number('This half', 'mm', 100, [0, 5000, 2], {
    meaning: 'Across the rim by caliper at the numbered place.',
  }),
  mateMm: number('Other half', 'mm', 100, [0, 5000, 2], {
    meaning: 'Across the rim of the other half at the same place.',
  }),
};

/** One tolerance in line; paths are `fit.stack.N.<field>`. */
export const stackTable = {
  id,
  name: name('Board'),
  plusMinusMm: number('Plus or minus', 'mm', 0.2, [0, 50, 3], { meaning: 'Off by so much either way.' }),
};

export const fitTable = {
  mate: other(
    'Other half',
    z.nullable(
      z.object({ projectId: z.string().check(z.maxLength(200)), name: z.string().check(z.maxLength(200)) }),
    ),
    null,
    'Project of the other half, of the same enclosure: projectId, and name as it was called last; null compares no rims.',
  ),
  mateEnd: choice('Ends', 'as found', {
    meaning:
      'A plan that lies on itself after half a turn does not tell which end is which: mark one and choose.',
    choices: { 'as found': 'as found', 'other end': 'the other way round' },
  }),
  contents: list('Contents', contentTable, [], {
    meaning: `Boxes and cylinders inside: ${Object.keys(contentTable).join(', ')}.`,
    startWords: 'none',
  }),
  clearanceMm: number('Clearance wanted', 'mm', 0.5, [0, 20, 2], {
    meaning: 'Between any of the contents and the core face.',
  }),
  stepAcceptedMm: number('Step accepted', 'mm', 0.3, [0.01, 5, 2], {
    meaning: 'Between the outlines of the two rims; what a finger feels is about 0.1.',
  }),
  transmitters: list('Transmitters', transmitterTable, [], {
    meaning: `What sends or receives through the shell: ${Object.keys(transmitterTable).join(', ')}.`,
    startWords: 'none',
  }),
  ...folded('Seam', {
    seam: choice('Seam', 'none', {
      meaning: 'What lies between the two rims.',
      choices: { none: 'nothing chosen', bead: 'sealant or glue bead', cord: 'soft round cord' },
    }),
    beadMm: number('Bead or cord', 'mm', 1.5, [0.1, 20, 2], { meaning: 'Diameter as laid.' }),
    seamGapMm: number('Gap left for it', 'mm', 0.3, [0, 10, 2], {
      meaning: 'Left on purpose, over the gap that the rims have.',
    }),
    seamLossPercent: number('Loss', '%', 20, [0, 90, 0], { meaning: 'Left in nozzle and cartridge.' }),
    cartridgeMl: number('Cartridge', 'mL', 50, [1, 2000, 0], { meaning: 'As bought.' }),
    screwMm: number('Screws', 'mm', 0, [0, 12, 1], {
      meaning: 'Hole diameter of screws or pins of clips; 0 for none.',
    }),
    screwPitchMm: number('Screw pitch', 'mm', 40, [3, 500, 0], { meaning: 'Wanted, along the rim.' }),
  }),
  ...folded('Tolerances, measured rims and sizes', {
    stack: list('Tolerances in line', stackTable, [], {
      meaning: 'Added to print, stone and wall, which the workbook knows: name, plusMinusMm.',
      startWords: 'none',
    }),
    printPlusMinusMm: number('Print', 'mm', 0.15, [0, 5, 2], {
      meaning: 'Off by so much over its length, as your printer does.',
    }),
    measuredRims: list('Measured rims', measuredRimTable, [], {
      meaning: 'Caliper readings at numbered places: place, ownMm, mateMm.',
      startWords: 'none',
    }),
    postMm: number('Posts', 'mm', 5, [1, 40, 1], {
      meaning: 'Diameter of the posts that a board stands on.',
    }),
    ladderFrom: number('Smallest of the sizes', '×', 0.9, [0.2, 4, 3], {
      meaning: 'Scale of the smallest print of the ladder.',
    }),
    ladderTo: number('Largest of the sizes', '×', 1.1, [0.2, 4, 3], {
      meaning: 'Scale of the largest print of the ladder.',
    }),
    ladderCount: number('Sizes', '', 5, [0, 20, 0], {
      meaning: 'How many prints; 0 for no ladder.',
      whole: true,
    }),
  }),
  ...folded('Shell against radio', {
    conductivitySPerM: optional('Conductivity of the laminate', 'S/m', null, [1, 1e8, 0], {
      meaning:
        'Along the cloth; empty takes the middle of a published measurement of plain weave, 5488 to 8012 S/m.',
    }),
  }),
};
export type FitInputs = InputsOf<typeof fitTable>;
