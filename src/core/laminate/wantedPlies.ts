/** Which number of equal plies a given wall wants, and which wall a given stack wants. */
import { Problem } from '../problem';

/** 0 inside the span from the cured to the laid thickness, else the distance to its nearer end, mm. */
function distanceToSpan(wallMm: number, curedMm: number, laidMm: number): number {
  return Math.max(curedMm - wallMm, wallMm - laidMm, 0);
}

/**
 * The fewest plies (at least one) that fill the wall as laid, `overMm` short at most, and still cure thinner than it;
 * where no number does both, the one that comes nearest. Ply thicknesses are for one ply, cured not above laid.
 *
 * The fewest, because that is the number that the pairing by thickness as laid names too.
 */
export function wantedPlies(wallMm: number, curedPlyMm: number, laidPlyMm: number, overMm: number): number {
  if (!(wallMm > 0 && curedPlyMm > 0 && laidPlyMm > 0))
    throw new Problem('laminate.notPositive', 'Wall and ply thickness must be more than zero.');
  const filling = Math.max(1, Math.ceil((wallMm - overMm) / laidPlyMm));
  if (filling === 1) return 1;
  const missOf = (plies: number) => distanceToSpan(wallMm, plies * curedPlyMm, plies * laidPlyMm);
  const fewer = filling - 1;
  return missOf(filling) <= missOf(fewer) || filling * curedPlyMm <= wallMm ? filling : fewer;
}

/** The wall with the most room to either side: midway between the stack cured and the stack as laid, mm. */
export function wantedWallMm(curedMm: number, laidMm: number): number {
  return (curedMm + laidMm) / 2;
}
