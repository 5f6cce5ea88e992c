import { dropBossEnds } from './bossEnds';
import { pending, wall } from './kindWork';
import { markOpenings } from './openings';
import { selectQuantiles } from './selectQuantiles';
import { markRims } from './rims';
import { endsFaceToFace, longRayRatio, side, skinSides, type FacetFindings } from './skinSides';
import { facetKind, type IndexedMesh, type Measurement } from './types';
import { markWallCorners } from './wallCorners';

/** As in `Measurement`. */
export type FacetKinds = Pick<Measurement, 'kind' | 'cornerOf'>;

/** A ray this little longer than the ball surely measures the wall. */
const clearRayRatio = 1.3;
/** A facet beside a wall facet, nearly coplanar and of nearly the same wall, is wall as well. */
const sameWallRatio = 1.15;
const sameWallTurnRad = (20 * Math.PI) / 180;

/**
 * What each facet is to the mold (`facetKind` values), so that the verdict on the wall looks at walls only.
 *
 * 1. Trapped: neither half reaches it. Unmeasured: no wall was met behind it, or it has no area.
 * 2. Wall: the inward ray ends on the other skin, face to face, and is not longer than 1.6 times both the ball there
 *    and the usual wall (area-weighted median of the walls that ray and ball agree on). The ball alone does not
 *    condemn: near a convex edge it shrinks. A facet that continues such a wall is wall too. So a wall that is
 *    wrong, in steps or little by little, stays a wall.
 * 3. Not wall after all: a thick region that is narrower than it stands out from the usual wall (the end of a short
 *    boss), what lies opposite to it, and the boss around a bore.
 * 4. Rim: what is left over and joins the show to the core skin (open rim, window edge), and what continues a rim
 *    toward one of them (stepped or rounded lands). Also the inside of a bore through a boss.
 * 5. Wall all the same: what of a skin goes on with a wall up to its own outside corner, see `markWallCorners`.
 * 6. Detail: the rest, such as sides and ends of ribs and bosses.
 *
 * Walls become show or core by the side they belong to, see `skinSides`.
 */
export function facetKinds(mesh: IndexedMesh, findings: FacetFindings): FacetKinds {
  const { geometry, reach, rayFacet } = findings;
  const { areaMm2 } = geometry;
  const facetCount = areaMm2.length;
  const sides = skinSides(findings);
  const kind = new Uint8Array(facetCount).fill(pending);
  for (let facet = 0; facet < facetCount; facet++) {
    if (!(areaMm2[facet]! > 0)) kind[facet] = facetKind.unmeasured;
    else if (reach[facet] === 0) kind[facet] = facetKind.trapped;
    else if (rayFacet[facet]! < 0) kind[facet] = facetKind.unmeasured;
  }
  const usualMm = usualWall(findings, sides, kind);
  markWalls(findings, sides, kind, usualMm);
  dropBossEnds(mesh, findings, sides, kind, usualMm);
  markOpenings(findings, sides, kind, usualMm);
  markRims(mesh, findings, sides, kind);
  const cornerOf = markWallCorners(findings, sides, kind);
  for (let facet = 0; facet < facetCount; facet++) {
    if (kind[facet] === pending) kind[facet] = facetKind.detail;
    else if (kind[facet] === wall) kind[facet] = sides[facet] === side.show ? facetKind.show : facetKind.core;
  }
  return { kind, cornerOf };
}

function facesOtherSkin(findings: FacetFindings, sides: Int8Array, facet: number): boolean {
  const hit = findings.rayFacet[facet]!;
  return (
    hit >= 0 &&
    sides[facet] !== side.none &&
    sides[hit] === -(sides[facet] ?? 0) &&
    endsFaceToFace(findings, facet)
  );
}

/** Area-weighted median over the show facets that ray and ball agree on; infinite when there are none. */
function usualWall(findings: FacetFindings, sides: Int8Array, kind: Uint8Array): number {
  const { rayWallMm, ballWallMm, geometry } = findings;
  const take = new Uint8Array(kind.length);
  for (let facet = 0; facet < kind.length; facet++) {
    if (
      kind[facet] === pending &&
      sides[facet] === side.show &&
      rayWallMm[facet]! <= clearRayRatio * ballWallMm[facet]! &&
      facesOtherSkin(findings, sides, facet)
    ) {
      take[facet] = 1;
    }
  }
  return selectQuantiles(rayWallMm, geometry.areaMm2, [0.5], take).at[0] ?? Infinity;
}

/** Rule 2. */
function markWalls(findings: FacetFindings, sides: Int8Array, kind: Uint8Array, usualMm: number): void {
  const { rayWallMm, ballWallMm, neighbor, turnRad } = findings;
  const facetCount = kind.length;
  const longButFacing = new Uint8Array(facetCount);
  for (let facet = 0; facet < facetCount; facet++) {
    if (kind[facet] !== pending || !facesOtherSkin(findings, sides, facet)) continue;
    const ray = rayWallMm[facet]!;
    if (ray > longRayRatio * ballWallMm[facet]! && ray > longRayRatio * usualMm) longButFacing[facet] = 1;
    else kind[facet] = wall;
  }
  const waiting: number[] = [];
  for (let facet = 0; facet < facetCount; facet++) {
    if (longButFacing[facet] === 1 && takesWallFromNeighbor(facet)) waiting.push(facet);
  }
  while (waiting.length > 0) {
    const facet = waiting.pop()!;
    if (kind[facet] === wall) continue;
    kind[facet] = wall;
    for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
      const other = neighbor[halfEdge]!;
      if (other >= 0 && longButFacing[other] === 1 && kind[other] !== wall && takesWallFromNeighbor(other)) {
        waiting.push(other);
      }
    }
  }

  function takesWallFromNeighbor(facet: number): boolean {
    const ray = rayWallMm[facet]!;
    for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
      const other = neighbor[halfEdge]!;
      if (other < 0 || kind[other] !== wall || sides[other] !== sides[facet]) continue;
      if (Math.abs(turnRad[halfEdge]!) > sameWallTurnRad) continue;
      const otherRay = rayWallMm[other]!;
      if (ray < sameWallRatio * otherRay && otherRay < sameWallRatio * ray) return true;
    }
    return false;
  }
}
