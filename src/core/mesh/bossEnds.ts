import { halfEdgeLength } from './edgeTurns';
import { pending, wall } from './kindWork';
import { labelRegions } from './regions';
import { longRayRatio, type FacetFindings } from './skinSides';
import type { IndexedMesh } from './types';

/** Takes the ends of bosses out of the walls: a thick region narrower (2 area / outline) than it stands out from the usual wall. */
export function dropBossEnds(
  mesh: IndexedMesh,
  findings: FacetFindings,
  sides: Int8Array,
  kind: Uint8Array,
  usualMm: number,
): void {
  const { rayWallMm, rayFacet, neighbor, geometry } = findings;
  const { areaMm2 } = geometry;
  const thick = new Uint8Array(kind.length);
  for (let facet = 0; facet < kind.length; facet++) {
    if (kind[facet] === wall && rayWallMm[facet]! > longRayRatio * usualMm) thick[facet] = sides[facet]! + 2;
  }
  const { label, count } = labelRegions(thick, neighbor);
  if (count === 0) return;
  const area = new Float64Array(count);
  const outlineMm = new Float64Array(count);
  const wallTimesArea = new Float64Array(count);
  for (let facet = 0; facet < kind.length; facet++) {
    const region = label[facet]!;
    if (region < 0) continue;
    area[region] = area[region]! + areaMm2[facet]!;
    wallTimesArea[region] = wallTimesArea[region]! + areaMm2[facet]! * rayWallMm[facet]!;
    for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
      const other = neighbor[halfEdge]!;
      if (other < 0 || label[other] !== region) {
        outlineMm[region] = outlineMm[region]! + halfEdgeLength(mesh, halfEdge);
      }
    }
  }
  const isBossEnd = (facet: number) => {
    const region = label[facet]!;
    if (region < 0 || outlineMm[region] === 0) return false;
    const widthMm = (2 * area[region]!) / outlineMm[region]!;
    return widthMm < wallTimesArea[region]! / area[region]! - usualMm;
  };
  for (let facet = 0; facet < kind.length; facet++) {
    if (label[facet]! >= 0 && (isBossEnd(facet) || isBossEnd(rayFacet[facet]!))) kind[facet] = pending;
  }
}
