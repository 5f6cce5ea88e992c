/** Facet numbers group by group: group g is `facets[starts[g] .. starts[g + 1] - 1]`, ascending within a group. */
export interface FacetGroups {
  readonly facets: Uint32Array;
  readonly starts: Uint32Array;
}

/** Lists the facets of each group, given the group of each facet. */
export function groupFacets(groupOfFacet: Uint32Array, groupCount: number): FacetGroups {
  const starts = new Uint32Array(groupCount + 1);
  for (const group of groupOfFacet) starts[group + 1] = starts[group + 1]! + 1;
  for (let group = 0; group < groupCount; group++) starts[group + 1] = starts[group + 1]! + starts[group]!;
  const filled = starts.slice(0, groupCount);
  const facets = new Uint32Array(groupOfFacet.length);
  for (let facet = 0; facet < groupOfFacet.length; facet++) {
    const group = groupOfFacet[facet]!;
    const at = filled[group]!;
    facets[at] = facet;
    filled[group] = at + 1;
  }
  return { facets, starts };
}

/** Facets of one group, without copying. */
export function facetsOfGroup(groups: FacetGroups, group: number): Uint32Array {
  return groups.facets.subarray(groups.starts[group], groups.starts[group + 1]);
}
