import { withBalls, type ConcaveEdge } from './cornerBalls';
import { halfEdgeLength } from './edgeTurns';
import type { FacetSplit } from './refineForMeasuring';
import type { IndexedMesh } from './types';

const leastTurnRad = Math.PI / 180;
/** One fold of more than this is no facet of a fillet, however small its facets are. */
const sharpTurnRad = Math.PI / 3;
/** A fillet facet that strays more than this from its arc is not a fillet facet but a corner drawn sharp. */
const largestChordDeviationMm = 0.2;
/** Slivers narrower than this have no direction to trust. */
const leastWidthMm = 0.005;
/** A facet whose least other fold is below this share of a turn has its strip partner there. */
const partnerFoldShare = 0.3;

/** Inside corners per facet. */
export interface InsideCorners {
  /** Smallest radius over the facet's own concave edges; 0 for a sharp corner, NaN where no edge is concave. */
  readonly radiusMm: Float32Array;
  /** Length of the edge that gives that radius; 0 where there is none. */
  readonly edgeMm: Float32Array;
}

/** One rounded edge: its two half-edges are edge k of facet f, 3 f + k. */
type TellCorner = (edge: ConcaveEdge) => void;

/**
 * Inside-corner (concave) radius at every facet, from the turn across its edges.
 *
 * Relation: two facets that meet in a concave edge with turn t (angle between their normals) touch one circle of
 * radius R = d / tan(t / 2), where d is the distance from the edge to the place at which each touches the circle.
 * A facet of a strip (it has a nearly coplanar partner across another edge) touches in the middle of the strip, so
 * d is half its width across the edge; a facet that bends at all its edges touches at its center, a third of the
 * width (so read, a ball of uneven triangles comes out up to about 12 % low). The narrower of the two facets decides.
 *
 * Exact for a fillet in equal strips that touch the arc; strips between points of the arc read low by cos(t / 2)
 * (1 % at 16 degrees per strip). The first and last strip against flat ground see half a turn and so read up to twice
 * as large on that edge, but the smallest edge counts. A turn of more than 60 degrees, or one that leaves the arc by
 * more than 0.2 mm (d tan(t / 4)), is a corner drawn sharp and gives 0. Turns under 1 degree are taken as flat, and
 * edges of slivers narrower than 0.005 mm are passed over. Between facets too narrow to tell, a ball is tried (`cornerBalls.ts`).
 * @param neighbor facet across each half-edge, negative for none
 * @param turnRad signed turn across each half-edge, see `edgeTurns`
 */
export function insideCorners(
  mesh: IndexedMesh,
  neighbor: Int32Array,
  turnRad: Float32Array,
  areaMm2: Float32Array,
  edges = concaveEdges(mesh, neighbor, turnRad, areaMm2),
): InsideCorners {
  const corners = noCorners(areaMm2.length);
  for (const { halfEdge, otherHalfEdge, radiusMm, edgeMm } of edges) {
    keepSmallest(corners, (halfEdge / 3) | 0, radiusMm, edgeMm);
    keepSmallest(corners, (otherHalfEdge / 3) | 0, radiusMm, edgeMm);
  }
  return corners;
}

/** All concave edges of a mesh, each once. */
export function concaveEdges(
  mesh: IndexedMesh,
  neighbor: Int32Array,
  turnRad: Float32Array,
  areaMm2: Float32Array,
): readonly ConcaveEdge[] {
  const edges: ConcaveEdge[] = [];
  eachCorner(mesh, neighbor, turnRad, areaMm2, concave, (edge) => void edges.push(edge));
  return withBalls(mesh, edges);
}

/**
 * Radius of the convex edges by the same relation, per half-edge, NaN where the surface is flat or folds inward. Which of
 * them plies must reach is known only once the show face is (`outerEdges`).
 */
export function convexRadii(
  mesh: IndexedMesh,
  neighbor: Int32Array,
  turnRad: Float32Array,
  areaMm2: Float32Array,
): Float32Array {
  const radiusAt = new Float32Array(neighbor.length).fill(NaN);
  eachCorner(mesh, neighbor, turnRad, areaMm2, convex, ({ halfEdge, otherHalfEdge, radiusMm }) => {
    radiusAt[halfEdge] = radiusMm;
    radiusAt[otherHalfEdge] = radiusMm;
  });
  return radiusAt;
}

/** Radii of drawn half-edges at the half-edges of the children that lie on them. */
export function convexRadiiOfChildren(drawn: Float32Array, { drawnHalfEdge }: FacetSplit): Float32Array {
  return Float32Array.from(drawnHalfEdge, (on) => (on < 0 ? NaN : drawn[on]!));
}

/**
 * Outer edges of the show face per facet: the smallest radius over its edges to other show facets. The edge to a rim or an
 * opening is none: plies end there.
 */
export function outerEdges(
  mesh: IndexedMesh,
  neighbor: Int32Array,
  radiusAt: Float32Array,
  isShow: (facet: number) => boolean,
): InsideCorners {
  const edges = noCorners(mesh.facets.length / 3);
  for (let halfEdge = 0; halfEdge < radiusAt.length; halfEdge++) {
    const radiusMm = radiusAt[halfEdge]!;
    if (!(radiusMm >= 0)) continue;
    const facet = (halfEdge / 3) | 0;
    const other = neighbor[halfEdge]!;
    if (other < 0 || !isShow(facet) || !isShow(other)) continue;
    keepSmallest(edges, facet, radiusMm, halfEdgeLength(mesh, halfEdge));
  }
  return edges;
}

/** Sign of the turn that is looked for. */
const concave = -1;
const convex = 1;

/**
 * The inside corners of the children of a split mesh. The relation takes its width from the drawn facets, so the
 * radius of a drawn edge is handed down to the children that lie at that edge and to no others.
 * @param edges all concave edges of the mesh before splitting
 */
export function insideCornersOfChildren(
  edges: readonly ConcaveEdge[],
  children: IndexedMesh,
  { drawnHalfEdge }: FacetSplit,
  drawnFacetCount: number,
): InsideCorners {
  const radiusAt = new Float32Array(3 * drawnFacetCount).fill(NaN);
  for (const { halfEdge, otherHalfEdge, radiusMm } of edges) {
    radiusAt[halfEdge] = radiusMm;
    radiusAt[otherHalfEdge] = radiusMm;
  }
  const corners = noCorners(children.facets.length / 3);
  for (let halfEdge = 0; halfEdge < drawnHalfEdge.length; halfEdge++) {
    const on = drawnHalfEdge[halfEdge]!;
    if (on < 0) continue;
    const radiusMm = radiusAt[on]!;
    if (radiusMm >= 0)
      keepSmallest(corners, (halfEdge / 3) | 0, radiusMm, halfEdgeLength(children, halfEdge));
  }
  return corners;
}

function noCorners(facetCount: number): InsideCorners {
  return { radiusMm: new Float32Array(facetCount).fill(NaN), edgeMm: new Float32Array(facetCount) };
}

function keepSmallest(
  { radiusMm, edgeMm }: InsideCorners,
  facet: number,
  radius: number,
  edge: number,
): void {
  const known = radiusMm[facet]!;
  if (known <= radius) return;
  radiusMm[facet] = radius;
  edgeMm[facet] = edge;
}

function eachCorner(
  mesh: IndexedMesh,
  neighbor: Int32Array,
  turnRad: Float32Array,
  areaMm2: Float32Array,
  sign: 1 | -1,
  tell: TellCorner,
): void {
  /** Distance from the edge to where the facet touches the circle. */
  function touchDistance(facet: number, halfEdge: number, turn: number, edge: number): number {
    const width = (2 * areaMm2[facet]!) / edge;
    const first = 3 * facet;
    for (let other = first; other < first + 3; other++) {
      if (other !== halfEdge && Math.abs(turnRad[other]!) < partnerFoldShare * turn) return width / 2;
    }
    return width / 3;
  }

  for (let halfEdge = 0; halfEdge < turnRad.length; halfEdge++) {
    const turn = sign * turnRad[halfEdge]!;
    if (!(turn >= leastTurnRad)) continue;
    const facet = (halfEdge / 3) | 0;
    const other = neighbor[halfEdge]!;
    if (other < facet) continue;
    const edge = halfEdgeLength(mesh, halfEdge);
    if (!(edge > 0)) continue;
    let otherHalfEdge = 3 * other;
    while (otherHalfEdge < 3 * other + 2 && neighbor[otherHalfEdge] !== facet) otherHalfEdge++;
    const touch = Math.min(
      touchDistance(facet, halfEdge, turn, edge),
      touchDistance(other, otherHalfEdge, turn, edge),
    );
    if (touch < leastWidthMm / 3) continue;
    const sharp = turn > sharpTurnRad || touch * Math.tan(turn / 4) > largestChordDeviationMm;
    const radiusMm = sharp ? 0 : touch / Math.tan(turn / 2);
    tell({ halfEdge, otherHalfEdge, radiusMm, edgeMm: edge, touchMm: touch });
  }
}
