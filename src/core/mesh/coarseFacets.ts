import { EdgeNumbers } from './edgeNumbers';
import type { IndexedMesh } from './types';

/** The facets of a mesh that have a long edge, and their edges. Corners are called A, B, C with AB the longest edge. */
export interface CoarseFacets {
  readonly facet: Uint32Array;
  /** Which corner of the facet is A: 0, 1 or 2. */
  readonly cornerA: Uint8Array;
  /** Height of C over AB, mm. */
  readonly breadthMm: Float64Array;
  /** Where C stands along AB, 0 at A to 1 at B. */
  readonly shareOfC: Float64Array;
  /** 3 edge numbers per coarse facet: AB, BC, CA. */
  readonly edge: Uint32Array;
  /** Per edge. */
  readonly edgeMm: Float64Array;
}

/** Finds the facets with an edge longer than `longMm`, in facet order. */
export function findCoarseFacets(mesh: IndexedMesh, longMm: number): CoarseFacets {
  const { positions, facets } = mesh;
  const facetCount = facets.length / 3;
  const squared = (one: number, other: number) => {
    const x = positions[3 * one]! - positions[3 * other]!;
    const y = positions[3 * one + 1]! - positions[3 * other + 1]!;
    const z = positions[3 * one + 2]! - positions[3 * other + 2]!;
    return x * x + y * y + z * z;
  };
  const long = longMm * longMm;
  const found: number[] = [];
  for (let facet = 0, at = 0; facet < facetCount; facet++, at += 3) {
    const a = facets[at]!;
    const b = facets[at + 1]!;
    const c = facets[at + 2]!;
    if (squared(a, b) > long || squared(b, c) > long || squared(c, a) > long) found.push(facet);
  }

  const count = found.length;
  const cornerA = new Uint8Array(count);
  const breadthMm = new Float64Array(count);
  const shareOfC = new Float64Array(count);
  const edge = new Uint32Array(3 * count);
  const edgeMm = new Float64Array(3 * count);
  const edges = new EdgeNumbers(3 * count);
  found.forEach((facet, at) => {
    const corners = [facets[3 * facet]!, facets[3 * facet + 1]!, facets[3 * facet + 2]!] as const;
    const sides = [
      squared(corners[0], corners[1]),
      squared(corners[1], corners[2]),
      squared(corners[2], corners[0]),
    ] as const;
    const longest = Math.max(...sides);
    const first = sides.indexOf(longest);
    cornerA[at] = first;
    for (let side = 0; side < 3; side++) {
      const from = (first + side) % 3;
      const number = edges.numberOf(corners[from]!, corners[(from + 1) % 3]!);
      edge[3 * at + side] = number;
      edgeMm[number] = Math.sqrt(sides[from]!);
    }
    const bc = sides[(first + 1) % 3]!;
    const ca = sides[(first + 2) % 3]!;
    // Law of cosines; kept within the edge against rounding.
    shareOfC[at] = Math.min(1, Math.max(0, (longest + ca - bc) / (2 * longest)));
    breadthMm[at] = heightMm(positions, corners[0], corners[1], corners[2], Math.sqrt(longest));
  });
  return { facet: Uint32Array.from(found), cornerA, breadthMm, shareOfC, edge, edgeMm };
}

/** Height of a facet over its edge of the given length: twice its area by that length. */
function heightMm(positions: Float64Array, p: number, q: number, r: number, edgeMm: number): number {
  const ux = positions[3 * q]! - positions[3 * p]!;
  const uy = positions[3 * q + 1]! - positions[3 * p + 1]!;
  const uz = positions[3 * q + 2]! - positions[3 * p + 2]!;
  const vx = positions[3 * r]! - positions[3 * p]!;
  const vy = positions[3 * r + 1]! - positions[3 * p + 1]!;
  const vz = positions[3 * r + 2]! - positions[3 * p + 2]!;
  return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / edgeMm;
}
