import { findCoarseFacets } from './coarseFacets';
import { FacetSplitter } from './facetSplitter';
import { facetBox } from './integrals';
import { Midpoints } from './midpoints';
import { planSplit, quarteringsOf } from './splitPlan';
import type { IndexedMesh } from './types';

/** Edges longer than this share of the box diagonal are split: into pieces of 1.5 to 3 mm for a part that fits a hand. */
const longestEdgeShare = 1 / 48;
/** Facets that a part is measured on at most, unless it was drawn with more. */
const facetBudget = 250_000;
/** When the budget is not kept, the length grows by at least this. */
const leastGrowth = 2 ** 0.25;

/** Which facets came of which. "Drawn" is what the file gave; its facets are split into children. */
export interface FacetSplit {
  /** Children of drawn facet f: `childStart[f]` to `childStart[f + 1] - 1`. One entry more than drawn facets. */
  readonly childStart: Uint32Array;
  /** Per half-edge of the children: the drawn half-edge that it lies on, -1 for one inside a drawn facet. */
  readonly drawnHalfEdge: Int32Array;
}

/** The mesh that a part is measured on. */
export interface MeasuringMesh {
  /** The drawn mesh itself when nothing was split. */
  readonly mesh: IndexedMesh;
  /** Null when nothing was split: then its facets are the drawn ones. */
  readonly split: FacetSplit | null;
  /**
   * No edge of a facet broader than half of this stays longer than this, mm; Infinity where a mesh of more facets than
   * the budget was left alone.
   */
  readonly longestEdgeMm: number;
  /** The length that suits the part, mm; `longestEdgeMm` is more when the budget did not allow for it. */
  readonly wantedEdgeMm: number;
}

/**
 * Splits long edges, so that large flat facets are measured at many places and not at their centers alone. The surface
 * stays the same: children lie in the plane of their facet, keep its winding, and follow each other in the order of the
 * drawn facets. Every edge is halved in one way for all its facets, so a closed mesh stays closed; an edge that is
 * short enough stays as it is. Edges inside a drawn facet come out up to about 1.4 times as long as those on its
 * outline; slivers are cut into longer pieces than broad facets, see `planSplit`. Facets without area are split along
 * with their neighbors.
 *
 * The length is a 48th of the box diagonal. When that would give more than the budget of facets, a longer one is taken;
 * a mesh that has more than the budget is left alone. Deterministic.
 * @param mesh in mm
 */
export function refineForMeasuring(mesh: IndexedMesh, budget = facetBudget): MeasuringMesh {
  const drawnCount = mesh.facets.length / 3;
  const { min, max } = facetBox(mesh);
  const wantedEdgeMm = Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2]) * longestEdgeShare;
  if (drawnCount >= budget || !(wantedEdgeMm > 0)) {
    return { mesh, split: null, longestEdgeMm: Infinity, wantedEdgeMm };
  }
  const coarse = findCoarseFacets(mesh, wantedEdgeMm);
  const coarseCount = coarse.facet.length;
  if (coarseCount === 0) return { mesh, split: null, longestEdgeMm: wantedEdgeMm, wantedEdgeMm };
  const mostChildren = budget - (drawnCount - coarseCount);
  let plan = planSplit(coarse, wantedEdgeMm);
  while (plan.children > mostChildren) {
    const growth = Math.max(leastGrowth, Math.sqrt(plan.children / mostChildren));
    plan = planSplit(coarse, plan.longestEdgeMm * growth);
  }
  const { longestEdgeMm, pieces, children } = plan;

  // A facet split into n has fewer than n new vertices.
  const midpoints = new Midpoints(mesh.positions, children);
  const splitter = new FacetSplitter(drawnCount - coarseCount + children, midpoints);
  const childStart = new Uint32Array(drawnCount + 1);
  const { facets } = mesh;
  for (let facet = 0, at = 0; facet < drawnCount; facet++) {
    const first = 3 * facet;
    if (coarse.facet[at] === facet) {
      const a = first + coarse.cornerA[at]!;
      const b = first + ((coarse.cornerA[at]! + 1) % 3);
      const c = first + ((coarse.cornerA[at]! + 2) % 3);
      const facetPlan = {
        piecesAB: pieces[coarse.edge[3 * at]!]!,
        piecesBC: pieces[coarse.edge[3 * at + 1]!]!,
        piecesCA: pieces[coarse.edge[3 * at + 2]!]!,
        quarterings: quarteringsOf(coarse, pieces, at, longestEdgeMm),
        shareOfC: coarse.shareOfC[at]!,
      };
      splitter.split(facetPlan, facets[a]!, facets[b]!, facets[c]!, a, b, c);
      at++;
    } else {
      splitter.write(facets[first]!, facets[first + 1]!, facets[first + 2]!, first, first + 1, first + 2);
    }
    childStart[facet + 1] = splitter.count;
  }
  return {
    mesh: { positions: midpoints.all(), facets: splitter.facets },
    split: { childStart, drawnHalfEdge: splitter.drawnHalfEdge },
    longestEdgeMm,
    wantedEdgeMm,
  };
}

/** The children of drawn facets, e.g. to show a finding of the drawn mesh; always a fresh array. */
export function childrenOf(split: FacetSplit | null, drawnFacets: Uint32Array): Uint32Array {
  if (split === null) return drawnFacets.slice();
  const { childStart } = split;
  let count = 0;
  for (const facet of drawnFacets) count += childStart[facet + 1]! - childStart[facet]!;
  const children = new Uint32Array(count);
  let at = 0;
  for (const facet of drawnFacets) {
    for (let child = childStart[facet]!; child < childStart[facet + 1]!; child++) children[at++] = child;
  }
  return children;
}
