import type { FacetGeometry } from './facetGeometry';
import { reachBit } from './types';

/** Values of a side: which mold half a facet belongs to. */
export const side = { show: 1, core: -1, none: 0 } as const;

/** What sides and kinds are decided from; per facet unless said. */
export interface FacetFindings {
  readonly geometry: FacetGeometry;
  readonly rayWallMm: Float32Array;
  readonly rayFacet: Int32Array;
  readonly ballWallMm: Float32Array;
  readonly draftDeg: Float32Array;
  readonly reach: Uint8Array;
  /** Per half-edge: the facet across, negative for none. */
  readonly neighbor: Int32Array;
  /** Per half-edge: signed turn across. */
  readonly turnRad: Float32Array;
}

/** Two facets stand face to face as the sides of a wall when their normals oppose by more than 120 degrees. */
const facingCosine = -0.5;
/** A ray much longer than the ball runs along the material, not through it. */
export const longRayRatio = 1.6;

/** Whether the ray of a facet ends on a facet that stands opposed to it. */
export function endsFaceToFace(findings: FacetFindings, facet: number): boolean {
  const hit = findings.rayFacet[facet]!;
  if (hit < 0) return false;
  const { normal } = findings.geometry;
  const n = 3 * facet;
  const m = 3 * hit;
  return (
    normal[n]! * normal[m]! + normal[n + 1]! * normal[m + 1]! + normal[n + 2]! * normal[m + 2]! < facingCosine
  );
}

function endsOnClearWall(findings: FacetFindings, facet: number): boolean {
  const ray = findings.rayWallMm[facet]!;
  return !(ray > longRayRatio * findings.ballWallMm[facet]!) && endsFaceToFace(findings, facet);
}

/**
 * Which mold half each facet belongs to (`side`).
 *
 * What only one half reaches belongs to it. The rest, in this order:
 * - What both reach (upright walls, through-openings) takes the other side than the facet that its wall ends on.
 * - What none reaches (undercuts) takes the side of its neighbor in an inside corner or in the same plane: the same stone
 *   would fill both. So the wall in front of an undercut is still a wall, and a rib stays on its own half.
 * - Of two undecided sides of one wall the free one is show and the trapped one core; when both are free, the one
 *   that looks further away from the middle of the part is show.
 * - What is left takes the other side than the facet its wall ends on, else the side over the gentlest fold.
 */
export function skinSides(findings: FacetFindings): Int8Array {
  const { geometry, rayFacet, reach, draftDeg } = findings;
  const { areaMm2 } = geometry;
  const facetCount = reach.length;
  const sides = new Int8Array(facetCount);
  const free: number[] = [];
  const trapped: number[] = [];
  for (let facet = 0; facet < facetCount; facet++) {
    const halves = reach[facet]!;
    if (halves === reachBit.fromShowSide) sides[facet] = side.show;
    else if (halves === reachBit.fromCoreSide) sides[facet] = side.core;
    else if (areaMm2[facet]! > 0) (halves === 0 ? trapped : free).push(facet);
  }
  const undecided = (facets: readonly number[]) => facets.filter((facet) => sides[facet] === side.none);
  takeOppositeSides(free);
  floodInsideCorners(sides, trapped, findings);
  const center = middleOf(geometry);
  for (const facet of undecided(free)) {
    const hit = rayFacet[facet]!;
    if (hit < 0 || sides[hit] !== side.none || !endsOnClearWall(findings, facet)) continue;
    if (reach[hit] === 0 || outwardness(geometry, facet, center) > outwardness(geometry, hit, center)) {
      sides[facet] = side.show;
    }
  }
  takeOppositeSides([...undecided(free), ...undecided(trapped)]);
  const rest = [...undecided(free), ...undecided(trapped)];
  if (rest.length > 0) {
    floodOverGentlestFolds(sides, rest, findings);
    for (const facet of undecided(rest)) sides[facet] = draftDeg[facet]! >= 0 ? side.show : side.core;
  }
  return sides;

  /** Decides the facets whose wall ends on a facet that was decided before. */
  function takeOppositeSides(facets: readonly number[]): void {
    const decided = facets.filter(
      (facet) =>
        rayFacet[facet]! >= 0 && sides[rayFacet[facet]!] !== side.none && endsOnClearWall(findings, facet),
    );
    const taken = decided.map((facet) => -sides[rayFacet[facet]!]!);
    decided.forEach((facet, at) => (sides[facet] = taken[at]!));
  }
}

/** Folds up to this are the same plane for spreading a side. */
const samePlaneRad = Math.PI / 180;

/** Spreads the decided sides into the trapped facets over inside corners and within planes. */
function floodInsideCorners(sides: Int8Array, trapped: readonly number[], findings: FacetFindings): void {
  const { neighbor, turnRad, reach } = findings;
  const takesFrom = (halfEdge: number) =>
    neighbor[halfEdge]! >= 0 &&
    turnRad[halfEdge]! <= samePlaneRad &&
    sides[neighbor[halfEdge]!] !== side.none;
  const waiting = trapped.filter((facet) => [0, 1, 2].some((edge) => takesFrom(3 * facet + edge)));
  for (let facet = waiting.pop(); facet !== undefined; facet = waiting.pop()) {
    if (sides[facet] !== side.none) continue;
    for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
      if (takesFrom(halfEdge)) sides[facet] = sides[neighbor[halfEdge]!]!;
    }
    for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
      const other = neighbor[halfEdge]!;
      if (
        other >= 0 &&
        reach[other] === 0 &&
        sides[other] === side.none &&
        turnRad[halfEdge]! <= samePlaneRad
      ) {
        waiting.push(other);
      }
    }
  }
}

function middleOf(geometry: FacetGeometry): readonly [number, number, number] {
  const { areaMm2, centerMm } = geometry;
  let [x, y, z, whole] = [0, 0, 0, 0];
  for (let facet = 0; facet < areaMm2.length; facet++) {
    const area = areaMm2[facet]!;
    whole += area;
    x += area * centerMm[3 * facet]!;
    y += area * centerMm[3 * facet + 1]!;
    z += area * centerMm[3 * facet + 2]!;
  }
  return whole > 0 ? [x / whole, y / whole, z / whole] : [0, 0, 0];
}

/** How far the facet's plane lies outward of the middle, along its own normal. */
function outwardness(
  geometry: FacetGeometry,
  facet: number,
  middle: readonly [number, number, number],
): number {
  const { normal, centerMm } = geometry;
  let sum = 0;
  for (let axis = 0; axis < 3; axis++) {
    sum += normal[3 * facet + axis]! * (centerMm[3 * facet + axis]! - middle[axis]!);
  }
  return sum;
}

const foldBins = 18;

/** Spreads the decided sides into `undecided`, over the gentlest fold first. */
function floodOverGentlestFolds(
  sides: Int8Array,
  undecided: readonly number[],
  findings: FacetFindings,
): void {
  const { neighbor, turnRad } = findings;
  // Half-edges of decided facets that look at an undecided one, by the fold they cross.
  const bins: number[][] = Array.from({ length: foldBins }, () => []);
  const offer = (halfEdge: number) => {
    const bin = Math.min(foldBins - 1, Math.floor((Math.abs(turnRad[halfEdge]!) / Math.PI) * foldBins));
    bins[bin]!.push(halfEdge);
    return bin;
  };
  for (const facet of undecided) {
    for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
      const other = neighbor[halfEdge]!;
      if (other >= 0 && sides[other] !== side.none) offer(halfEdge);
    }
  }
  // At first every offered half-edge belongs to the undecided facet itself; later ones look into it from outside.
  for (let bin = 0; bin < foldBins;) {
    const halfEdge = bins[bin]!.pop();
    if (halfEdge === undefined) {
      bin++;
      continue;
    }
    const facet = (halfEdge / 3) | 0;
    if (sides[facet] !== side.none) continue;
    sides[facet] = sides[neighbor[halfEdge]!]!;
    let gentlest = bin;
    for (let own = 3 * facet; own < 3 * facet + 3; own++) {
      const other = neighbor[own]!;
      if (other < 0 || sides[other] !== side.none) continue;
      let back = 3 * other;
      while (back < 3 * other + 2 && neighbor[back] !== facet) back++;
      gentlest = Math.min(gentlest, offer(back));
    }
    bin = gentlest;
  }
}
