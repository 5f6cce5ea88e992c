/** One ply of the stack, and one local patch on it. */
import * as z from 'zod/mini';
import { mayBeLeftOut, number, optional, plain, type InputsOf } from '../kit/inputTable';

const angle = number('Angle', '°', 0, [-180, 180, 0], {
  meaning:
    'From the part’s length to the warp, read on the side of the ply that its roll shows; a ply laid face down lies at minus this angle.',
});
const id = plain(z.string().check(z.minLength(1)), '');
const materialId = plain(z.string(), '');
const flag = mayBeLeftOut(plain(z.boolean(), false));

/** One ply; paths are `plies.stack.N.<field>`. */
export const plyTable = {
  id,
  materialId,
  /** As read on the ply's own face; `laidAngleDeg` gives the angle in the part. */
  angleDeg: angle,
  /** Turned over: the side that the roll shows lies towards the core. */
  faceDown: flag,
  /** Cut as two pieces that meet at the center line, the second one mirrored (book-matched). */
  mirroredPair: flag,
};
export type Ply = InputsOf<typeof plyTable>;

/** What a patch is, for the words. */
export const patchKinds = ['doubler', 'overlap', 'dart'] as const;

/** One patch; paths are `plies.patches.N.<field>`. */
export const patchTable = {
  id,
  kind: mayBeLeftOut(plain(z.enum(patchKinds), 'doubler')),
  /** Where it goes; patches of the same place lie on each other. */
  place: plain(z.string().check(z.maxLength(80)), ''),
  materialId,
  angleDeg: angle,
  faceDown: flag,
  areaCm2: number('Area', 'cm²', 4, [0.01, 100_000, 1], {
    meaning: 'Area of the patch as it lies in the part.',
  }),
  afterPly: number('Laid after ply', '', 1, [0, 200, 0], {
    meaning:
      'The ply of the stack, counted from the show face, on which the patch lies; 0 is on the show face.',
    whole: true,
  }),
  wallMm: mayBeLeftOut(
    optional('Wall drawn there', 'mm', 0.9, [0.05, 50, 2], {
      meaning: 'The wall of the pattern at this place; empty takes the wall of the rest.',
    }),
  ),
};
export type PlyPatch = InputsOf<typeof patchTable>;

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
