import type { IndexedMesh } from './types';

/** Length of a half-edge (edge k of facet f is 3 f + k and runs from corner k to the next), in the mesh's unit. */
export function halfEdgeLength(mesh: IndexedMesh, halfEdge: number): number {
  const { positions, facets } = mesh;
  const from = facets[halfEdge]! * 3;
  const to = facets[halfEdge % 3 === 2 ? halfEdge - 2 : halfEdge + 1]! * 3;
  const x = positions[to]! - positions[from]!;
  const y = positions[to + 1]! - positions[from + 1]!;
  const z = positions[to + 2]! - positions[from + 2]!;
  return Math.sqrt(x * x + y * y + z * z);
}

/**
 * Turn across every half-edge in radians: positive where the surface folds away from the outside (convex), negative
 * where it folds toward it (concave), NaN where there is no neighbor.
 */
export function edgeTurns(mesh: IndexedMesh, neighbor: Int32Array, normal: Float32Array): Float32Array {
  const { positions, facets } = mesh;
  const turnRad = new Float32Array(facets.length);
  for (let halfEdge = 0; halfEdge < facets.length; halfEdge++) {
    const other = neighbor[halfEdge]!;
    if (other < 0) {
      turnRad[halfEdge] = NaN;
      continue;
    }
    const n = ((halfEdge / 3) | 0) * 3;
    const m = other * 3;
    // Both sides of an edge turn alike: it is worked out from the lower facet and written to both.
    if (m < n) continue;
    const nx = normal[n]!;
    const ny = normal[n + 1]!;
    const nz = normal[n + 2]!;
    const mx = normal[m]!;
    const my = normal[m + 1]!;
    const mz = normal[m + 2]!;
    const cosine = nx * mx + ny * my + nz * mz;
    // Flat ground is most of a coarse mesh: leave before the square roots.
    if (cosine > 0.9999999) continue;
    const cx = ny * mz - nz * my;
    const cy = nz * mx - nx * mz;
    const cz = nx * my - ny * mx;
    const from = facets[halfEdge]! * 3;
    const to = facets[halfEdge % 3 === 2 ? halfEdge - 2 : halfEdge + 1]! * 3;
    const along =
      cx * (positions[to]! - positions[from]!) +
      cy * (positions[to + 1]! - positions[from + 1]!) +
      cz * (positions[to + 2]! - positions[from + 2]!);
    const turn = Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), cosine);
    const own = along < 0 ? -turn : turn;
    turnRad[halfEdge] = own;
    for (let twin = m; twin < m + 3; twin++) {
      if (neighbor[twin] !== n / 3) continue;
      const start = 3 * facets[twin]!;
      if (start === to) turnRad[twin] = own;
      // Wound the other way round, it sees the same fold from its back.
      else if (start === from) turnRad[twin] = -own;
    }
  }
  return turnRad;
}
