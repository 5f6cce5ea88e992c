/** Inputs of the Part step: how the saved mesh becomes the part in mm. */
import * as z from 'zod/mini';
import { choice, number, other, type InputsOf } from '../kit/inputTable';

export const partTable = {
  unit: choice('Unit of the file', 'unconfirmed', {
    meaning: 'Length unit of the numbers in the model file; "not confirmed" takes the guess and says so.',
    choices: {
      unconfirmed: 'not confirmed',
      mm: 'millimeters',
      cm: 'centimeters',
      m: 'meters',
      in: 'inches',
    },
  }),
  body: number('Body', '', 0, [0, 100_000, 0], {
    meaning:
      'Which body of the file is the part: 0 takes all of them together, 1 is the one with most facets.',
    whole: true,
  }),
  scale: number('Scale', '', 1, [0.001, 1000, 4], {
    meaning: 'Factor on all three axes, after the unit; 1 leaves the size as it is.',
  }),
  pull: other(
    'Pull',
    z.tuple([z.number(), z.number(), z.number()]),
    [0, 0, 1],
    'Direction x,y,z in which the negative mold half leaves the show face; made a unit vector before use.',
  ),
  rightWayUp: choice('Right way up', 'settled', {
    meaning:
      'Whether it is known which face people see. An import asks where the shape does not tell; giving the pull answers.',
    choices: { settled: 'known', asked: 'to be answered' },
  }),
  winding: choice('Flipped facets', 'repair', {
    meaning: 'Whether facets that are wound inside out are turned right for measuring.',
    choices: { repair: 'turn them right', asFile: 'leave as in the file' },
  }),
  nominalWall: choice('Wall comes from', 'model', {
    meaning: 'The model itself, or (for a pattern drawn solid) the number of beads the print lays.',
    choices: { model: 'the model', print: 'the print: beads × bead width' },
  }),
  printLines: number('Beads across the printed wall', 'beads', 2, [1, 20, 0], {
    meaning: 'How many beads side by side the print lays for the wall of a pattern drawn solid.',
    whole: true,
  }),
  openFace: choice('Open face', 'againstPull', {
    meaning: 'Which side of a pattern drawn solid stays open, against the pull or one of the six axes.',
    choices: {
      againstPull: 'the side away from the pull',
      '+x': '+x',
      '-x': '-x',
      '+y': '+y',
      '-y': '-y',
      '+z': '+z',
      '-z': '-z',
    },
  }),
};

export type PartInputs = InputsOf<typeof partTable>;
