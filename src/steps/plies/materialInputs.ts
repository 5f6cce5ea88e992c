/** One material card: a prepreg roll as its data sheet, its label and the bench describe it. */
import * as z from 'zod/mini';
import { numberIn } from '../part/inputs';
import { materialSpecs } from './materialSpecs';

type OptionalField = Exclude<
  keyof typeof materialSpecs,
  | 'arealWeightGsm'
  | 'fiberDensityGCm3'
  | 'resinDensityGCm3'
  | 'resinMassFraction'
  | 'laidThicknessMm'
  | 'caliperPlies'
  | 'hoursOutH'
>;

/** A field that may be empty, and that a shorter card (from a command line or a library) may leave out. */
const empty = (field: OptionalField) => z.prefault(z.nullable(numberIn(materialSpecs[field])), null);

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
  /** Measured at the bench; replaces `laidThicknessMm`. */
  caliperTotalMm: empty('caliperTotalMm'),
  caliperPlies: z.prefault(numberIn(materialSpecs.caliperPlies), 3),
  /** Measured at the bench; both together replace `resinMassFraction`. */
  offcutMassG: empty('offcutMassG'),
  offcutAreaCm2: empty('offcutAreaCm2'),
  e1GPa: empty('e1GPa'),
  e2GPa: empty('e2GPa'),
  g12GPa: empty('g12GPa'),
  nu12: empty('nu12'),
  expansion1PpmPerK: empty('expansion1PpmPerK'),
  expansion2PpmPerK: empty('expansion2PpmPerK'),
  expansion3PpmPerK: empty('expansion3PpmPerK'),
  tension1Mpa: empty('tension1Mpa'),
  compression1Mpa: empty('compression1Mpa'),
  tension2Mpa: empty('tension2Mpa'),
  compression2Mpa: empty('compression2Mpa'),
  shear12Mpa: empty('shear12Mpa'),
  /** As written on the label, any form; '' when not known. */
  freezerDate: z.prefault(z.string().check(z.maxLength(40)), ''),
  hoursOutH: z.prefault(numberIn(materialSpecs.hoursOutH), 0),
  allowedOutTimeH: empty('allowedOutTimeH'),
});
export type Material = z.infer<typeof materialSchema>;

/** What a card has nothing to say about yet. */
const nothingKnown = {
  caliperTotalMm: null,
  caliperPlies: 3,
  offcutMassG: null,
  offcutAreaCm2: null,
  e1GPa: null,
  e2GPa: null,
  g12GPa: null,
  nu12: null,
  expansion1PpmPerK: null,
  expansion2PpmPerK: null,
  expansion3PpmPerK: null,
  tension1Mpa: null,
  compression1Mpa: null,
  tension2Mpa: null,
  compression2Mpa: null,
  shear12Mpa: null,
  freezerDate: '',
  hoursOutH: 0,
  allowedOutTimeH: null,
} as const;

export const defaultMaterial: Material = {
  ...nothingKnown,
  id: 'twill-200',
  name: 'Twill prepreg 200 g/m²',
  weave: 'woven',
  arealWeightGsm: 200,
  fiberDensityGCm3: 1.77,
  resinDensityGCm3: 1.2,
  resinMassFraction: 0.42,
  laidThicknessMm: 0.25,
};
