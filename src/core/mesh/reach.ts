import { FacetStand } from './facetStand';
import { followRay, type RayEnd } from './followRay';
import { facetOf, inBatches, type SurfaceIndex } from './surfaceIndex';
import { reachBit, type Vec3 } from './types';

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
  const [pullX, pullY, pullZ] = pull;
  const lift = liftShare * index.diagonalMm;
  const { kernel } = index;
  if (kernel !== null) {
    inBatches(kernel, slots, (batch) => {
      const flags = kernel.reach(batch, pull, lift, uprightSine);
      for (let at = 0; at < batch.length; at++) reach[facetOf(index, batch[at]!)] = flags[at]!;
    });
    return;
  }
  const stand = new FacetStand();
  const end: RayEnd = { slot: -1, distanceMm: Infinity };
  for (const slot of slots) {
    const facet = facetOf(index, slot);
    reach[facet] = 0;
    if (!stand.moveTo(index, slot)) continue;
    const { normalX, normalY, normalZ } = stand;
    const x = stand.x + lift * normalX;
    const y = stand.y + lift * normalY;
    const z = stand.z + lift * normalZ;
    const sine = normalX * pullX + normalY * pullY + normalZ * pullZ;
    let reached = 0;
    if (sine > -uprightSine) {
      followRay(index, x, y, z, pullX, pullY, pullZ, -1, 0, false, end);
      if (end.slot < 0) reached |= reachBit.fromShowSide;
    }
    if (sine < uprightSine) {
      followRay(index, x, y, z, -pullX, -pullY, -pullZ, -1, 0, false, end);
      if (end.slot < 0) reached |= reachBit.fromCoreSide;
    }
    reach[facet] = reached;
  }
}
