import { halfEdgeLength } from './edgeTurns';
import { distribute, quantile } from './quantiles';
import { labelRegions } from './regions';
import { endsFaceToFace, longRayRatio, side, skinSides, type FacetFindings } from './skinSides';
import { facetKind, type IndexedMesh } from './types';

/** A ray this little longer than the ball surely measures the wall. */
const clearRayRatio = 1.3;
/** A facet beside a wall facet, nearly coplanar and of nearly the same wall, is wall as well. */
const sameWallRatio = 1.15;
const sameWallTurnRad = (20 * Math.PI) / 180;
/** Lands end at folds sharper than this. */
const landTurnRad = (50 * Math.PI) / 180;
/** A through-opening whose wall differs by more than this from the usual one is the land of a window or bore. */
const openingWallShare = 0.3;

const pending = 255;
/** Working value beside the kinds: part of a wall, show or core by its side. */
const wall = 254;

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
 * 5. Detail: the rest, such as sides and ends of ribs and bosses.
 *
 * Walls become show or core by the side they belong to, see `skinSides`.
 */
export function facetKinds(mesh: IndexedMesh, findings: FacetFindings): Uint8Array {
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
  for (let facet = 0; facet < facetCount; facet++) {
    if (kind[facet] === pending) kind[facet] = facetKind.detail;
    else if (kind[facet] === wall) kind[facet] = sides[facet] === side.show ? facetKind.show : facetKind.core;
  }
  return kind;
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
  return quantile(distribute(rayWallMm, geometry.areaMm2, take), 0.5) ?? Infinity;
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

/** Rule 3, ends of bosses: a thick region narrower (2 area / outline) than it stands out from the usual wall. */
function dropBossEnds(
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

/**
 * Rule 3 and 4, bores: upright regions that both halves reach and that look inward (a hole) are lands when the wall
 * behind them is not the usual one; then the outside of the boss is no wall either.
 */
function markOpenings(findings: FacetFindings, sides: Int8Array, kind: Uint8Array, usualMm: number): void {
  const { rayWallMm, rayFacet, neighbor, turnRad, reach, geometry } = findings;
  const { areaMm2, centerMm, normal } = geometry;
  const throughWall = new Uint8Array(kind.length);
  for (let facet = 0; facet < kind.length; facet++) {
    if (kind[facet] === wall && reach[facet] === 3) throughWall[facet] = 1;
  }
  const { label, count } = labelRegions(throughWall, neighbor, turnRad, landTurnRad);
  if (count === 0) return;
  // Sums per region: area, center times area (3), n . c times area, n times area (3), wall times area.
  const fields = 9;
  const sums = new Float64Array(count * fields);
  for (let facet = 0; facet < kind.length; facet++) {
    const region = label[facet]!;
    if (region < 0) continue;
    const at = region * fields;
    const area = areaMm2[facet]!;
    sums[at] = sums[at]! + area;
    for (let axis = 0; axis < 3; axis++) {
      const n = normal[3 * facet + axis]! * area;
      const c = centerMm[3 * facet + axis]!;
      sums[at + 1 + axis] = sums[at + 1 + axis]! + c * area;
      sums[at + 4] = sums[at + 4]! + n * c;
      sums[at + 5 + axis] = sums[at + 5 + axis]! + n;
    }
    sums[at + 8] = sums[at + 8]! + rayWallMm[facet]! * area;
  }
  const isLand = new Uint8Array(count);
  for (let region = 0; region < count; region++) {
    const at = region * fields;
    const area = sums[at]!;
    let outward = sums[at + 4]!;
    for (let axis = 0; axis < 3; axis++) outward -= (sums[at + 5 + axis]! * sums[at + 1 + axis]!) / area;
    const meanWallMm = sums[at + 8]! / area;
    if (outward < 0 && Math.abs(meanWallMm - usualMm) > openingWallShare * usualMm) isLand[region] = 1;
  }
  for (let facet = 0; facet < kind.length; facet++) {
    if (label[facet]! >= 0 && isLand[label[facet]!] === 1) kind[facet] = facetKind.rim;
  }
  for (let facet = 0; facet < kind.length; facet++) {
    if (kind[facet] === wall && sides[facet] === side.core && kind[rayFacet[facet]!] === facetKind.rim) {
      kind[facet] = pending;
    }
  }
}

/** Rule 4, lands between the skins: smooth regions of what is left over, by what they touch. */
function markRims(mesh: IndexedMesh, findings: FacetFindings, sides: Int8Array, kind: Uint8Array): void {
  const { neighbor, turnRad, rayFacet, geometry } = findings;
  const { areaMm2 } = geometry;
  const left = new Uint8Array(kind.length);
  for (let facet = 0; facet < kind.length; facet++) if (kind[facet] === pending) left[facet] = 1;
  const { label, count } = labelRegions(left, neighbor, turnRad, landTurnRad);
  const area = new Float64Array(count);
  const ownSkinArea = new Float64Array(count);
  const outlineMm = new Float64Array(count);
  const showMm = new Float64Array(count);
  const coreMm = new Float64Array(count);
  const touching: { region: number; other: number; lengthMm: number }[] = [];
  for (let facet = 0; facet < kind.length; facet++) {
    const region = label[facet]!;
    if (region < 0) continue;
    area[region] = area[region]! + areaMm2[facet]!;
    if (sides[rayFacet[facet]!] === sides[facet]) {
      ownSkinArea[region] = ownSkinArea[region]! + areaMm2[facet]!;
    }
    for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
      const other = neighbor[halfEdge]!;
      if (other >= 0 && label[other] === region) continue;
      const lengthMm = halfEdgeLength(mesh, halfEdge);
      outlineMm[region] = outlineMm[region]! + lengthMm;
      if (other < 0) continue;
      if (kind[other] === wall || kind[other] === facetKind.trapped) {
        if (sides[other] === side.show) showMm[region] = showMm[region]! + lengthMm;
        else coreMm[region] = coreMm[region]! + lengthMm;
      } else if (label[other]! >= 0 && label[other]! !== region) {
        touching.push({ region, other: label[other]!, lengthMm });
      }
    }
  }
  const isRim = new Uint8Array(count);
  const joins = (oneMm: number, otherMm: number, region: number) =>
    Math.min(oneMm, otherMm) > leastTouchShare * outlineMm[region]!;
  for (let region = 0; region < count; region++) {
    if (joins(showMm[region]!, coreMm[region]!, region)) isRim[region] = 1;
  }
  // Stepped and rounded lands: each round carries the rim one smooth region further.
  for (let round = 0; round < 3; round++) {
    const rimMm = new Float64Array(count);
    for (const { region, other, lengthMm } of touching) {
      if (isRim[other] === 1) rimMm[region] = rimMm[region]! + lengthMm;
    }
    for (let region = 0; region < count; region++) {
      if (isRim[region] === 1 || ownSkinArea[region]! > area[region]! / 2) continue;
      const skinMm = Math.max(showMm[region]!, coreMm[region]!);
      if (rimMm[region]! > 0 && joins(rimMm[region]!, skinMm, region)) isRim[region] = 1;
    }
  }
  for (let facet = 0; facet < kind.length; facet++) {
    if (label[facet]! >= 0 && isRim[label[facet]!] === 1) kind[facet] = facetKind.rim;
  }
}

/** A land runs along the skins it joins: it touches each with at least this share of its outline. */
const leastTouchShare = 0.1;
