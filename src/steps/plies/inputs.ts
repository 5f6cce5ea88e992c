/** Inputs of the Ply schedule step: material cards, the stack, and the print's line width. */
import * as z from 'zod/mini';
import type { InputSpecs } from '../inputSpec';
import { numberIn } from '../part/inputs';

export const pliesSpecs = {
  'plies.materials': {
    kind: 'other',
    label: 'Material cards',
    unit: '',
    meaning:
      'List of prepreg rolls: id, name, weave (woven, unidirectional or non-crimp) and the numbers described under plies.materials.N.',
    default: 'one twill card',
  },
  'plies.stack': {
    kind: 'other',
    label: 'Stack',
    unit: '',
    meaning: 'List of plies from the show face inward: id, materialId, angleDeg.',
    default: 'three plies 0/45/0',
  },
  'plies.lineWidthMm': {
    kind: 'number',
    label: 'Print line width',
    unit: 'mm',
    meaning: 'Width of one printed line of the pattern; walls come in whole lines.',
    default: 0.5,
    min: 0.05,
    max: 3,
    decimals: 2,
  },
  'plies.bulkFactor': {
    kind: 'number',
    label: 'Thickness as laid over cured',
    unit: '',
    meaning: 'Used for cards without a measured thickness as laid; a caliper on laid plies replaces it.',
    default: 1.3,
    min: 1,
    max: 3,
    decimals: 2,
  },
} as const satisfies InputSpecs;

/** Fields of one material card; paths are `plies.materials.N.<field>`. */
export const materialSpecs = {
  arealWeightGsm: {
    kind: 'number',
    label: 'Fiber areal weight',
    unit: 'g/m²',
    meaning: 'Mass of dry fiber per area, from the roll label; not the prepreg weight.',
    default: 200,
    min: 10,
    max: 3000,
    decimals: 0,
  },
  fiberDensityGCm3: {
    kind: 'number',
    label: 'Fiber density',
    unit: 'g/cm³',
    meaning: 'Density of the fiber itself; high-strength carbon is about 1.76 to 1.80.',
    default: 1.77,
    min: 0.5,
    max: 5,
    decimals: 2,
  },
  resinDensityGCm3: {
    kind: 'number',
    label: 'Resin density',
    unit: 'g/cm³',
    meaning: 'Density of the cured resin; epoxy is about 1.15 to 1.30.',
    default: 1.2,
    min: 0.5,
    max: 3,
    decimals: 2,
  },
  resinMassFraction: {
    kind: 'number',
    label: 'Resin mass fraction',
    unit: '',
    meaning: 'Share of resin in the prepreg by mass, from the data sheet; 0.42 means 42 %.',
    default: 0.42,
    min: 0.05,
    max: 0.9,
    decimals: 3,
  },
  laidThicknessMm: {
    kind: 'number',
    label: 'Thickness as laid, one ply',
    unit: 'mm',
    meaning: 'Caliper over laid plies divided by their number; empty when not measured.',
    default: 0.3,
    min: 0.01,
    max: 10,
    decimals: 3,
  },
} as const satisfies InputSpecs;

export const materialSchema = z.object({
  id: z.string().check(z.minLength(1)),
  name: z.string(),
  weave: z.enum(['woven', 'unidirectional', 'non-crimp']),
  arealWeightGsm: numberIn(materialSpecs.arealWeightGsm),
  fiberDensityGCm3: numberIn(materialSpecs.fiberDensityGCm3),
  resinDensityGCm3: numberIn(materialSpecs.resinDensityGCm3),
  resinMassFraction: numberIn(materialSpecs.resinMassFraction),
  /** null when not measured: the bulk factor is used and the figure says so. */
  laidThicknessMm: z.nullable(numberIn(materialSpecs.laidThicknessMm)),
});
export type Material = z.infer<typeof materialSchema>;

export const plySchema = z.object({
  id: z.string().check(z.minLength(1)),
  materialId: z.string(),
  angleDeg: z.number().check(z.minimum(-180), z.maximum(180)),
});
export type Ply = z.infer<typeof plySchema>;

export const pliesInputsSchema = z.object({
  materials: z.array(materialSchema),
  stack: z.array(plySchema),
  lineWidthMm: numberIn(pliesSpecs['plies.lineWidthMm']),
  bulkFactor: numberIn(pliesSpecs['plies.bulkFactor']),
});
export type PliesInputs = z.infer<typeof pliesInputsSchema>;

export const defaultMaterial: Material = {
  id: 'twill-200',
  name: 'Twill prepreg 200 g/m²',
  weave: 'woven',
  arealWeightGsm: 200,
  fiberDensityGCm3: 1.77,
  resinDensityGCm3: 1.2,
  resinMassFraction: 0.42,
  laidThicknessMm: 0.3,
};

export const defaultPliesInputs: PliesInputs = {
  materials: [defaultMaterial],
  stack: [
    { id: 'ply-1', materialId: 'twill-200', angleDeg: 0 },
    { id: 'ply-2', materialId: 'twill-200', angleDeg: 45 },
    { id: 'ply-3', materialId: 'twill-200', angleDeg: 0 },
  ],
  lineWidthMm: 0.5,
  bulkFactor: 1.3,
};
