import { buildAdjacency } from '../../mesh/adjacency';
import { measureBallWalls } from '../../mesh/ballWall';
import { edgeTurns } from '../../mesh/edgeTurns';
import { facetGeometry } from '../../mesh/facetGeometry';
import { measureRayWalls } from '../../mesh/rayWall';
import { longRayRatio } from '../../mesh/skinSides';
import { buildSurfaceIndex, slotOfFacet, slotsOf, type SurfaceIndex } from '../../mesh/surfaceIndex';
import type { IndexedMesh } from '../../mesh/types';
import type { ThinnestStone } from '../moldGeometry';
import type { CastHalf } from './castBySolids';
import { findKnifeEdges, type KnifeEdges } from './knifeEdges';
import { leastStoneMm } from './leastStone';

export interface WeakStone {
  /** null when no two faces stand face to face. */
  readonly thinnest: ThinnestStone | null;
  readonly knifeEdges: KnifeEdges | null;
}

/** Faces are the two sides of a web or rib when they lean toward each other by less than 20 degrees. */
const facingCosine = -Math.cos((20 * Math.PI) / 180);
const chunk = 32_768;

/**
 * Thinnest stone of one half: the least ray wall over its working faces, taken where two faces stand face to face and a
 * ball of nearly that size fits between them, so that the corners of the block and of the print don't count. Knife edges
 * are left out, since their wall runs out to nothing; they are listed instead. Left out too is what stands
 * thinner between the parting and the print than the parting is known; between two places of the print, every thickness
 * counts.
 * @param pitchMm of the columns of the parting
 */
export function weakStone(half: CastHalf, pitchMm: number, onProgress: (share: number) => void): WeakStone {
  const flakeMm = Math.max(leastStoneMm, pitchMm);
  const { mesh, isLand } = facesFirst(half);
  const faceCount = half.isFace.reduce((sum, flag) => sum + flag, 0);
  const { normal, centerMm } = facetGeometry(mesh);
  const { neighbor } = buildAdjacency(mesh);
  const turnRad = edgeTurns(mesh, neighbor, normal);
  const index = buildSurfaceIndex(mesh);
  const { onKnife, knifeEdges } = findKnifeEdges(mesh, index, neighbor, turnRad, normal);

  const rayWallMm = new Float32Array(mesh.facets.length / 3);
  const rayFacet = new Int32Array(rayWallMm.length);
  for (let from = 0; from < faceCount; from += chunk) {
    onProgress(from / faceCount);
    const slots = slotsOf(index, from, Math.min(faceCount, from + chunk));
    measureRayWalls(index, slots, rayWallMm, rayFacet);
  }
  const facing: number[] = [];
  for (let facet = 0; facet < faceCount; facet++) {
    const hit = rayFacet[facet]!;
    if (hit < 0 || onKnife[facet] === 1 || onKnife[hit] === 1) continue;
    if (rayWallMm[facet]! < flakeMm && (isLand[facet] === 1 || isLand[hit] === 1)) continue;
    let cosine = 0;
    for (let axis = 0; axis < 3; axis++) cosine += normal[3 * facet + axis]! * normal[3 * hit + axis]!;
    if (cosine < facingCosine) facing.push(facet);
  }
  facing.sort((one, other) => rayWallMm[one]! - rayWallMm[other]!);
  const thinnestFacet = firstClear(index, facing, rayWallMm);
  const at = 3 * thinnestFacet;
  return {
    thinnest:
      thinnestFacet < 0
        ? null
        : { mm: rayWallMm[thinnestFacet]!, atMm: [centerMm[at]!, centerMm[at + 1]!, centerMm[at + 2]!] },
    knifeEdges,
  };
}

/**
 * First facet in order whose wall is clear: its ray no longer than `longRayRatio` times its ball. A longer one runs along a
 * corner, not through a web. Balls are slow, and few of them are ever measured. -1 when no wall is clear.
 */
function firstClear(index: SurfaceIndex, inOrder: readonly number[], rayWallMm: Float32Array): number {
  const slots = slotOfFacet(index);
  const balls = new Float32Array(index.facetCount);
  for (let from = 0, count = 64; from < inOrder.length; from += count, count *= 2) {
    const next = inOrder.slice(from, from + count);
    measureBallWalls(
      index,
      Uint32Array.from(next, (facet) => slots[facet]!),
      rayWallMm,
      balls,
    );
    const clear = next.find((facet) => rayWallMm[facet]! <= longRayRatio * balls[facet]!);
    if (clear !== undefined) return clear;
  }
  return -1;
}

/** The half with its working faces before all others. */
function facesFirst({ mesh: { positions, facets }, isFace, isLand }: CastHalf) {
  const ordered = new Uint32Array(facets.length);
  const isLandInOrder = new Uint8Array(isLand.length);
  let end = 0;
  for (const flag of [1, 0]) {
    for (let facet = 0; facet < isFace.length; facet++) {
      if (isFace[facet] !== flag) continue;
      ordered.set(facets.subarray(3 * facet, 3 * facet + 3), 3 * end);
      isLandInOrder[end] = isLand[facet]!;
      end++;
    }
  }
  return { mesh: { positions, facets: ordered } as IndexedMesh, isLand: isLandInOrder };
}
