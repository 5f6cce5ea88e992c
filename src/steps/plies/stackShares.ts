/** How much of the wall is loose, pressed, or holds the mold open. */
import type { AreaShares } from '../../core/numeric/areaShares';
import type { WallInUse } from '../wallInUse';
import type { KnownStack } from './stack';

/**
 * Half a step of a bench caliper. A wall drawn exactly at the stack's thickness scatters by less than that from
 * facet to facet, and nobody could measure that it is loose.
 */
export const halfCaliperStepMm = 0.005;

/** Under the cured stack, between cured and laid, over the stack as laid; no tolerance but half a caliper step. */
export function stackShares(wall: WallInUse, { total: { curedMm, laidMm } }: KnownStack): AreaShares {
  return wall.shares(
    Math.min(curedMm, laidMm) - halfCaliperStepMm,
    Math.max(curedMm, laidMm) + halfCaliperStepMm,
  );
}
