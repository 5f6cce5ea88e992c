import { type Adjacency, buildAdjacency, crowdedEdge, openEdge, runsUp } from './adjacency';
import { labelBodies } from './bodies';
import { findDuplicateFacets } from './duplicates';
import { boxCorner, groupFigures } from './groupFigures';
import type { BodyFacts, IndexedMesh, MeshHealth } from './types';
import { flagFlippedFacets } from './winding';
import { isFlat } from './flatFacets';

/**
 * Looks at how the facets hang together and says what is wrong.
 *
 * `degenerateFacets` is the number that `weld` left out; flat facets that it kept (they close the surface) are added
 * and shown. `watertight` and the edge counts describe the mesh as it stands, wrong winding included; whether a body
 * is closed, and its volume, are taken with the flipped facets turned around. The volume of a void is negative, so
 * that the volumes of the bodies add up to the material. Self-touching is not looked for here.
 */
export function findHealth(mesh: IndexedMesh, degenerateFacets = 0): MeshHealth {
  const adjacency = buildAdjacency(mesh);
  const facetCount = mesh.facets.length / 3;
  const { bodyCount, bodyOfFacet } = labelBodies(adjacency);
  const flipped = flagFlippedFacets(mesh, adjacency);
  const flippedFacets = facetsWhere(facetCount, (facet) => flipped[facet] === 1);
  const duplicateFacets = findDuplicateFacets(mesh, adjacency);
  const flatFacets = facetsWhere(facetCount, (facet) => isFlat(mesh, facet));
  const open = openBodies(mesh, adjacency, flipped, bodyOfFacet, bodyCount);
  const figures = groupFigures(mesh, bodyOfFacet, bodyCount, flipped);
  const bodies = Array.from({ length: bodyCount }, (_, body): BodyFacts => ({
    facetCount: figures.facetCount[body]!,
    closed: open[body] === 0,
    volume: open[body] === 0 ? figures.volume[body]! : null,
    boxMin: boxCorner(figures.boxMin, body),
    boxMax: boxCorner(figures.boxMax, body),
  }));

  return {
    facetCount,
    vertexCount: mesh.positions.length / 3,
    watertight: adjacency.openEdges + adjacency.crowdedEdges + adjacency.misorientedEdges === 0,
    openEdges: adjacency.openEdges,
    crowdedEdges: adjacency.crowdedEdges,
    flippedFacets: flippedFacets.length,
    degenerateFacets: degenerateFacets + flatFacets.length,
    duplicateFacets: duplicateFacets.length,
    selfTouchingFacets: null,
    bodies,
    bodyOfFacet,
    show: {
      openEdges: facetsAtEdges(adjacency, openEdge, adjacency.openEdges),
      crowdedEdges: facetsAtEdges(adjacency, crowdedEdge, adjacency.crowdedEdges),
      flippedFacets,
      degenerateFacets: flatFacets,
      duplicateFacets,
      selfTouching: new Uint32Array(0),
    },
  };
}

function facetsWhere(facetCount: number, holds: (facet: number) => boolean): Uint32Array {
  const found: number[] = [];
  for (let facet = 0; facet < facetCount; facet++) if (holds(facet)) found.push(facet);
  return Uint32Array.from(found);
}

/** Facets with an edge of the wanted kind, of which there are `edges`. */
function facetsAtEdges({ neighbor }: Adjacency, kind: number, edges: number): Uint32Array {
  if (edges === 0) return new Uint32Array(0);
  return facetsWhere(
    neighbor.length / 3,
    (facet) =>
      neighbor[3 * facet] === kind || neighbor[3 * facet + 1] === kind || neighbor[3 * facet + 2] === kind,
  );
}

/** 1 for each body that does not enclose a volume even after its flipped facets were turned around. */
function openBodies(
  mesh: IndexedMesh,
  adjacency: Adjacency,
  turned: Uint8Array,
  bodyOfFacet: Uint32Array,
  bodyCount: number,
): Uint8Array {
  const { neighbor, sameWay, crowdedHalfEdges, crowdedStarts } = adjacency;
  const open = new Uint8Array(bodyCount);
  for (let h = 0; h < neighbor.length; h++) {
    const other = neighbor[h]!;
    const facet = (h / 3) | 0;
    const torn = other === openEdge || (other >= 0 && (sameWay[h]! ^ turned[facet]! ^ turned[other]!) === 1);
    if (torn) open[bodyOfFacet[facet]!] = 1;
  }
  for (let group = 0; group + 1 < crowdedStarts.length; group++) {
    const members = crowdedHalfEdges.subarray(crowdedStarts[group], crowdedStarts[group + 1]);
    let balance = 0;
    for (const h of members) {
      balance += runsUp(mesh, h) === (turned[(h / 3) | 0] === 0) ? 1 : -1;
    }
    if (balance !== 0) open[bodyOfFacet[(members[0]! / 3) | 0]!] = 1;
  }
  return open;
}
