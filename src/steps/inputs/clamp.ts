/** What one line of clamps, and one measured fiber-bed curve, is described by. */
import * as z from 'zod/mini';
import { number, plain, startOf, type InputsOf } from '../kit/inputTable';

/** Fields of one line of clamps; paths are `closing.clamps.N.<field>`. */
export const clampTable = {
  id: plain(z.string().check(z.minLength(1)), ''),
  placed: plain(z.enum(['round the rim', 'at a place']), 'round the rim'),
  count: number('Clamps of this kind', '', 8, [0, 200, 0], {
    meaning: 'How many equal clamps stand on this line.',
    whole: true,
  }),
  forceN: number('Force of one clamp', 'N', 150, [0, 50_000, 0], {
    meaning:
      'Measured on a scale under the jaw, opened as far as on the mold; 10 N are about 1 kg on the scale.',
  }),
  atOpeningMm: number('Measured this much wider than on the shut mold', 'mm', 0, [-100, 200, 1], {
    meaning: 'Jaw opening at that measurement less the jaw opening on the shut mold; 0 when the same.',
  }),
  springRateNPerMm: number('Spring rate', 'N/mm', 8, [0, 100_000, 1], {
    meaning: 'How much force one clamp gains per mm of opening; replaced by a second measured point.',
  }),
  secondForceN: number('Second measured force', 'N', 0, [0, 50_000, 0], {
    meaning: 'Force at the second opening; 0 when not measured.',
  }),
  secondOpeningMm: number('Second opening', 'mm', 0, [-100, 200, 1], {
    meaning: 'Opening of the second measurement, counted like the first.',
  }),
  xMm: number('Place x', 'mm', 0, [-2000, 2000, 0], {
    meaning: 'From the middle of the part, on its plan seen along the pull; used when placed at a place.',
  }),
  yMm: number('Place y', 'mm', 0, [-2000, 2000, 0], {
    meaning: 'From the middle of the part, on its plan seen along the pull; used when placed at a place.',
  }),
};
export type Clamp = InputsOf<typeof clampTable>;
export const defaultClamp: Clamp = { ...startOf(clampTable), id: 'clamps-1' };

/** Fields of one measured fiber-bed curve; paths are `closing.bedPoints.N.<field>`. */
export const bedPointTable = {
  materialId: plain(z.string(), ''),
  lightKpa: number('Light weight', 'kPa', 20, [0.01, 20_000, 1], {
    meaning: 'Weight in N over the area of the stack in mm², times 1000.',
  }),
  lightPlyMm: number('One ply under it', 'mm', 0.23, [0.01, 10, 3], {
    meaning: 'Thickness of the stack under the light weight divided by its plies.',
  }),
  heavyKpa: number('Heavy weight', 'kPa', 100, [0.01, 20_000, 1], {
    meaning: 'At least three times the light one.',
  }),
  heavyPlyMm: number('One ply under it', 'mm', 0.21, [0.01, 10, 3], {
    meaning: 'Thickness of the stack under the heavy weight divided by its plies.',
  }),
};

export type BedPoints = InputsOf<typeof bedPointTable>;
