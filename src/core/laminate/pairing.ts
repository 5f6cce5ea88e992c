/**
 * Printed walls come in whole beads and stacks in whole plies: the table of how well they meet. Plain arithmetic of the
 * stack's volume and the maker's bead width; the limits that judge a row are common practice.
 */
import { Problem } from '../problem';
import {
  acceptedWalls,
  filledWall,
  usualTolerance,
  wallWord,
  type FilledWall,
  type WallLimits,
  type WallWord,
} from './acceptedWalls';

/** Mean of the plies of the stack, per ply. */
export interface MeanPly {
  readonly voidFreeMm: number;
  readonly fiberMm: number;
  /** Gap of one ply at which its fibers reach their limits, mm. */
  readonly fiberGoMm: number;
  readonly fiberLookMm: number;
}

export interface WallStackPair extends FilledWall {
  readonly plies: number;
  /** n × t0 of one ply, less the tolerance. */
  readonly wantedMm: number;
  readonly beads: number;
  /** beads × bead width. */
  readonly wallMm: number;
  readonly word: WallWord;
  /** Bead width that makes the wanted wall of so many beads exactly, mm. */
  readonly fittingBeadMm: number;
}

/** A bead is laid between these shares of its usual width without trouble (common practice). */
export const beadRange = [0.65, 1.5] as const;

/** For each number of plies from 1 to `mostPlies`: the number of whole beads that comes nearest to the wall it wants. */
export function pairWallsWithStacks(
  beadWidthMm: number,
  ply: MeanPly,
  limits: WallLimits,
  mostPlies: number,
): readonly WallStackPair[] {
  if (!(beadWidthMm > 0 && ply.voidFreeMm > 0))
    throw new Problem('laminate.notPositive', 'Bead width and ply thickness must be more than zero.');
  return Array.from({ length: mostPlies }, (_, index) => {
    const plies = index + 1;
    const walls = acceptedWalls(
      { voidFreeMm: plies * ply.voidFreeMm, fiberMm: plies * ply.fiberMm },
      { goMm: plies * ply.fiberGoMm, lookMm: plies * ply.fiberLookMm },
      limits,
    );
    const beads = Math.max(1, Math.round(walls.wantedMm / beadWidthMm));
    const wallMm = beads * beadWidthMm;
    return {
      plies,
      wantedMm: walls.wantedMm,
      beads,
      wallMm,
      ...filledWall(walls, wallMm),
      word: wallWord(walls, wallMm),
      fittingBeadMm: walls.wantedMm / beads,
    };
  });
}

/**
 * The fewest equal plies that fill a wall with no more voids than are good: smallest n with n t0 >= wall (1 − voids).
 * Never fewer than fill it: what is missing would be air. Whether they are too many for it is `wallWord`'s to say.
 */
export function wantedPlies(wallMm: number, plyVoidFreeMm: number, goVoidShare: number): number {
  if (!(wallMm > 0 && plyVoidFreeMm > 0))
    throw new Problem('laminate.notPositive', 'Wall and ply thickness must be more than zero.');
  return Math.max(1, Math.ceil((wallMm * (1 - goVoidShare)) / plyVoidFreeMm - 1e-9));
}

/** What fills a wall that lies between two numbers of plies. */
export interface WallRescue {
  /** The whole plies that stay under it. */
  readonly plies: number;
  /** Missing thickness without voids, mm. */
  readonly missingMm: number;
  /** Fiber of one thinner ply of the same prepreg that fills it, g/m². */
  readonly thinPlyGsm: number;
  /** Resin film that fills it in place of that ply, g/m², and the fiber fraction that is left then. */
  readonly filmGsm: number;
  readonly filmFiberFraction: number;
}

/**
 * The whole plies under a wall and what one thinner ply, or a resin film, must bring so that the wall is what the stack
 * wants. `wallMm` over n t0 wanted for n >= 1; null where nothing is missing.
 */
export function wallRescue(
  wallMm: number,
  ply: Pick<MeanPly, 'voidFreeMm' | 'fiberMm'>,
  densities: { readonly fiberGCm3: number; readonly resinGCm3: number },
  limits: Pick<WallLimits, 'toleranceMm' | 'filmMm'>,
): WallRescue | null {
  const gapMm = wallMm - limits.filmMm;
  const filledMm = limits.toleranceMm === null ? gapMm / (1 - usualTolerance) : gapMm + limits.toleranceMm;
  const plies = Math.floor(filledMm / ply.voidFreeMm + 1e-9);
  const missingMm = filledMm - plies * ply.voidFreeMm;
  if (plies < 1 || missingMm < 1e-6) return null;
  return {
    plies,
    missingMm,
    thinPlyGsm: 1000 * missingMm * (ply.fiberMm / ply.voidFreeMm) * densities.fiberGCm3,
    filmGsm: 1000 * missingMm * densities.resinGCm3,
    filmFiberFraction: (plies * ply.fiberMm) / gapMm,
  };
}
