import type { Adjacency } from './adjacency';
import type { IndexedMesh } from './types';

/**
 * Facets that use the same three vertices as an earlier facet, wound either way; sorted. Twins share all three
 * edges, so it is enough to compare the facets at each edge by the corner across from it.
 */
export function findDuplicateFacets(mesh: IndexedMesh, adjacency: Adjacency): Uint32Array {
  const { neighbor, crowdedHalfEdges, crowdedStarts } = adjacency;
  const found = new Set<number>();
  const cornerAcross = (h: number) => mesh.facets[h - (h % 3) + ((h + 2) % 3)]!;
  for (let facet = 0; 3 * facet < neighbor.length; facet++) {
    const other = neighbor[3 * facet]!;
    if (other < 0 || other >= facet) continue;
    const across = cornerAcross(3 * facet);
    const at = 3 * other;
    if (mesh.facets[at] === across || mesh.facets[at + 1] === across || mesh.facets[at + 2] === across) {
      found.add(facet);
    }
  }
  for (let group = 0; group + 1 < crowdedStarts.length; group++) {
    const members = crowdedHalfEdges.slice(crowdedStarts[group], crowdedStarts[group + 1]).sort();
    const seen = new Set<number>();
    for (const h of members) {
      const across = cornerAcross(h);
      if (seen.has(across)) found.add((h / 3) | 0);
      else seen.add(across);
    }
  }
  return Uint32Array.from(found).sort();
}
