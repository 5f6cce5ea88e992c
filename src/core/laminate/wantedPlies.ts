/** Which number of equal plies a given wall wants, and which wall a given stack wants. */
import { Problem } from '../problem';

/** 0 inside the span from the cured to the laid thickness, else the distance to its nearer end, mm. */
function distanceToSpan(wallMm: number, curedMm: number, laidMm: number): number {
  return Math.max(curedMm - wallMm, wallMm - laidMm, 0);
}

/**
 * The number of plies (at least one) whose span from cured to laid thickness holds the wall, or comes nearest to
 * it; between several, the one whose middle is nearest. `curedPlyMm` and `laidPlyMm` are for one ply.
 */
export function wantedPlies(wallMm: number, curedPlyMm: number, laidPlyMm: number): number {
  if (!(wallMm > 0 && curedPlyMm > 0 && laidPlyMm > 0))
    throw new Problem('laminate.notPositive', 'Wall and ply thickness must be more than zero.');
  const middlePlyMm = (curedPlyMm + laidPlyMm) / 2;
  const first = Math.max(1, Math.floor(wallMm / Math.max(curedPlyMm, laidPlyMm)));
  const last = Math.max(first, Math.ceil(wallMm / Math.min(curedPlyMm, laidPlyMm)));
  let best = first;
  for (let plies = first + 1; plies <= last; plies++) {
    const gain =
      distanceToSpan(wallMm, best * curedPlyMm, best * laidPlyMm) -
      distanceToSpan(wallMm, plies * curedPlyMm, plies * laidPlyMm);
    const nearerMiddle = Math.abs(wallMm - plies * middlePlyMm) < Math.abs(wallMm - best * middlePlyMm);
    if (gain > 0 || (gain === 0 && nearerMiddle)) best = plies;
  }
  return best;
}

/** The wall with the most room to either side: midway between the stack cured and the stack as laid, mm. */
export function wantedWallMm(curedMm: number, laidMm: number): number {
  return (curedMm + laidMm) / 2;
}
