/** One ply of the stack, and one local patch on it. */
import * as z from 'zod/mini';
import type { InputSpecs } from '../inputSpec';
import { numberIn } from '../part/inputs';

const angle = {
  kind: 'number',
  label: 'Angle',
  unit: '°',
  meaning:
    'From the part’s length to the warp, read on the side of the ply that its roll shows; a ply laid face down lies at minus this angle.',
  default: 0,
  min: -180,
  max: 180,
  decimals: 0,
} as const;

/** Number fields of one ply; paths are `plies.stack.N.<field>`. */
export const plySpecs = { angleDeg: angle } as const satisfies InputSpecs;

/** What a patch is, for the words. */
export const patchKinds = ['doubler', 'overlap', 'dart'] as const;

/** Number fields of one patch; paths are `plies.patches.N.<field>`. */
export const patchSpecs = {
  angleDeg: angle,
  areaCm2: {
    kind: 'number',
    label: 'Area',
    unit: 'cm²',
    meaning: 'Area of the patch as it lies in the part.',
    default: 4,
    min: 0.01,
    max: 100_000,
    decimals: 1,
  },
  wallMm: {
    kind: 'number',
    label: 'Wall drawn there',
    unit: 'mm',
    meaning: 'The wall of the pattern at this place; empty takes the wall of the rest.',
    default: 0.9,
    min: 0.05,
    max: 50,
    decimals: 2,
  },
  afterPly: {
    kind: 'number',
    label: 'Laid after ply',
    unit: '',
    meaning:
      'The ply of the stack, counted from the show face, on which the patch lies; 0 is on the show face.',
    default: 1,
    min: 0,
    max: 200,
    decimals: 0,
    whole: true,
  },
} as const satisfies InputSpecs;

const id = z.string().check(z.minLength(1));
const flag = () => z.prefault(z.boolean(), false);

export const plySchema = z.object({
  id,
  materialId: z.string(),
  /** As read on the ply's own face; `laidAngleDeg` gives the angle in the part. */
  angleDeg: numberIn(angle),
  /** Turned over: the side that the roll shows lies towards the core. */
  faceDown: flag(),
  /** Cut as two pieces that meet at the center line, the second one mirrored (book-matched). */
  mirroredPair: flag(),
});
export type Ply = z.infer<typeof plySchema>;

export const patchSchema = z.object({
  id,
  kind: z.prefault(z.enum(patchKinds), 'doubler'),
  /** Where it goes; patches of the same place lie on each other. */
  place: z.string().check(z.maxLength(80)),
  materialId: z.string(),
  angleDeg: numberIn(angle),
  faceDown: flag(),
  areaCm2: numberIn(patchSpecs.areaCm2),
  afterPly: numberIn(patchSpecs.afterPly),
  wallMm: z.prefault(z.nullable(numberIn(patchSpecs.wallMm)), null),
});
export type PlyPatch = z.infer<typeof patchSchema>;

/** The half of the part that a ply lies in: mirrored pairs lie at the mirrored angle in the second one. */
export type PartHalf = 'first' | 'second';

/**
 * The angle at which a ply lies in the part. Turning a ply over, and cutting its mirror image, each turn the sign.
 * Either half is named from the center line; a ply in one piece lies at the same angle in both.
 */
export function laidAngleDeg(
  ply: Pick<Ply, 'angleDeg' | 'faceDown'> & Partial<Pick<Ply, 'mirroredPair'>>,
  half: PartHalf = 'first',
): number {
  const turns = Number(ply.faceDown) + Number(half === 'second' && ply.mirroredPair === true);
  // Not -0: an angle of nothing has no sign.
  return turns % 2 === 1 && ply.angleDeg !== 0 ? -ply.angleDeg : ply.angleDeg;
}
