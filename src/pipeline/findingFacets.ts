import { childrenOf, type FacetSplit } from '../core/mesh/refineForMeasuring';
import type { MeshHealth } from '../core/mesh/types';
import type { FindingFacets } from './told';

/**
 * The facets of `health.show`, counted as the part on the view counts them: all facets when `body` is 0, else the facets
 * of that 1-based body alone, in the same order; those that were split by their children. Always fresh arrays.
 */
export function findingFacetsOfPart(
  health: MeshHealth,
  body: number,
  split: FacetSplit | null,
): FindingFacets {
  const { bodyOfFacet, show } = health;
  let numberInPart: Uint32Array | null = null;
  if (body !== 0) {
    numberInPart = new Uint32Array(bodyOfFacet.length);
    let next = 0;
    for (let facet = 0; facet < bodyOfFacet.length; facet++) {
      numberInPart[facet] = next;
      if (bodyOfFacet[facet] === body - 1) next++;
    }
  }
  const ofPart = (facets: Uint32Array) =>
    childrenOf(
      split,
      numberInPart === null
        ? facets
        : facets.filter((facet) => bodyOfFacet[facet] === body - 1).map((facet) => numberInPart[facet]!),
    );
  return {
    openEdges: ofPart(show.openEdges),
    crowdedEdges: ofPart(show.crowdedEdges),
    flippedFacets: ofPart(show.flippedFacets),
    degenerateFacets: ofPart(show.degenerateFacets),
    duplicateFacets: ofPart(show.duplicateFacets),
    selfTouching: ofPart(show.selfTouching),
  };
}
