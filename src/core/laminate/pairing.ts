/**
 * Printed walls come in whole lines and stacks in whole plies; this is the table of how well they can meet.
 * Plain arithmetic of the maker's own two numbers; pairing by the thickness as laid is common practice, no source.
 */
import { Problem } from '../problem';

export interface WallStackPair {
  readonly lines: number;
  readonly plies: number;
  /** Printed wall: lines × line width. */
  readonly wallMm: number;
  /** Stack as laid: plies × thickness as laid. */
  readonly stackMm: number;
  /** Wall less stack: positive is loose, negative is tight. */
  readonly mismatchMm: number;
  /** The best number of plies for this number of lines. */
  readonly nearest: boolean;
  /** Mismatch too small for a caliper to see. */
  readonly exact: boolean;
}

/** A mismatch below this is called exact: a tenth of what a bench caliper resolves (0.01 mm). */
export const exactPairMm = 0.001;

/**
 * For each number of lines from 1 to `maxLines`: the stacks just under and just over the wall, the nearer one
 * marked. At a tie the fuller stack is marked, because a stack as laid still gives under the clamp and a gap
 * does not fill.
 */
export function pairWallsWithStacks(
  lineWidthMm: number,
  laidPlyMm: number,
  maxLines: number,
): readonly WallStackPair[] {
  if (!(lineWidthMm > 0 && laidPlyMm > 0))
    throw new Problem('laminate.notPositive', 'Line width and ply thickness must be more than zero.');
  const rows: WallStackPair[] = [];
  for (let lines = 1; lines <= maxLines; lines++) {
    const wallMm = lines * lineWidthMm;
    const best = nearestPlies(wallMm, laidPlyMm);
    const near = Math.abs(wallMm - best * laidPlyMm);
    const other = wallMm > best * laidPlyMm ? best + 1 : best - 1;
    const counts = near < exactPairMm || other < 1 ? [best] : [best, other].sort((a, b) => a - b);
    for (const plies of counts) {
      const mismatchMm = wallMm - plies * laidPlyMm;
      rows.push({
        lines,
        plies,
        wallMm,
        stackMm: plies * laidPlyMm,
        mismatchMm,
        nearest: plies === best,
        exact: Math.abs(mismatchMm) < exactPairMm,
      });
    }
  }
  return rows;
}

/** The number of plies (at least one) whose stack as laid comes nearest to the wall; the fuller one at a tie. */
export function nearestPlies(wallMm: number, laidPlyMm: number): number {
  const ratio = wallMm / laidPlyMm;
  const tieSlack = 1e-9 * (1 + ratio);
  return Math.max(1, Math.floor(ratio + 0.5 + tieSlack));
}
