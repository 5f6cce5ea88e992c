import { type Adjacency, buildAdjacency } from './adjacency';
import { facetBox } from './integrals';
import { joinNearVertices } from './nearVertices';
import { keepThreeCornered } from './threeCornered';
import type { IndexedMesh } from './types';

/**
 * Distances, in diagonals of the box, that may be tried when equal corners leave edges open: far below what a
 * printer can draw, and above the rounding of single-precision files.
 */
const joinShares = [1e-6, 1e-5] as const;
/** Share of open edges above which the corners of a file miss each other throughout rather than at a gap. */
const missThroughoutShare = 0.1;
/** A join that collapses more facets than this share would eat detail, or the whole of a tiny surface. */
const mostCollapsedShare = 0.01;
/** Only to tell the maker how far apart corners lie that miss each other; never joined over this distance. */
const lookShare = 1e-3;

export interface JoinedMesh {
  readonly mesh: IndexedMesh;
  /** Facets that collapsed when their corners were joined. */
  readonly dropped: number;
  /** 0 when nothing was joined. */
  readonly weldDistance: number;
  readonly notes: readonly string[];
}

interface Candidate {
  readonly mesh: IndexedMesh;
  readonly dropped: number;
  readonly adjacency: Adjacency;
}

/**
 * Joins corners that miss each other by a tiny distance, when this makes the surface sound or mends a file whose
 * corners miss each other throughout; a single gap is left to be reported as it stands. Corners that miss each other
 * by more are never joined, only told of.
 */
export function joinMisses(mesh: IndexedMesh): JoinedMesh {
  const untouched = { mesh, dropped: 0, weldDistance: 0 };
  const before = buildAdjacency(mesh);
  if (before.openEdges === 0) return { ...untouched, notes: [] };
  const missThroughout = before.openEdges > missThroughoutShare * before.edges;
  const mostlyCloses = (after: Adjacency) =>
    missThroughout && after.openEdges < missThroughoutShare * before.openEdges;
  const { min, max } = facetBox(mesh);
  const diagonal = Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2]);

  for (const share of joinShares) {
    const weldDistance = share * diagonal;
    const joined = joinWithin(mesh, weldDistance);
    const sound = joined.adjacency.openEdges + joined.adjacency.crowdedEdges === 0;
    if (!sound && !mostlyCloses(joined.adjacency)) continue;
    if (3 * joined.dropped > mostCollapsedShare * mesh.facets.length) break;
    const closed = before.openEdges - joined.adjacency.openEdges;
    return {
      mesh: joined.mesh,
      dropped: joined.dropped,
      weldDistance,
      notes: [
        `Corners that should meet lie slightly apart in the file; those within ${weldDistance.toPrecision(2)} file units were joined, which closed ${closed} open edges.`,
      ],
    };
  }
  if (!missThroughout || !mostlyCloses(joinWithin(mesh, lookShare * diagonal).adjacency)) {
    return { ...untouched, notes: [] };
  }
  return {
    ...untouched,
    notes: [
      `Corners that should meet lie up to about ${(lookShare * diagonal).toPrecision(1)} file units apart. That is too far to join without changing the part, so its surface is left open. Export the part again with its triangles joined.`,
    ],
  };
}

function joinWithin(mesh: IndexedMesh, distance: number): Candidate {
  const stands = joinNearVertices(mesh, distance);
  const { facets, dropped } = keepThreeCornered(mesh.facets.map((vertex) => stands[vertex]!));
  const joined = { positions: mesh.positions, facets };
  return { mesh: joined, dropped, adjacency: buildAdjacency(joined) };
}
