import { buildAdjacency } from './adjacency';
import type { IndexedMesh } from './types';

/** A facet is flat when twice its area is below this share of its longest edge squared (float64 rounding). */
const flatShare = 1e-13;

/** True when the three corners lie on one line. */
export function isFlat(mesh: IndexedMesh, facet: number): boolean {
  const { positions, facets } = mesh;
  const a = 3 * facets[3 * facet]!;
  const b = 3 * facets[3 * facet + 1]!;
  const c = 3 * facets[3 * facet + 2]!;
  const ux = positions[b]! - positions[a]!;
  const uy = positions[b + 1]! - positions[a + 1]!;
  const uz = positions[b + 2]! - positions[a + 2]!;
  const vx = positions[c]! - positions[a]!;
  const vy = positions[c + 1]! - positions[a + 1]!;
  const vz = positions[c + 2]! - positions[a + 2]!;
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const longest = Math.max(
    ux * ux + uy * uy + uz * uz,
    vx * vx + vy * vy + vz * vz,
    (vx - ux) ** 2 + (vy - uy) ** 2 + (vz - uz) ** 2,
  );
  return nx * nx + ny * ny + nz * nz <= (flatShare * longest) ** 2;
}

/**
 * Leaves out flat facets, except those whose edges all have exactly two facets: they close the surface (exporters
 * put them between a long edge and its split neighbor) and leaving them out would tear it open. A flat facet that
 * only leans on one that goes, goes too.
 */
export function leaveOutFlat(mesh: IndexedMesh): { mesh: IndexedMesh; dropped: number } {
  const facetCount = mesh.facets.length / 3;
  const flat = new Set<number>();
  for (let facet = 0; facet < facetCount; facet++) if (isFlat(mesh, facet)) flat.add(facet);
  if (flat.size === 0) return { mesh, dropped: 0 };
  const { neighbor } = buildAdjacency(mesh);
  const neighborsOf = (facet: number) => neighbor.subarray(3 * facet, 3 * facet + 3);
  const waiting = [...flat].filter((facet) => neighborsOf(facet).some((other) => other < 0));
  const dropped = new Set(waiting);
  for (let facet = waiting.pop(); facet !== undefined; facet = waiting.pop()) {
    for (const other of neighborsOf(facet)) {
      if (!flat.has(other) || dropped.has(other)) continue;
      dropped.add(other);
      waiting.push(other);
    }
  }
  if (dropped.size === 0) return { mesh, dropped: 0 };
  const facets = mesh.facets.filter((_, corner) => !dropped.has((corner / 3) | 0));
  return { mesh: { positions: mesh.positions, facets }, dropped: dropped.size };
}
