/** Inputs of the Ply schedule step: material cards, the stack with its patches, what the cure does, and the coat. */
import * as z from 'zod/mini';
import type { InputSpecs } from '../inputSpec';
import { numberIn } from '../part/inputs';
import { defaultMaterial, materialSchema } from './materialInputs';
import { patchSchema, plySchema, type Ply } from './plyInputs';

export { defaultMaterial, materialSchema, type Material } from './materialInputs';
export { materialSpecs } from './materialSpecs';
export { patchSpecs, plySpecs, type Ply, type PlyPatch } from './plyInputs';

export const pliesSpecs = {
  'plies.materials': {
    kind: 'other',
    label: 'Material cards',
    unit: '',
    meaning:
      'List of prepreg rolls: id, name, weave (woven, unidirectional or non-crimp), freezerDate and the numbers described under plies.materials.N.',
    default: 'one twill card',
  },
  'plies.stack': {
    kind: 'other',
    label: 'Stack',
    unit: '',
    meaning:
      'List of plies from the show face inward: id, materialId, angleDeg, and true or false for faceDown and mirroredPair.',
    default: 'three plies 0/45/0',
  },
  'plies.patches': {
    kind: 'other',
    label: 'Doublers and overlaps',
    unit: '',
    meaning:
      'List of doublers, overlaps and darts: id, kind, place, materialId, angleDeg, faceDown, areaCm2, afterPly (the ply it lies on), wallMm (the wall drawn there).',
    default: [],
  },
  'plies.lineWidthMm': {
    kind: 'number',
    label: 'Bead width',
    unit: 'mm',
    meaning: 'Width of one printed bead of the pattern; walls come in whole beads.',
    default: 0.5,
    min: 0.05,
    max: 3,
    decimals: 2,
  },
  'plies.bulkFactor': {
    kind: 'number',
    label: 'Thickness as laid over cured',
    unit: '',
    meaning:
      'Used for cards without a measured thickness as laid; a caliper on laid plies replaces it. It tells how the stack gets in, not what fills the gap.',
    default: 1.07,
    min: 1,
    max: 3,
    decimals: 2,
  },
  'plies.resinLostPercent': {
    kind: 'number',
    label: 'Resin lost, measured',
    unit: '%',
    meaning:
      'Share of the resin laid in, by mass, that is gone by the weight of the cured part. Empty takes what the closed mold presses out.',
    default: null,
    min: 0,
    max: 90,
    decimals: 1,
  },
  'plies.voidPercent': {
    kind: 'number',
    label: 'Voids, measured',
    unit: '%',
    meaning:
      'Share of the cured laminate, by volume, that is air, by weight and size of the cured part. Empty takes the air that the closed mold leaves.',
    default: null,
    min: 0,
    max: 30,
    decimals: 1,
  },
  'plies.plateMassG': {
    kind: 'number',
    label: 'Cured plate, mass',
    unit: 'g',
    meaning:
      'A cured offcut of the whole stack on a scale; with its area and thickness it replaces the void-free thickness of the cards and tells its voids.',
    default: null,
    min: 0.001,
    max: 100_000,
    decimals: 2,
  },
  'plies.plateAreaCm2': {
    kind: 'number',
    label: 'Cured plate, area',
    unit: 'cm²',
    meaning: 'Area of that plate; 10 × 10 cm is 100 cm².',
    default: null,
    min: 0.1,
    max: 100_000,
    decimals: 1,
  },
  'plies.plateThicknessMm': {
    kind: 'number',
    label: 'Cured plate, thickness',
    unit: 'mm',
    meaning: 'Caliper over that plate, mean of several places.',
    default: null,
    min: 0.01,
    max: 50,
    decimals: 2,
  },
  'plies.stressFreeC': {
    kind: 'number',
    label: 'Free of stress at',
    unit: '°C',
    meaning:
      'Temperature at which the cured laminate lies as it was molded; an unsymmetric strip warmed until it is flat tells it. Empty takes the one at which it gels, with the hottest stage as the far end.',
    default: null,
    min: 0,
    max: 300,
    decimals: 0,
  },
  'plies.roomTemperatureC': {
    kind: 'number',
    label: 'Temperature in use',
    unit: '°C',
    meaning:
      'At which the finished part is to be flat: the coldest or hottest day it sees. Empty takes the room of the Stone mold step.',
    default: null,
    min: -60,
    max: 150,
    decimals: 0,
  },
  'plies.cureShrinkagePercent': {
    kind: 'number',
    label: 'Cure shrinkage through the wall',
    unit: '%',
    meaning:
      'How much the laminate shrinks through its thickness while it cures, cooling left out; 0.5 is from memory.',
    default: 0.5,
    min: 0,
    max: 5,
    decimals: 2,
  },
  'plies.plannedLayupH': {
    kind: 'number',
    label: 'Planned layup',
    unit: 'h',
    meaning: 'From taking the roll out of the freezer until the cure starts, thawing included.',
    default: 6,
    min: 0,
    max: 1000,
    decimals: 1,
  },
  'plies.coatFace': {
    kind: 'choice',
    label: 'Coat',
    unit: '',
    meaning: 'A coat of clear epoxy on one face only; both faces alike count as none, because they balance.',
    default: 'none',
    choices: [
      { value: 'none', label: 'none, or alike on both faces' },
      { value: 'show', label: 'on the show face' },
      { value: 'core', label: 'on the core face' },
    ],
  },
  'plies.coatThicknessMm': {
    kind: 'number',
    label: 'Coat thickness',
    unit: 'mm',
    meaning: 'Thickness of the coat on that one face.',
    default: 0.15,
    min: 0.01,
    max: 3,
    decimals: 2,
  },
  'plies.coatSetC': {
    kind: 'number',
    label: 'Temperature at which the coat set',
    unit: '°C',
    meaning:
      'The coat pulls from here on, not from the cure; enter the oven’s for a coat cured hot. Empty takes the room of the Stone mold step.',
    default: null,
    min: 0,
    max: 300,
    decimals: 0,
  },
} as const satisfies InputSpecs;

export const pliesInputsSchema = z.object({
  materials: z.array(materialSchema),
  stack: z.array(plySchema),
  patches: z.array(patchSchema),
  lineWidthMm: numberIn(pliesSpecs['plies.lineWidthMm']),
  bulkFactor: numberIn(pliesSpecs['plies.bulkFactor']),
  resinLostPercent: z.nullable(numberIn(pliesSpecs['plies.resinLostPercent'])),
  voidPercent: z.nullable(numberIn(pliesSpecs['plies.voidPercent'])),
  plateMassG: z.nullable(numberIn(pliesSpecs['plies.plateMassG'])),
  plateAreaCm2: z.nullable(numberIn(pliesSpecs['plies.plateAreaCm2'])),
  plateThicknessMm: z.nullable(numberIn(pliesSpecs['plies.plateThicknessMm'])),
  stressFreeC: z.nullable(numberIn(pliesSpecs['plies.stressFreeC'])),
  roomTemperatureC: z.nullable(numberIn(pliesSpecs['plies.roomTemperatureC'])),
  cureShrinkagePercent: numberIn(pliesSpecs['plies.cureShrinkagePercent']),
  plannedLayupH: numberIn(pliesSpecs['plies.plannedLayupH']),
  coatFace: z.enum(['none', 'show', 'core']),
  coatThicknessMm: numberIn(pliesSpecs['plies.coatThicknessMm']),
  coatSetC: z.nullable(numberIn(pliesSpecs['plies.coatSetC'])),
});
export type PliesInputs = z.infer<typeof pliesInputsSchema>;

const ply = (number: number, angleDeg: number): Ply => ({
  id: `ply-${number}`,
  materialId: defaultMaterial.id,
  angleDeg,
  faceDown: false,
  mirroredPair: false,
});

export const defaultPliesInputs: PliesInputs = {
  materials: [defaultMaterial],
  stack: [ply(1, 0), ply(2, 45), ply(3, 0)],
  patches: [],
  lineWidthMm: 0.5,
  bulkFactor: 1.07,
  resinLostPercent: null,
  voidPercent: null,
  plateMassG: null,
  plateAreaCm2: null,
  plateThicknessMm: null,
  stressFreeC: null,
  roomTemperatureC: null,
  cureShrinkagePercent: 0.5,
  plannedLayupH: 6,
  coatFace: 'none',
  coatThicknessMm: 0.15,
  coatSetC: null,
};
