/** What one line of clamps, and one measured fiber-bed curve, is described by. */
import * as z from 'zod/mini';
import type { InputSpecs } from '../inputSpec';
import { numberIn } from '../part/inputs';

/** Fields of one line of clamps; paths are `closing.clamps.N.<field>`. */
export const clampSpecs = {
  count: {
    kind: 'number',
    label: 'Clamps of this kind',
    unit: '',
    meaning: 'How many equal clamps stand on this line.',
    default: 8,
    min: 0,
    max: 200,
    decimals: 0,
    whole: true,
  },
  forceN: {
    kind: 'number',
    label: 'Force of one clamp',
    unit: 'N',
    meaning:
      'Measured on a scale under the jaw, opened as far as on the mold; 10 N are about 1 kg on the scale.',
    default: 150,
    min: 0,
    max: 50_000,
    decimals: 0,
  },
  atOpeningMm: {
    kind: 'number',
    label: 'Measured this much wider than on the shut mold',
    unit: 'mm',
    meaning: 'Jaw opening at that measurement less the jaw opening on the shut mold; 0 when the same.',
    default: 0,
    min: -100,
    max: 200,
    decimals: 1,
  },
  springRateNPerMm: {
    kind: 'number',
    label: 'Spring rate',
    unit: 'N/mm',
    meaning: 'How much force one clamp gains per mm of opening; replaced by a second measured point.',
    default: 8,
    min: 0,
    max: 100_000,
    decimals: 1,
  },
  secondForceN: {
    kind: 'number',
    label: 'Second measured force',
    unit: 'N',
    meaning: 'Force at the second opening; 0 when not measured.',
    default: 0,
    min: 0,
    max: 50_000,
    decimals: 0,
  },
  secondOpeningMm: {
    kind: 'number',
    label: 'Second opening',
    unit: 'mm',
    meaning: 'Opening of the second measurement, counted like the first.',
    default: 0,
    min: -100,
    max: 200,
    decimals: 1,
  },
  xMm: {
    kind: 'number',
    label: 'Place x',
    unit: 'mm',
    meaning: 'From the middle of the part, on its plan seen along the pull; used when placed at a place.',
    default: 0,
    min: -2000,
    max: 2000,
    decimals: 0,
  },
  yMm: {
    kind: 'number',
    label: 'Place y',
    unit: 'mm',
    meaning: 'From the middle of the part, on its plan seen along the pull; used when placed at a place.',
    default: 0,
    min: -2000,
    max: 2000,
    decimals: 0,
  },
} as const satisfies InputSpecs;

/** Fields of one measured fiber-bed curve; paths are `closing.bedPoints.N.<field>`. */
export const bedPointSpecs = {
  lightKpa: {
    kind: 'number',
    label: 'Light weight',
    unit: 'kPa',
    meaning: 'Weight in N over the area of the stack in mm², times 1000.',
    default: 20,
    min: 0.01,
    max: 20_000,
    decimals: 1,
  },
  lightPlyMm: {
    kind: 'number',
    label: 'One ply under it',
    unit: 'mm',
    meaning: 'Thickness of the stack under the light weight divided by its plies.',
    default: 0.23,
    min: 0.01,
    max: 10,
    decimals: 3,
  },
  heavyKpa: {
    kind: 'number',
    label: 'Heavy weight',
    unit: 'kPa',
    meaning: 'At least three times the light one.',
    default: 100,
    min: 0.01,
    max: 20_000,
    decimals: 1,
  },
  heavyPlyMm: {
    kind: 'number',
    label: 'One ply under it',
    unit: 'mm',
    meaning: 'Thickness of the stack under the heavy weight divided by its plies.',
    default: 0.21,
    min: 0.01,
    max: 10,
    decimals: 3,
  },
} as const satisfies InputSpecs;

export const clampSchema = z.object({
  id: z.string().check(z.minLength(1)),
  placed: z.enum(['round the rim', 'at a place']),
  count: numberIn(clampSpecs.count),
  forceN: numberIn(clampSpecs.forceN),
  atOpeningMm: numberIn(clampSpecs.atOpeningMm),
  springRateNPerMm: numberIn(clampSpecs.springRateNPerMm),
  secondForceN: numberIn(clampSpecs.secondForceN),
  secondOpeningMm: numberIn(clampSpecs.secondOpeningMm),
  xMm: numberIn(clampSpecs.xMm),
  yMm: numberIn(clampSpecs.yMm),
});
export type Clamp = z.infer<typeof clampSchema>;

export const bedPointsSchema = z.object({
  materialId: z.string(),
  lightKpa: numberIn(bedPointSpecs.lightKpa),
  lightPlyMm: numberIn(bedPointSpecs.lightPlyMm),
  heavyKpa: numberIn(bedPointSpecs.heavyKpa),
  heavyPlyMm: numberIn(bedPointSpecs.heavyPlyMm),
});
export type BedPoints = z.infer<typeof bedPointsSchema>;

export const defaultClamp: Clamp = {
  id: 'clamps-1',
  placed: 'round the rim',
  count: 8,
  forceN: 150,
  atOpeningMm: 0,
  springRateNPerMm: 8,
  secondForceN: 0,
  secondOpeningMm: 0,
  xMm: 0,
  yMm: 0,
};
