import { facetOf, inBatches, type SurfaceIndex } from './surfaceIndex';
import type { Vec3 } from './types';

/** A facet this little turned away from the pull still counts as standing along it. */
const uprightSine = Math.sin((0.1 * Math.PI) / 180);
/** Rays start this share of the box diagonal off the surface. */
const liftShare = 1e-5;

/**
 * Reach of the facets in the listed slots along a straight pull (unit vector), as `reachBit` flags indexed by facet. The half on
 * the show side reaches a facet that doesn't look away from the pull by more than 0.1 degree and whose center, lifted
 * 1e-5 box diagonals off the surface, sees nothing along the pull; the half on the core side likewise against the
 * pull. 0 where neither does, or the facet has no area.
 */
export function measureReach(index: SurfaceIndex, pull: Vec3, slots: Uint32Array, reach: Uint8Array): void {
  const { kernel } = index;
  const liftMm = liftShare * index.diagonalMm;
  inBatches(kernel, slots, (batch) => {
    const flags = kernel.reach(batch, pull, liftMm, uprightSine);
    for (let at = 0; at < batch.length; at++) reach[facetOf(index, batch[at]!)] = flags[at]!;
  });
}
