import { buildAdjacency } from './adjacency';
import { measureBallWalls } from './ballWall';
import {
  concaveEdges,
  convexRadii,
  convexRadiiOfChildren,
  insideCorners,
  insideCornersOfChildren,
  type InsideCorners,
} from './cornerRadius';
import { draftDegrees } from './draft';
import { edgeTurns } from './edgeTurns';
import { facetGeometry, type FacetGeometry } from './facetGeometry';
import { soundNeighbors } from './measure';
import { measureRayWalls } from './rayWall';
import { measureReach } from './reach';
import type { FacetSplit } from './refineForMeasuring';
import { buildSurfaceIndex, slotsOf, type SurfaceIndex } from './surfaceIndex';
import type { IndexedMesh, Measurement } from './types';

/** One measurement per facet as drawn, at its center, whatever it was split into. */
export type DrawnFacets = Pick<
  Measurement,
  | 'facetCount'
  | 'areaMm2'
  | 'rayWallMm'
  | 'ballWallMm'
  | 'draftDeg'
  | 'reach'
  | 'cornerRadiusMm'
  | 'cornerEdgeMm'
>;

/** What of the drawn facets does not depend on the pull. */
export interface DrawnBasis {
  readonly split: FacetSplit;
  readonly geometry: FacetGeometry;
  readonly corners: InsideCorners;
  /** Of the mesh that was split into, for `MeasureHooks.corners`. */
  readonly cornersOfChildren: InsideCorners;
  /** The same for `MeasureHooks.convexRadiusMm`. */
  readonly convexOfChildren: Float32Array;
  /** The drawn facets that were split, and their own walls. */
  readonly splitFacets: Uint32Array;
  readonly rayWallMm: Float32Array;
  readonly ballWallMm: Float32Array;
  /** Of the drawn mesh with the split facets first. */
  readonly index: SurfaceIndex;
}

/**
 * Measures what only the drawn facets can tell: inside corners, whose relation takes the width of whole facets, and the
 * walls at the centers of those that were split.
 * @param mesh as drawn, mm
 * @param children the mesh that it was split into
 */
export function drawnBasis(mesh: IndexedMesh, children: IndexedMesh, split: FacetSplit): DrawnBasis {
  const geometry = facetGeometry(mesh);
  const neighbor = soundNeighbors(buildAdjacency(mesh));
  const turnRad = edgeTurns(mesh, neighbor, geometry.normal);
  const { areaMm2 } = geometry;
  const { childStart } = split;
  const splitFacets: number[] = [];
  const whole: number[] = [];
  for (let facet = 0; facet < areaMm2.length; facet++) {
    (childStart[facet + 1]! - childStart[facet]! > 1 ? splitFacets : whole).push(facet);
  }
  const splitFirst = new Uint32Array(mesh.facets.length);
  [...splitFacets, ...whole].forEach((facet, at) => {
    splitFirst.set(mesh.facets.subarray(3 * facet, 3 * facet + 3), 3 * at);
  });
  const index = buildSurfaceIndex({ positions: mesh.positions, facets: splitFirst });
  const rayWallMm = new Float32Array(areaMm2.length);
  const ballWallMm = new Float32Array(areaMm2.length);
  const splitSlots = slotsOf(index, 0, splitFacets.length);
  measureRayWalls(index, splitSlots, rayWallMm, new Int32Array(areaMm2.length));
  measureBallWalls(index, splitSlots, rayWallMm, ballWallMm);
  const edges = concaveEdges(mesh, neighbor, turnRad, areaMm2);
  return {
    split,
    geometry,
    corners: insideCorners(mesh, neighbor, turnRad, areaMm2, edges),
    cornersOfChildren: insideCornersOfChildren(edges, children, split, areaMm2.length),
    convexOfChildren: convexRadiiOfChildren(convexRadii(mesh, neighbor, turnRad, areaMm2), split),
    splitFacets: Uint32Array.from(splitFacets),
    rayWallMm: rayWallMm.subarray(0, splitFacets.length),
    ballWallMm: ballWallMm.subarray(0, splitFacets.length),
    index,
  };
}

/**
 * The drawn facets along the pull of `measurement`, which is that of the children. A facet that was not split is its
 * own child and has been measured already.
 */
export function drawnFacets(basis: DrawnBasis, measurement: Measurement): DrawnFacets {
  const { geometry, corners, splitFacets, index } = basis;
  const { childStart } = basis.split;
  const { areaMm2, normal } = geometry;
  const facetCount = areaMm2.length;
  const rayWallMm = new Float32Array(facetCount);
  const ballWallMm = new Float32Array(facetCount);
  const reach = new Uint8Array(facetCount);
  for (let facet = 0; facet < facetCount; facet++) {
    const child = childStart[facet]!;
    rayWallMm[facet] = measurement.rayWallMm[child]!;
    ballWallMm[facet] = measurement.ballWallMm[child]!;
    reach[facet] = measurement.reach[child]!;
  }
  const ownReach = new Uint8Array(index.facetCount);
  measureReach(index, measurement.pull, slotsOf(index, 0, splitFacets.length), ownReach);
  splitFacets.forEach((facet, at) => {
    rayWallMm[facet] = basis.rayWallMm[at]!;
    ballWallMm[facet] = basis.ballWallMm[at]!;
    reach[facet] = ownReach[at]!;
  });
  return {
    facetCount,
    areaMm2,
    rayWallMm,
    ballWallMm,
    draftDeg: draftDegrees(normal, measurement.pull),
    reach,
    cornerRadiusMm: corners.radiusMm,
    cornerEdgeMm: corners.edgeMm,
  };
}
