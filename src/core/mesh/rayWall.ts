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
  const { kernel } = index;
  const nearestMm = nearestShare * index.diagonalMm;
  inBatches(kernel, slots, (batch) => {
    const { wallMm, metSlot } = kernel.rayWalls(batch, nearestMm);
    for (let at = 0; at < batch.length; at++) {
      const facet = facetOf(index, batch[at]!);
      const met = metSlot[at]!;
      rayWallMm[facet] = wallMm[at]!;
      rayFacet[facet] = met < 0 ? -1 : facetOf(index, met);
    }
  });
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
  const met = index.kernel.castRay(origin, [
    direction[0] / length,
    direction[1] / length,
    direction[2] / length,
  ]);
  return met && { facet: facetOf(index, met.slot), distanceMm: met.distanceMm };
}
