import type { IndexedMesh } from './types';

/** Value of `Adjacency.neighbor` over an edge that only this facet has. */
export const openEdge = -1;
/** Value of `Adjacency.neighbor` over an edge that more than two facets share. */
export const crowdedEdge = -2;

/**
 * Which facets meet over which edges. Edge k of facet f runs from its corner k to its corner k + 1 (mod 3) and is
 * called half-edge 3 f + k.
 */
export interface Adjacency {
  /** Per half-edge: the facet on the other side, or `openEdge` or `crowdedEdge`. */
  readonly neighbor: Int32Array;
  /** Per half-edge with a neighbor: 1 when both facets run along the edge the same way, so one is wound wrongly. */
  readonly sameWay: Uint8Array;
  /** Edges counted once however many facets they have. */
  readonly edges: number;
  readonly openEdges: number;
  readonly crowdedEdges: number;
  /** Two-facet edges that both facets run along the same way. */
  readonly misorientedEdges: number;
  /** Half-edges of the crowded edges, group after group. */
  readonly crowdedHalfEdges: Int32Array;
  /** Group g is `crowdedHalfEdges[crowdedStarts[g] .. crowdedStarts[g + 1] - 1]`; one entry more than groups. */
  readonly crowdedStarts: Int32Array;
}

/**
 * Finds the neighbors of every facet in time linear in the facets, whatever the shape (a fan of a million facets
 * around one corner included): half-edges are bucketed by their lower vertex number, and within a bucket chained by
 * their higher one through a stamped array, so nothing is hashed or compared.
 * Facets must not use a vertex twice (`weld` sees to that).
 */
export function buildAdjacency(mesh: IndexedMesh): Adjacency {
  const { facets } = mesh;
  const halfEdges = facets.length;
  const vertexCount = mesh.positions.length / 3;

  const bucketStart = new Uint32Array(vertexCount + 1);
  for (let h = 0; h < halfEdges; h++) {
    const from = facets[h]!;
    const to = facets[h % 3 === 2 ? h - 2 : h + 1]!;
    const low = from < to ? from : to;
    bucketStart[low + 1] = bucketStart[low + 1]! + 1;
  }
  for (let v = 0; v < vertexCount; v++) bucketStart[v + 1] = bucketStart[v + 1]! + bucketStart[v]!;
  const filled = bucketStart.slice(0, vertexCount);
  const bucketed = new Uint32Array(halfEdges);
  for (let h = 0; h < halfEdges; h++) {
    const from = facets[h]!;
    const to = facets[h % 3 === 2 ? h - 2 : h + 1]!;
    const low = from < to ? from : to;
    const at = filled[low]!;
    bucketed[at] = h;
    filled[low] = at + 1;
  }

  const neighbor = new Int32Array(halfEdges);
  const sameWay = new Uint8Array(halfEdges);
  const stamp = new Int32Array(vertexCount).fill(-1);
  const lastWithHigh = new Int32Array(vertexCount);
  const previousOnEdge = new Int32Array(halfEdges);
  const crowdedHalfEdges: number[] = [];
  const crowdedStarts: number[] = [0];
  let edges = 0;
  let openEdges = 0;
  let misorientedEdges = 0;

  for (let low = 0; low < vertexCount; low++) {
    const end = bucketStart[low + 1]!;
    for (let i = bucketStart[low]!; i < end; i++) {
      const h = bucketed[i]!;
      const from = facets[h]!;
      const high = from === low ? facets[h % 3 === 2 ? h - 2 : h + 1]! : from;
      if (stamp[high] === low) {
        previousOnEdge[h] = lastWithHigh[high]!;
      } else {
        stamp[high] = low;
        previousOnEdge[h] = -1;
      }
      lastWithHigh[high] = h;
    }
    for (let i = bucketStart[low]!; i < end; i++) {
      const h = bucketed[i]!;
      const from = facets[h]!;
      const high = from === low ? facets[h % 3 === 2 ? h - 2 : h + 1]! : from;
      // Each edge is settled once, from the last of its half-edges.
      if (lastWithHigh[high] !== h) continue;
      edges++;
      const second = previousOnEdge[h]!;
      if (second === -1) {
        neighbor[h] = openEdge;
        openEdges++;
      } else if (previousOnEdge[second] === -1) {
        neighbor[h] = (second / 3) | 0;
        neighbor[second] = (h / 3) | 0;
        if (facets[second] === from) {
          sameWay[h] = 1;
          sameWay[second] = 1;
          misorientedEdges++;
        }
      } else {
        for (let on = h; on !== -1; on = previousOnEdge[on]!) {
          neighbor[on] = crowdedEdge;
          crowdedHalfEdges.push(on);
        }
        crowdedStarts.push(crowdedHalfEdges.length);
      }
    }
  }
  return {
    neighbor,
    sameWay,
    edges,
    openEdges,
    crowdedEdges: crowdedStarts.length - 1,
    misorientedEdges,
    crowdedHalfEdges: Int32Array.from(crowdedHalfEdges),
    crowdedStarts: Int32Array.from(crowdedStarts),
  };
}

/** True when the facet runs along its half-edge from the lower to the higher vertex number. */
export function runsUp(mesh: IndexedMesh, halfEdge: number): boolean {
  const next = halfEdge % 3 === 2 ? halfEdge - 2 : halfEdge + 1;
  return mesh.facets[halfEdge]! < mesh.facets[next]!;
}
