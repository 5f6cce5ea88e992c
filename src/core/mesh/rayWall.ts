import { FacetStand } from './facetStand';
import { followRay, type RayEnd } from './followRay';
import { facetOf, inBatches, type SurfaceIndex } from './surfaceIndex';
import type { Vec3 } from './types';

/** Hits nearer than this share of the box diagonal are the start of the ray itself. */
const nearestShare = 1e-6;

/**
 * Ray wall of the facets in the listed slots: from the facet center along the inward normal to the first facet where the
 * ray comes out of the material, the facet itself and hits nearer than 1e-6 box diagonals left out. Where bodies overlap
 * the ray goes into the other body first; to stop there would tell a wall that is too thin. Worked in float64, stored as
 * float32 mm; NaN and -1 where nothing is met or the facet has no area. Both arrays are indexed by facet.
 */
export function measureRayWalls(
  index: SurfaceIndex,
  slots: Uint32Array,
  rayWallMm: Float32Array,
  rayFacet: Int32Array,
): void {
  const nearestMm = nearestShare * index.diagonalMm;
  const { kernel } = index;
  if (kernel !== null) {
    inBatches(kernel, slots, (batch) => {
      const { wallMm, metSlot } = kernel.rayWalls(batch, nearestMm);
      for (let at = 0; at < batch.length; at++) {
        const facet = facetOf(index, batch[at]!);
        const met = metSlot[at]!;
        rayWallMm[facet] = wallMm[at]!;
        rayFacet[facet] = met < 0 ? -1 : facetOf(index, met);
      }
    });
    return;
  }
  const stand = new FacetStand();
  const end: RayEnd = { slot: -1, distanceMm: Infinity };
  for (const slot of slots) {
    const facet = facetOf(index, slot);
    rayWallMm[facet] = NaN;
    rayFacet[facet] = -1;
    if (!stand.moveTo(index, slot)) continue;
    const { x, y, z, normalX, normalY, normalZ } = stand;
    followRay(index, x, y, z, -normalX, -normalY, -normalZ, slot, nearestMm, true, end);
    if (end.slot < 0) continue;
    rayWallMm[facet] = end.distanceMm;
    rayFacet[facet] = facetOf(index, end.slot);
  }
}

/**
 * First facet that a ray meets, of either facing; null when it meets none. `origin` in mm; `direction` need not be
 * a unit vector, `distanceMm` is a true distance.
 */
export function castRay(
  index: SurfaceIndex,
  origin: Vec3,
  direction: Vec3,
): { facet: number; distanceMm: number } | null {
  const length = Math.hypot(direction[0], direction[1], direction[2]);
  if (!(length > 0) || index.facetCount === 0) return null;
  if (index.kernel !== null) {
    const met = index.kernel.castRay(origin, [
      direction[0] / length,
      direction[1] / length,
      direction[2] / length,
    ]);
    return met && { facet: facetOf(index, met.slot), distanceMm: met.distanceMm };
  }
  const end: RayEnd = { slot: -1, distanceMm: Infinity };
  followRay(
    index,
    origin[0],
    origin[1],
    origin[2],
    direction[0] / length,
    direction[1] / length,
    direction[2] / length,
    -1,
    0,
    false,
    end,
  );
  if (end.slot < 0) return null;
  return { facet: facetOf(index, end.slot), distanceMm: end.distanceMm };
}
