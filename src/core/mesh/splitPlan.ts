import type { CoarseFacets } from './coarseFacets';

/** A sliver narrower than this share of the length is cut into longer pieces, ... */
const narrowShare = 1 / 2;
/** ... but no more than so many times as long. */
const mostStretch = 8;

/** How coarse facets are split. */
export interface SplitPlan {
  /** The length that the plan was made for, mm. */
  readonly longestEdgeMm: number;
  /** Per edge of the coarse facets: pieces that it is halved into, a power of two. */
  readonly pieces: Uint32Array;
  /** Facets that come of all coarse facets together. */
  readonly children: number;
}

/**
 * Plans how every edge is cut. What an edge gets depends on the facets at it, so all of them agree: a facet asks for
 * pieces of `longestEdgeMm`; a sliver asks for pieces that are longer the narrower it is (as the root of it), since
 * beside it lie others that are measured as well; the facet that asks for most decides.
 */
export function planSplit(coarse: CoarseFacets, longestEdgeMm: number): SplitPlan {
  const { breadthMm, edge, edgeMm } = coarse;
  const pieces = new Uint32Array(edgeMm.length).fill(1);
  for (let at = 0; at < breadthMm.length; at++) {
    const stretch = Math.sqrt((narrowShare * longestEdgeMm) / breadthMm[at]!);
    const pieceMm = longestEdgeMm * Math.min(mostStretch, Math.max(1, stretch));
    for (let side = 3 * at; side < 3 * at + 3; side++) {
      const number = edge[side]!;
      while (edgeMm[number]! > pieceMm * pieces[number]!) pieces[number] = 2 * pieces[number]!;
    }
  }
  halveLongestWhereOthersAre(coarse, pieces);
  let children = 0;
  for (let at = 0; at < breadthMm.length; at++) {
    const scale = 2 ** quarteringsOf(coarse, pieces, at, longestEdgeMm);
    const onOutline = pieces[edge[3 * at]!]! + pieces[edge[3 * at + 1]!]! + pieces[edge[3 * at + 2]!]!;
    children += scale * scale * (onOutline / scale - 2);
  }
  return { longestEdgeMm, pieces, children };
}

/** The strips that a facet is cut into need a point on its longest edge, if there is one on any. */
function halveLongestWhereOthersAre({ edge }: CoarseFacets, pieces: Uint32Array): void {
  for (let changed = true; changed;) {
    changed = false;
    for (let at = 0; at < edge.length; at += 3) {
      if (pieces[edge[at]!]! > 1 || (pieces[edge[at + 1]!] === 1 && pieces[edge[at + 2]!] === 1)) continue;
      pieces[edge[at]!] = 2;
      changed = true;
    }
  }
}

/**
 * So many times a coarse facet is split into four, all edges halved, before it is cut across in strips: until it is
 * no broader than the length.
 */
export function quarteringsOf(
  { breadthMm, edge }: CoarseFacets,
  pieces: Uint32Array,
  at: number,
  longestEdgeMm: number,
): number {
  let breadth = breadthMm[at]!;
  let fewest = Math.min(pieces[edge[3 * at]!]!, pieces[edge[3 * at + 1]!]!, pieces[edge[3 * at + 2]!]!);
  let quarterings = 0;
  while (breadth > longestEdgeMm && fewest > 1) {
    quarterings++;
    breadth /= 2;
    fewest /= 2;
  }
  return quarterings;
}
