/**
 * Area midway through the wall that belongs to each show facet. A convex edge takes tan(turn / 2) of its length times
 * half the wall from both its facets, a hollow one adds it (Steiner's formula for a parallel surface, first order;
 * exact for flat faces with mitered edges). Facets narrower than what an edge takes are left at zero and the rest of the
 * loss is spread over all, so that the sum stays right whatever the size of the triangles.
 */
import { halfEdgeLength } from '../mesh/edgeTurns';
import { facetKind, type IndexedMesh, type Measurement } from '../mesh/types';

/** A fold this sharp is a fin, not a wall's edge; tan of half of it would take more than there is. */
const sharpestTurnRad = (120 * Math.PI) / 180;

/** Areas in mm² per facet, 0 for facets that are not show face. `wallMm` per facet. */
export function midSurfaceAreas(
  mesh: IndexedMesh,
  measurement: Pick<Measurement, 'areaMm2' | 'neighbor' | 'turnRad' | 'kind'>,
  wallMm: Float32Array,
): Float32Array {
  const { areaMm2, neighbor, turnRad, kind } = measurement;
  const mid = new Float32Array(areaMm2.length);
  let wanted = 0;
  let kept = 0;
  for (let facet = 0; facet < areaMm2.length; facet++) {
    if (kind[facet] !== facetKind.show || !(wallMm[facet]! > 0)) continue;
    let area = areaMm2[facet]!;
    for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
      const other = neighbor[halfEdge]!;
      if (other < 0 || kind[other] !== facetKind.show) continue;
      const turn = turnRad[halfEdge]!;
      if (turn === 0 || Math.abs(turn) > sharpestTurnRad) continue;
      area -= (wallMm[facet]! / 2) * halfEdgeLength(mesh, halfEdge) * Math.tan(turn / 2);
    }
    wanted += area;
    if (area > 0) {
      mid[facet] = area;
      kept += area;
    }
  }
  if (!(wanted > 0 && kept > 0)) return mid;
  const spread = wanted / kept;
  for (let facet = 0; facet < mid.length; facet++) mid[facet] = mid[facet]! * spread;
  return mid;
}
