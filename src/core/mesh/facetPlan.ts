import type { IndexedMesh } from './types';

/** How one facet is to be split. Corners are called A, B, C with AB the longest edge. */
export interface FacetPlan {
  /** Which corner of the facet is A: 0, 1 or 2. */
  cornerA: number;
  /** Powers of two: so many pieces each edge is cut into. */
  piecesAB: number;
  piecesBC: number;
  piecesCA: number;
  /** Before the rest is done in strips, the facet is quartered so many times. */
  quarterings: number;
  /** Where C stands along AB, 0 at A to 1 at B. */
  shareOfC: number;
  /** Facets that come of it. */
  children: number;
}

export const blankPlan = (): FacetPlan => ({
  cornerA: 0,
  piecesAB: 1,
  piecesBC: 1,
  piecesCA: 1,
  quarterings: 0,
  shareOfC: 0,
  children: 1,
});

/** Halvings until no piece is longer than `mostMm`, as the number of pieces. Depends on the edge alone. */
function piecesOf(squaredLength: number, mostMm: number): number {
  let pieces = 1;
  while (squaredLength > mostMm * mostMm * pieces * pieces) pieces *= 2;
  return pieces;
}

/**
 * Plans the splitting of a facet so that no edge of it stays longer than `mostMm`. A facet that is broader than that
 * is quartered (all edges halved) until it is not; what is left, long or not, is cut across in strips between the points
 * on its edges, so a sliver gives no more facets than its length asks for.
 */
export function planFacet(mesh: IndexedMesh, facet: number, mostMm: number, plan: FacetPlan): void {
  const { positions, facets } = mesh;
  const at = 3 * facet;
  const p = 3 * facets[at]!;
  const q = 3 * facets[at + 1]!;
  const r = 3 * facets[at + 2]!;
  const ux = positions[q]! - positions[p]!;
  const uy = positions[q + 1]! - positions[p + 1]!;
  const uz = positions[q + 2]! - positions[p + 2]!;
  const vx = positions[r]! - positions[q]!;
  const vy = positions[r + 1]! - positions[q + 1]!;
  const vz = positions[r + 2]! - positions[q + 2]!;
  const wx = positions[p]! - positions[r]!;
  const wy = positions[p + 1]! - positions[r + 1]!;
  const wz = positions[p + 2]! - positions[r + 2]!;
  const pq = ux * ux + uy * uy + uz * uz;
  const qr = vx * vx + vy * vy + vz * vz;
  const rp = wx * wx + wy * wy + wz * wz;
  const longest = Math.max(pq, qr, rp);
  plan.children = 1;
  if (!(longest > mostMm * mostMm)) return;

  plan.cornerA = longest === pq ? 0 : longest === qr ? 1 : 2;
  const bc = plan.cornerA === 0 ? qr : plan.cornerA === 1 ? rp : pq;
  const ca = plan.cornerA === 0 ? rp : plan.cornerA === 1 ? pq : qr;
  plan.piecesAB = piecesOf(longest, mostMm);
  plan.piecesBC = piecesOf(bc, mostMm);
  plan.piecesCA = piecesOf(ca, mostMm);
  // Law of cosines; kept within the edge against rounding.
  plan.shareOfC = Math.min(1, Math.max(0, (longest + ca - bc) / (2 * longest)));
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  let breadthMm = Math.sqrt((nx * nx + ny * ny + nz * nz) / longest);
  let fewest = Math.min(plan.piecesAB, plan.piecesBC, plan.piecesCA);
  let scale = 1;
  plan.quarterings = 0;
  while (breadthMm > mostMm && fewest > 1) {
    plan.quarterings++;
    scale *= 2;
    breadthMm /= 2;
    fewest /= 2;
  }
  plan.children = scale * scale * ((plan.piecesAB + plan.piecesBC + plan.piecesCA) / scale - 2);
}
