import { facetOf, inBatches, type SurfaceIndex } from './surfaceIndex';

/** Facets that rise above the tangent plane by less than this share of the box diagonal don't limit a ball. */
const tangentShare = 1e-9;

/**
 * Ball wall of the facets in the listed slots: diameter of the largest ball inside the material that touches the
 * surface at the facet center, its center along the inward normal; exact against whole facets to 1e-9 of itself, and
 * to a few percent in round solids where it touches hundreds of facets at once. It starts from the ray wall, which it can't exceed. Not counted as limits: facets turned from this one by no more than
 * 30 degrees (the same skin, curved or noisy) and facets within 1e-9 box diagonals of the tangent plane. Near a rim or
 * a sharp edge the ball measures the distance to that edge. Stored as float32 mm, indexed by facet; NaN where the
 * facet has no area or no ball up to two box diagonals meets anything.
 */
export function measureBallWalls(
  index: SurfaceIndex,
  slots: Uint32Array,
  rayWallMm: Float32Array,
  ballWallMm: Float32Array,
): void {
  const { kernel } = index;
  const tangentMm = tangentShare * index.diagonalMm;
  inBatches(kernel, slots, (batch) => {
    const rays = new Float32Array(batch.length);
    for (let at = 0; at < batch.length; at++) rays[at] = rayWallMm[facetOf(index, batch[at]!)]!;
    const ballMm = kernel.ballWalls(batch, tangentMm, rays);
    for (let at = 0; at < batch.length; at++) ballWallMm[facetOf(index, batch[at]!)] = ballMm[at]!;
  });
}
