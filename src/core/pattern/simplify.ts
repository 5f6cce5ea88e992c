/** Fewer triangles for a made shell, without taking its draft from it. */
import { CloseFacets } from '../mesh/closeFacets';
import { facetLeans, onRim, type Shell } from './facetLeans';
import { faceKind, ShrinkingMesh } from './shrinkingMesh';
import { cornersOf } from '../mesh/triangleDistance';

/** How far the surface may move; farther, step by step, while there are more triangles than wanted. */
const shiftsMm = [0.004, 0.008, 0.012, 0.016, 0.024, 0.032] as const;
/** Wanted in any case. */
const leastShiftMm = 0.004;
const wantedTriangles = 60_000;
const mostSweeps = 24;
/** A sweep that takes a smaller share of the vertices is the last one. */
const leastShare = 0.02;

export interface SimplifiedShell extends Shell {
  /** Farthest that the surface moved, of many places that were looked at. */
  readonly movedMm: number;
}

/** Every so many vertices of the full mesh is looked at. */
const lookedAtEvery = 16;

/**
 * Pulls vertices onto neighbors while the surface stays where it is to within a few micrometers; refused where a facet would fall
 * under the draft, become a sliver, or leave the rim.
 * @param leastDraftDeg of the facets that it makes
 * @param stepMm of the grid that the shell was cut from
 */
export function simplifyShell(shell: Shell, leastDraftDeg: number, stepMm: number): SimplifiedShell {
  const { positions } = shell.mesh;
  const facets = shell.mesh.facets.slice();
  const { draftDeg, isCore } = facetLeans(shell);
  const kinds = Uint8Array.from(draftDeg, (deg, f) =>
    deg === onRim ? faceKind.land : isCore[f] === 1 ? faceKind.core : faceKind.show,
  );
  const leastSine = Math.sin((leastDraftDeg * Math.PI) / 180);
  const mesh = new ShrinkingMesh(positions, facets, kinds, { leastSine, stepMm });
  for (const shiftMm of shiftsMm) {
    if (shiftMm > leastShiftMm && mesh.liveFacets <= wantedTriangles) break;
    for (let sweep = 0; sweep < mostSweeps; sweep++)
      if (mesh.sweep(shiftMm) < (leastShare * mesh.liveFacets) / 2) break;
  }
  const left = compact({ ...shell, mesh: { positions, facets: mesh.left() } });
  return { ...left, movedMm: farthestFrom(left, positions, stepMm) };
}

/** How far the vertices of the full mesh lie from what is left of it. */
function farthestFrom({ mesh }: Shell, positions: Float64Array, stepMm: number): number {
  const left = new CloseFacets(cornersOf(mesh.positions, mesh.facets), 3 * stepMm);
  let farthest = 0;
  for (let at = 0; at < positions.length; at += 3 * lookedAtEvery)
    farthest = Math.max(
      farthest,
      left.distanceMm(positions[at]!, positions[at + 1]!, positions[at + 2]!, stepMm),
    );
  return farthest;
}

/** Without the vertices that no facet uses; the others keep their order, so that the core face still follows the show face. */
function compact({ mesh: { positions, facets }, coreFrom, rimMm }: Shell): Shell {
  const number = new Int32Array(positions.length / 3).fill(-1);
  const kept: number[] = [];
  for (const vertex of facets) number[vertex] = 0;
  let shown = 0;
  for (let vertex = 0; vertex < number.length; vertex++) {
    if (number[vertex]! < 0) continue;
    if (vertex < coreFrom) shown++;
    number[vertex] = kept.length / 3;
    kept.push(positions[3 * vertex]!, positions[3 * vertex + 1]!, positions[3 * vertex + 2]!);
  }
  return {
    mesh: { positions: Float64Array.from(kept), facets: facets.map((vertex) => number[vertex]!) },
    coreFrom: shown,
    rimMm,
  };
}
