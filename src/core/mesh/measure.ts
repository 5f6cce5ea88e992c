import { buildAdjacency, type Adjacency } from './adjacency';
import { measureBallWalls } from './ballWall';
import { convexRadii, insideCorners, outerEdges, type InsideCorners } from './cornerRadius';
import { draftDegrees } from './draft';
import { edgeTurns } from './edgeTurns';
import { facetGeometry, type FacetGeometry } from './facetGeometry';
import { facetKinds } from './facetKinds';
import { measureRayWalls } from './rayWall';
import { measureReach } from './reach';
import { buildSurfaceIndex, slotsFrom, type SurfaceIndex } from './surfaceIndex';
import { facetKind, type IndexedMesh, type Measurement, type Vec3 } from './types';
import { Problem } from '../problem';

/** Walls of all facets, measured elsewhere (e.g. shared between two workers). */
export interface MeasuredWalls {
  readonly rayWallMm: Float32Array;
  readonly rayFacet: Int32Array;
  readonly ballWallMm: Float32Array;
}

/** What a caller may bring along or listen to. */
export interface MeasureHooks {
  /** What is being done, in the maker's words, and the share done from 0 to 1. */
  readonly onProgress?: (doing: string, share: number) => void;
  readonly walls?: MeasuredWalls;
  /** `Measurement.reach` along the same pull, when measured elsewhere. */
  readonly reach?: Uint8Array;
  /** Of the same mesh, to save building it again. */
  readonly index?: SurfaceIndex;
  readonly surroundings?: FacetSurroundings;
  /** Inside corners per facet; given when the mesh was split and its edges tell the wrong widths. */
  readonly corners?: InsideCorners;
  /** Convex radii per half-edge (`convexRadii`), given for the same reason. */
  readonly convexRadiusMm?: Float32Array;
}

/** What is known of the facets and their neighbors before any wall is measured and whatever the pull. */
export interface FacetSurroundings {
  readonly geometry: FacetGeometry;
  /** As in `Measurement`. */
  readonly neighbor: Int32Array;
  readonly turnRad: Float32Array;
  readonly corners: InsideCorners;
  readonly convexRadiusMm: Float32Array;
  readonly closed: boolean;
}

export function facetSurroundings(
  mesh: IndexedMesh,
  adjacency: Adjacency,
  { corners, convexRadiusMm }: Pick<MeasureHooks, 'corners' | 'convexRadiusMm'> = {},
): FacetSurroundings {
  const geometry = facetGeometry(mesh);
  const neighbor = soundNeighbors(adjacency);
  const turnRad = edgeTurns(mesh, neighbor, geometry.normal);
  return {
    geometry,
    neighbor,
    turnRad,
    corners: corners ?? insideCorners(mesh, neighbor, turnRad, geometry.areaMm2),
    convexRadiusMm: convexRadiusMm ?? convexRadii(mesh, neighbor, turnRad, geometry.areaMm2),
    closed: adjacency.openEdges === 0 && adjacency.crowdedEdges === 0 && adjacency.misorientedEdges === 0,
  };
}

/** Facets between two reports of progress. */
const chunk = 32_768;

/**
 * Measures one body (or all of them together): walls by ray and by ball, draft, reach, inside corners and what each
 * facet is to the mold. Deterministic; time grows in proportion to the facets.
 * @param mesh in mm
 * @param pull direction in which the negative leaves the show face; made a unit vector
 * @throws Problem `pull.zero` when the pull has no direction
 */
export function measurePart(mesh: IndexedMesh, pull: Vec3, hooks: MeasureHooks = {}): Measurement {
  const unitPull = unitVector(pull);
  const facetCount = mesh.facets.length / 3;
  const report = hooks.onProgress ?? (() => {});
  const inChunks = (
    doing: string,
    fromShare: number,
    toShare: number,
    job: (from: number, to: number) => void,
  ) => {
    for (let from = 0; from < facetCount; from += chunk) {
      report(doing, fromShare + ((toShare - fromShare) * from) / facetCount);
      job(from, Math.min(facetCount, from + chunk));
    }
  };

  report('finding what lies next to what', 0);
  const { geometry, neighbor, turnRad, corners, convexRadiusMm, closed } =
    hooks.surroundings ?? facetSurroundings(mesh, buildAdjacency(mesh), hooks);
  const needsIndex = !(hooks.walls && hooks.reach);
  const index = needsIndex ? (hooks.index ?? buildSurfaceIndex(mesh)) : null;

  let walls = hooks.walls;
  if (!walls && index) {
    const rayWallMm = new Float32Array(facetCount);
    const rayFacet = new Int32Array(facetCount);
    const ballWallMm = new Float32Array(facetCount);
    inChunks('measuring walls along the normal', 0.1, 0.3, (from, to) => {
      measureRayWalls(index, slotsFrom(from, to), rayWallMm, rayFacet);
    });
    inChunks('measuring walls by the largest sphere', 0.3, 0.75, (from, to) => {
      measureBallWalls(index, slotsFrom(from, to), rayWallMm, ballWallMm);
    });
    walls = { rayWallMm, rayFacet, ballWallMm };
  }
  let reach = hooks.reach;
  if (!reach && index) {
    const measured = new Uint8Array(facetCount);
    inChunks('looking for undercuts', 0.75, 0.9, (from, to) => {
      measureReach(index, unitPull, slotsFrom(from, to), measured);
    });
    reach = measured;
  }
  if (!walls || !reach) throw new Error('walls and reach are measured above when not given');

  report('telling walls from ribs and rims', 0.9);
  const draftDeg = draftDegrees(geometry.normal, unitPull);
  const { kind, cornerOf } = facetKinds(mesh, { geometry, ...walls, draftDeg, reach, neighbor, turnRad });
  const outer = outerEdges(mesh, neighbor, convexRadiusMm, (facet) => kind[facet] === facetKind.show);
  report('telling walls from ribs and rims', 1);
  return {
    facetCount,
    pull: unitPull,
    ...geometry,
    rayWallMm: walls.rayWallMm,
    rayFacet: walls.rayFacet,
    ballWallMm: walls.ballWallMm,
    draftDeg,
    reach,
    kind,
    cornerOf,
    cornerRadiusMm: corners.radiusMm,
    cornerEdgeMm: corners.edgeMm,
    outerEdgeRadiusMm: outer.radiusMm,
    outerEdgeMm: outer.edgeMm,
    neighbor,
    turnRad,
    closed,
  };
}

/** @throws Problem `pull.zero` when `direction` has no direction */
export function unitVector(direction: Vec3): Vec3 {
  const length = Math.hypot(...direction);
  if (!(length > 0) || !Number.isFinite(length)) {
    throw new Problem('pull.zero', 'The pull has no direction: give x, y, z of which at least one is not 0.');
  }
  return [direction[0] / length, direction[1] / length, direction[2] / length];
}

/** Neighbors without those that are wound the other way round: a fold between them means nothing. */
export function soundNeighbors(adjacency: Adjacency): Int32Array {
  if (adjacency.misorientedEdges === 0) return adjacency.neighbor;
  const neighbor = adjacency.neighbor.slice();
  for (let halfEdge = 0; halfEdge < neighbor.length; halfEdge++) {
    if (adjacency.sameWay[halfEdge] === 1) neighbor[halfEdge] = -1;
  }
  return neighbor;
}
