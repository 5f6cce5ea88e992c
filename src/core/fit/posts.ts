/** Posts that a board stands on: from its underside, along the pull, to the core face. */
import type { Vec3 } from '../mesh/types';
import { dot, lengthOf, plus, times } from '../numeric/vectors';
import { timesVector } from '../numeric/matrix3';
import { placed, type Body } from './bodies';
import { firstAlong, normalOfSlot, type TriangleTree } from './triangleTree';

export interface Post {
  readonly footMm: Vec3;
  /** From the board to the core face, along the pull. */
  readonly heightMm: number;
  /** Where it is glued: its cross-section on the slope of the core face. */
  readonly glueMm2: number;
  /** How far the core face leans against the post, degrees. */
  readonly slopeDeg: number;
}

/**
 * One under each corner, in from the edges by its radius and a millimeter. Corners with nothing of the core face over them have none.
 * @param pull towards the roof of the half
 */
export function postsFor(core: TriangleTree, board: Body, pull: Vec3, diameterMm: number): readonly Post[] {
  const along = times(pull, 1 / lengthOf(pull));
  const { halfMm, placeMm, turn } = placed(board);
  // The face that looks most along the pull.
  const column = (axis: 0 | 1 | 2): Vec3 => [turn[0][axis], turn[1][axis], turn[2][axis]];
  const facing = ([0, 1, 2] as const).reduce((best, axis) =>
    Math.abs(dot(column(axis), along)) > Math.abs(dot(column(best), along)) ? axis : best,
  );
  const others = ([0, 1, 2] as const).filter((axis) => axis !== facing);
  const inMm = diameterMm / 2 + 1;
  const side = dot(column(facing), along) < 0 ? -1 : 1;
  return [-1, 1].flatMap((first) =>
    [-1, 1].flatMap((second): Post[] => {
      const own: [number, number, number] = [0, 0, 0];
      own[facing] = side * halfMm[facing];
      own[others[0]!] = first * Math.max(0, halfMm[others[0]!] - inMm);
      own[others[1]!] = second * Math.max(0, halfMm[others[1]!] - inMm);
      const start = plus(placeMm, timesVector(turn, own));
      const met = firstAlong(core, start, along);
      if (met === null) return [];
      const cosine = Math.abs(dot(normalOfSlot(core, met.slot), along));
      if (cosine < 0.1) return [];
      return [
        {
          footMm: plus(start, times(along, met.distanceMm)),
          heightMm: met.distanceMm,
          glueMm2: (Math.PI * diameterMm * diameterMm) / 4 / cosine,
          slopeDeg: (Math.acos(Math.min(1, cosine)) * 180) / Math.PI,
        },
      ];
    }),
  );
}
