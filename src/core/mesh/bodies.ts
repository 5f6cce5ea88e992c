import type { Adjacency } from './adjacency';

export interface BodyLabels {
  readonly bodyCount: number;
  /** 0-based body of each facet; bodies are sorted by facet count, largest first, then by their first facet. */
  readonly bodyOfFacet: Uint32Array;
}

/** Sorts facets into bodies: facets that share an edge, however many facets the edge has, belong together. */
export function labelBodies(adjacency: Adjacency): BodyLabels {
  const { neighbor, crowdedHalfEdges, crowdedStarts } = adjacency;
  const facetCount = neighbor.length / 3;
  const parent = new Int32Array(facetCount);
  for (let facet = 0; facet < facetCount; facet++) parent[facet] = facet;
  const rootOf = (facet: number): number => {
    let at = facet;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  };
  const join = (one: number, other: number): void => {
    const a = rootOf(one);
    const b = rootOf(other);
    // The lower number stays the root, so that a body's root is its first facet.
    if (a < b) parent[b] = a;
    else parent[a] = b;
  };
  for (let h = 0; h < neighbor.length; h++) {
    const other = neighbor[h]!;
    const facet = (h / 3) | 0;
    if (other > facet) join(facet, other);
  }
  for (let group = 0; group + 1 < crowdedStarts.length; group++) {
    const first = (crowdedHalfEdges[crowdedStarts[group]!]! / 3) | 0;
    for (let i = crowdedStarts[group]! + 1; i < crowdedStarts[group + 1]!; i++) {
      join(first, (crowdedHalfEdges[i]! / 3) | 0);
    }
  }

  const sizeAtRoot = new Uint32Array(facetCount);
  const roots: number[] = [];
  for (let facet = 0; facet < facetCount; facet++) {
    const root = rootOf(facet);
    if (root === facet) roots.push(facet);
    sizeAtRoot[root] = sizeAtRoot[root]! + 1;
  }
  roots.sort((a, b) => sizeAtRoot[b]! - sizeAtRoot[a]! || a - b);
  const bodyAtRoot = new Uint32Array(facetCount);
  roots.forEach((root, body) => (bodyAtRoot[root] = body));
  const bodyOfFacet = new Uint32Array(facetCount);
  for (let facet = 0; facet < facetCount; facet++) bodyOfFacet[facet] = bodyAtRoot[rootOf(facet)]!;
  return { bodyCount: roots.length, bodyOfFacet };
}
