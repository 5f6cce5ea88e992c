import type { Vec3 } from '../core/mesh/types';
import type { DisplayChunk } from '../pipeline/told';

/** The chunk that holds a facet, or undefined. Chunks are in facet order. */
function chunkOf(display: readonly DisplayChunk[], facet: number): DisplayChunk | undefined {
  return display.findLast((chunk) => chunk.firstFacet <= facet);
}

/** Centers of some facets, 3 numbers each, mm; facets that are not drawn are left out. */
export function facetCenters(
  display: readonly DisplayChunk[],
  facets: Uint32Array,
  most: number,
): Float32Array {
  const step = Math.max(1, Math.ceil(facets.length / most));
  const centers: number[] = [];
  for (let i = 0; i < facets.length; i += step) {
    const facet = facets[i]!;
    const chunk = chunkOf(display, facet);
    const at = chunk === undefined ? 0 : 9 * (facet - chunk.firstFacet);
    if (chunk === undefined || at >= chunk.corners.length) continue;
    const c = chunk.corners;
    for (let axis = 0; axis < 3; axis++) {
      centers.push((c[at + axis]! + c[at + 3 + axis]! + c[at + 6 + axis]!) / 3);
    }
  }
  return new Float32Array(centers);
}

/** Outward normal of a drawn facet, not scaled to unit length; null when it is not drawn. */
export function facetNormal(display: readonly DisplayChunk[], facet: number): Vec3 | null {
  const chunk = chunkOf(display, facet);
  if (chunk === undefined || 9 * (facet - chunk.firstFacet) >= chunk.corners.length) return null;
  const [ax, ay, az, bx, by, bz, cx, cy, cz] = chunk.corners.subarray(
    9 * (facet - chunk.firstFacet),
    9 * (facet - chunk.firstFacet) + 9,
  ) as unknown as [number, number, number, number, number, number, number, number, number];
  const [ux, uy, uz, vx, vy, vz] = [bx - ax, by - ay, bz - az, cx - ax, cy - ay, cz - az];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}
