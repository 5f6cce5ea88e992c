import { pending, wall } from './kindWork';
import { side, type FacetFindings } from './skinSides';

/** A facet turned by no more than this from a wall facet beside it goes on with that wall. */
const goesOnCosine = Math.cos((50 * Math.PI) / 180);
/** A wall that turns from a facet by less than this is the same wall, not the next one round a corner. */
const nextWallCosine = Math.cos((35 * Math.PI) / 180);
/** A fold hollower than this ends a wall's outside corner: what stands beyond rises from the wall. */
const hollowestTurnRad = (-10 * Math.PI) / 180;
/** Walls are a little uneven, and the centers of facets stand a little beyond the corner inside. */
const slabSlack = 0.1;

/**
 * Marks the outside corners of both skins as wall; the core skin has them where the part steps. Beside such a corner the
 * inward ray of a facet runs along the next wall and ends far away, as it does over a boss or a rib. But a boss stands off
 * the wall, while a wall's own corner is the wall: there the facet goes on with a wall of its skin, and it lies within the
 * thickness of the next one around the fold, between that wall's outer face and its other one. A land of the core skin
 * turns from every wall beside it, so it goes on with none.
 *
 * Returns, per facet, the wall facet that it goes on with; -1 for all that are no such corner. What its own ray measures
 * is not the wall.
 */
export function markWallCorners(findings: FacetFindings, sides: Int8Array, kind: Uint8Array): Int32Array {
  const { neighbor, turnRad } = findings;
  const goesOnWith = wallsGoingOn(findings, sides, kind);
  const cornerOf = new Int32Array(kind.length).fill(-1);
  // Corner facets whose neighbors may lie within the thickness of the same next wall, each followed by that wall's facet.
  const waiting: number[] = [];
  const takeCorner = (facet: number, nextWall: number, foldRad: number) => {
    if (goesOnWith[facet]! < 0 || cornerOf[facet]! >= 0 || foldRad < hollowestTurnRad) return;
    if (!isWithinNextWall(findings, facet, nextWall)) return;
    cornerOf[facet] = goesOnWith[facet]!;
    waiting.push(facet, nextWall);
  };
  for (let facet = 0; facet < kind.length; facet++) {
    if (goesOnWith[facet]! < 0) continue;
    for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
      const other = neighbor[halfEdge]!;
      if (other < 0 || sides[other] !== sides[facet]) continue;
      const nextWall = kind[other] === wall ? other : goesOnWith[other]!;
      if (nextWall >= 0) takeCorner(facet, nextWall, turnRad[halfEdge]!);
    }
  }
  for (let at = 0; at < waiting.length; at += 2) {
    for (let halfEdge = 3 * waiting[at]!; halfEdge < 3 * waiting[at]! + 3; halfEdge++) {
      if (neighbor[halfEdge]! >= 0) takeCorner(neighbor[halfEdge]!, waiting[at + 1]!, turnRad[halfEdge]!);
    }
  }
  for (let facet = 0; facet < kind.length; facet++) if (cornerOf[facet]! >= 0) kind[facet] = wall;
  return cornerOf;
}

/** Per facet of a skin that no rule has settled: the nearest wall facet that it goes on with, -1 for none. */
function wallsGoingOn(findings: FacetFindings, sides: Int8Array, kind: Uint8Array): Int32Array {
  const { neighbor, turnRad } = findings;
  const goesOnWith = new Int32Array(kind.length).fill(-1);
  const waiting: number[] = [];
  const spread = (from: number, wallFacet: number) => {
    for (let halfEdge = 3 * from; halfEdge < 3 * from + 3; halfEdge++) {
      const other = neighbor[halfEdge]!;
      if (other < 0 || kind[other] !== pending || goesOnWith[other]! >= 0) continue;
      if (sides[other] !== sides[from] || turnRad[halfEdge]! < hollowestTurnRad) continue;
      if (cosineBetween(findings, other, wallFacet) < goesOnCosine) continue;
      goesOnWith[other] = wallFacet;
      waiting.push(other);
    }
  };
  for (let facet = 0; facet < kind.length; facet++) {
    if (kind[facet] === wall && sides[facet] !== side.none) spread(facet, facet);
  }
  // First come, first served: so the wall is the nearest one, counted in facets.
  for (let at = 0; at < waiting.length; at++) spread(waiting[at]!, goesOnWith[waiting[at]!]!);
  return goesOnWith;
}

/**
 * Whether the facet's center lies in the thickness of a wall around the fold. Where two walls meet at an acute edge, the
 * corner inside lies deeper: at the foot of both thicknesses.
 */
function isWithinNextWall(findings: FacetFindings, facet: number, nextWall: number): boolean {
  const { normal, centerMm } = findings.geometry;
  const cosine = cosineBetween(findings, facet, nextWall);
  if (cosine > nextWallCosine) return false;
  let depthMm = 0;
  for (let axis = 0; axis < 3; axis++) {
    const awayMm = centerMm[3 * nextWall + axis]! - centerMm[3 * facet + axis]!;
    depthMm += normal[3 * nextWall + axis]! * awayMm;
  }
  const wallMm = findings.rayWallMm[nextWall]!;
  return depthMm > -slabSlack * wallMm && depthMm <= (1 + slabSlack + Math.max(0, -cosine)) * wallMm;
}

function cosineBetween({ geometry: { normal } }: FacetFindings, one: number, other: number): number {
  const n = 3 * one;
  const m = 3 * other;
  return normal[n]! * normal[m]! + normal[n + 1]! * normal[m + 1]! + normal[n + 2]! * normal[m + 2]!;
}
