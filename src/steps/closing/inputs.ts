/** Inputs of the Mold closing step: clamps, the curve of the fiber bed, lands, debulking, resin. */
import * as z from 'zod/mini';
import type { InputSpecs } from '../inputSpec';
import { numberIn } from '../part/inputs';
import { bedPointsSchema, clampSchema, defaultClamp } from './clampInputs';

export { bedPointSpecs, clampSpecs, defaultClamp, type BedPoints, type Clamp } from './clampInputs';

export const closingSpecs = {
  'closing.clamps': {
    kind: 'other',
    label: 'Clamps',
    unit: '',
    meaning:
      'List of clamps: id, placed (round the rim, or at a place) and the numbers described under closing.clamps.N.',
    default: '8 spring clamps of 150 N, round the rim',
  },
  'closing.bedLaw': {
    kind: 'choice',
    label: 'Fiber-bed curve',
    unit: '',
    meaning:
      'How plies push back when pressed: by the weave on each card, or one curve for all. A measured curve under closing.bedPoints goes before both.',
    default: 'by weave',
    choices: [
      { value: 'by weave', label: 'by the weave of each card' },
      { value: 'woven', label: 'woven' },
      { value: 'aligned', label: 'aligned tows' },
    ],
  },
  'closing.bedPoints': {
    kind: 'other',
    label: 'Measured fiber-bed curves',
    unit: '',
    meaning:
      'List of materials measured under two weights: materialId and the numbers described under closing.bedPoints.N.',
    default: 'none',
  },
  'closing.scatterPercent': {
    kind: 'number',
    label: 'Scatter of the fiber bed',
    unit: '%',
    meaning:
      'How far the pressure at one thickness may be off: laboratories differ by about 40 %; your own two points may be better.',
    default: 40,
    min: 0,
    max: 90,
    decimals: 0,
  },
  'closing.debulkedMm': {
    kind: 'number',
    label: 'Stack after debulking, measured',
    unit: 'mm',
    meaning:
      'Caliper over the whole stack after pressing it by hand or vacuum, before closing; 0 when not measured.',
    default: 0,
    min: 0,
    max: 50,
    decimals: 2,
  },
  'closing.debulk': {
    kind: 'choice',
    label: 'Debulked',
    unit: '',
    meaning:
      'How air is pressed out between the plies before closing. Under vacuum at 40 to 50 °C for about 15 min (common practice) next to none is left.',
    default: 'by hand',
    choices: [
      { value: 'by hand', label: 'by hand, ply by ply' },
      { value: 'under vacuum', label: 'under a vacuum bag, warm' },
    ],
  },
  'closing.debulkFactor': {
    kind: 'number',
    label: 'Debulked over as laid',
    unit: '',
    meaning:
      'Thickness after debulking over thickness as laid, used while none is measured: 0.85 to 0.9 (from memory); 1 is no debulking. Never under what fiber and resin fill.',
    default: 0.9,
    min: 0.5,
    max: 1,
    decimals: 2,
  },
  'closing.lands': {
    kind: 'choice',
    label: 'Lands',
    unit: '',
    meaning:
      'Whether the halves meet stone on stone round the part; lands stop the closing and then take load.',
    default: 'stone on stone',
    choices: [
      { value: 'stone on stone', label: 'stone on stone round the part' },
      { value: 'none', label: 'none: only the laminate holds the halves apart' },
    ],
  },
  'closing.shimMm': {
    kind: 'number',
    label: 'Shim on the lands',
    unit: 'mm',
    meaning: 'Height laid on the lands; negative when the lands were lowered by scraping.',
    default: 0,
    min: -5,
    max: 10,
    decimals: 2,
  },
  'closing.frictionCoefficient': {
    kind: 'number',
    label: 'Most friction on the stone',
    unit: '',
    meaning:
      'Friction of the stack on released stone for the upper bound; the lower bound is none. Cold prepreg is tacky, warm resin runs. Measured on tools: 0.17 to 0.45 (J. Manuf. Mater. Process. 7, 2023, 14, abstract).',
    default: 0.25,
    min: 0,
    max: 1,
    decimals: 2,
  },
  'closing.resin': {
    kind: 'choice',
    label: 'Resin',
    unit: '',
    meaning:
      'Which case the verdicts use: resin held in by a sealed or dammed rim, as it should be, or free to leave over an open one. Both are shown.',
    default: 'trapped',
    choices: [
      { value: 'trapped', label: 'held in by a sealed or dammed rim' },
      { value: 'free', label: 'free to leave' },
    ],
  },
  'closing.wantedFiberFraction': {
    kind: 'number',
    label: 'Fiber volume fraction you want',
    unit: '',
    meaning: 'For the clamp force that presses the faces across the pull to it.',
    default: 0.5,
    min: 0.2,
    max: 0.75,
    decimals: 2,
  },
  'closing.acceptedStandOffMm': {
    kind: 'number',
    label: 'Stand-off you accept',
    unit: 'mm',
    meaning:
      'Resin that is held in keeps the mold open by a few hundredths, which is no fault; by more than this anywhere round its lands it has not closed (common practice).',
    default: 0.1,
    min: 0,
    max: 5,
    decimals: 2,
  },
  'closing.timeToGelMin': {
    kind: 'number',
    label: 'Gel time',
    unit: 'min',
    meaning:
      'From the supplier’s data sheet, at the temperature below; with the oven program it tells where the laminate gels. 60 min at 70 °C is from memory for resins that cure from 70 °C.',
    default: 60,
    min: 1,
    max: 6000,
    decimals: 0,
  },
  'closing.gelTimeAtC': {
    kind: 'number',
    label: 'Gel time is for',
    unit: '°C',
    meaning: 'Temperature that the data sheet gives beside the gel time; not that of your oven.',
    default: 70,
    min: 20,
    max: 200,
    decimals: 0,
  },
  'closing.resinMarginKPa': {
    kind: 'number',
    label: 'Resin pressure over the need',
    unit: 'kPa',
    meaning: 'What the resin should have at gel beyond what keeps moisture from boiling (common practice).',
    default: 50,
    min: 0,
    max: 2000,
    decimals: 0,
  },
  'closing.bagged': {
    kind: 'choice',
    label: 'Vacuum bag round the mold',
    unit: '',
    meaning:
      'A rigid mold shields the resin from the air outside; only in a bag does the air press on it too, with 101 kPa.',
    default: 'none',
    choices: [
      { value: 'none', label: 'none' },
      { value: 'bagged', label: 'the closed mold is bagged' },
    ],
  },
  'closing.humidityPercent': {
    kind: 'number',
    label: 'Humidity the prepreg was stored at',
    unit: '%',
    meaning: 'Relative humidity of the air that the open roll last lay in.',
    default: 50,
    min: 0,
    max: 100,
    decimals: 0,
  },
} as const satisfies InputSpecs;

export const closingInputsSchema = z.object({
  clamps: z.array(clampSchema),
  bedLaw: z.enum(['by weave', 'woven', 'aligned']),
  bedPoints: z.array(bedPointsSchema),
  scatterPercent: numberIn(closingSpecs['closing.scatterPercent']),
  debulkedMm: numberIn(closingSpecs['closing.debulkedMm']),
  debulk: z.enum(['by hand', 'under vacuum']),
  debulkFactor: numberIn(closingSpecs['closing.debulkFactor']),
  lands: z.enum(['stone on stone', 'none']),
  shimMm: numberIn(closingSpecs['closing.shimMm']),
  frictionCoefficient: numberIn(closingSpecs['closing.frictionCoefficient']),
  resin: z.enum(['free', 'trapped']),
  wantedFiberFraction: numberIn(closingSpecs['closing.wantedFiberFraction']),
  acceptedStandOffMm: numberIn(closingSpecs['closing.acceptedStandOffMm']),
  timeToGelMin: numberIn(closingSpecs['closing.timeToGelMin']),
  gelTimeAtC: numberIn(closingSpecs['closing.gelTimeAtC']),
  resinMarginKPa: numberIn(closingSpecs['closing.resinMarginKPa']),
  bagged: z.enum(['none', 'bagged']),
  humidityPercent: numberIn(closingSpecs['closing.humidityPercent']),
});
export type ClosingInputs = z.infer<typeof closingInputsSchema>;

export const defaultClosingInputs: ClosingInputs = {
  clamps: [defaultClamp],
  bedLaw: 'by weave',
  bedPoints: [],
  scatterPercent: 40,
  debulkedMm: 0,
  debulk: 'by hand',
  debulkFactor: 0.9,
  lands: 'stone on stone',
  shimMm: 0,
  frictionCoefficient: 0.25,
  resin: 'trapped',
  wantedFiberFraction: 0.5,
  acceptedStandOffMm: 0.1,
  timeToGelMin: 60,
  gelTimeAtC: 70,
  resinMarginKPa: 50,
  bagged: 'none',
  humidityPercent: 50,
};
