/** Inputs of the Ply schedule step: material cards, the stack with its patches, what the cure does, and the coat. */
import { choice, folded, list, number, optional, type InputsOf } from '../kit/inputTable';
import { defaultMaterial, materialTable } from './material';
import { patchTable, plyTable, type Ply } from './ply';

const ply = (position: number, angleDeg: number): Ply => ({
  id: `ply-${position}`,
  materialId: defaultMaterial.id,
  angleDeg,
  faceDown: false,
  mirroredPair: false,
});

export const pliesTable = {
  materials: list('Material cards', materialTable, [defaultMaterial], {
    startWords: 'one twill card',
    meaning:
      'List of prepreg rolls: id, name, weave (woven, unidirectional or non-crimp), freezerDate and the numbers described under plies.materials.N.',
  }),
  stack: list('Stack', plyTable, [ply(1, 0), ply(2, 45), ply(3, 0)], {
    startWords: 'three plies 0/45/0',
    meaning:
      'List of plies from the show face inward: id, materialId, angleDeg, and true or false for faceDown and mirroredPair.',
  }),
  patches: list('Doublers and overlaps', patchTable, [], {
    meaning:
      'List of doublers, overlaps and darts: id, kind, place, materialId, angleDeg, faceDown, areaCm2, afterPly (the ply it lies on), wallMm (the wall drawn there).',
  }),
  lineWidthMm: number('Bead width', 'mm', 0.5, [0.05, 3, 2], {
    meaning: 'Width of one printed bead of the pattern; walls come in whole beads.',
  }),
  bulkFactor: number('Thickness as laid over cured', '', 1.07, [1, 3, 2], {
    meaning:
      'Used for cards without a measured thickness as laid; a caliper on laid plies replaces it. It tells how the stack gets in, not what fills the gap.',
  }),
  plannedLayupH: number('Planned layup', 'h', 6, [0, 1000, 1], {
    meaning: 'From taking the roll out of the freezer until the cure starts, thawing included.',
  }),
  ...folded('Cure and use', {
    stressFreeC: optional('Free of stress at', '°C', null, [0, 300, 0], {
      meaning:
        'Temperature at which the cured laminate lies as it was molded; an unsymmetric strip warmed until it is flat tells it. Empty takes the one at which it gels, with the hottest stage as the far end.',
    }),
    roomTemperatureC: optional('Temperature in use', '°C', null, [-60, 150, 0], {
      meaning:
        'At which the finished part is to be flat: the coldest or hottest day it sees. Empty takes the room of the Stone mold step.',
    }),
    cureShrinkagePercent: number('Cure shrinkage through the wall', '%', 0.5, [0, 5, 2], {
      meaning:
        'How much the laminate shrinks through its thickness while it cures, cooling left out; 0.5 is from memory.',
    }),
  }),
  ...folded('Measured on cured pieces', {
    plateMassG: optional('Cured plate, mass', 'g', null, [0.001, 100_000, 2], {
      meaning:
        'A cured offcut of the whole stack on a scale; with its area and thickness it replaces the void-free thickness of the cards and tells its voids.',
    }),
    plateAreaCm2: optional('Cured plate, area', 'cm²', null, [0.1, 100_000, 1], {
      meaning: 'Area of that plate; 10 × 10 cm is 100 cm².',
    }),
    plateThicknessMm: optional('Cured plate, thickness', 'mm', null, [0.01, 50, 2], {
      meaning: 'Caliper over that plate, mean of several places.',
    }),
    voidPercent: optional('Voids, measured', '%', null, [0, 30, 1], {
      meaning:
        'Share of the cured laminate, by volume, that is air, by weight and size of the cured part. Empty takes the air that the closed mold leaves.',
    }),
    resinLostPercent: optional('Resin lost, measured', '%', null, [0, 90, 1], {
      meaning:
        'Share of the resin laid in, by mass, that is gone by the weight of the cured part. Empty takes what the closed mold presses out.',
    }),
  }),
  ...folded('One-sided coat', {
    coatFace: choice('Coat', 'none', {
      meaning:
        'A coat of clear epoxy on one face only; both faces alike count as none, because they balance.',
      choices: { none: 'none, or alike on both faces', show: 'on the show face', core: 'on the core face' },
    }),
    coatThicknessMm: number('Coat thickness', 'mm', 0.15, [0.01, 3, 2], {
      meaning: 'Thickness of the coat on that one face.',
    }),
    coatSetC: optional('Temperature at which the coat set', '°C', null, [0, 300, 0], {
      meaning:
        'The coat pulls from here on, not from the cure; enter the oven’s for a coat cured hot. Empty takes the room of the Stone mold step.',
    }),
  }),
};

export type PliesInputs = InputsOf<typeof pliesTable>;
