/** What the made show face adds to the import and takes off it, facet by facet. */
import type { IndexedMesh } from '../mesh/types';
import { CloseFacets } from '../mesh/closeFacets';
import { centerOf, facetLeans, onRim, type Shell } from './facetLeans';
import { cornersOf } from '../mesh/triangleDistance';

/** Farther than this a place is said to be this far. */
export const farthestMm = 25;

/** Facets by the edge of a cell, mm, to look for near ones. */
const cellMm = 3;

/**
 * Signed distance in mm from the centers of the show facets to the import: more than 0 where the pattern stands out, less where
 * it is drawn in. NaN for facets of core face and rim.
 * @param drawn the import in the frame of the pattern
 * @param standsOut whether a place lies outside of the import, to a step of the grid, `stepMm`
 */
export function changeMap(
  shell: Shell,
  drawn: IndexedMesh,
  standsOut: (x: number, y: number, z: number) => boolean,
  stepMm: number,
): Float32Array {
  const { mesh } = shell;
  const { isCore, draftDeg } = facetLeans(shell);
  const all = new CloseFacets(cornersOf(drawn.positions, drawn.facets), cellMm);
  // Inside, the core face and ribs of the import are nearer than its outside and say nothing.
  // Nodes closer to a surface than half a step belong to it, so outside begins a little past it.
  const byMm = 0.6 * stepMm;
  const isNearOutside = (x: number, y: number, z: number) =>
    [-byMm, 0, byMm].some(
      (by) => standsOut(x + by, y, z) || standsOut(x, y + by, z) || standsOut(x, y, z + by),
    );
  const outer = cornersOf(drawn.positions, facetsAt(drawn, isNearOutside));
  const outside = outer.length === 0 ? all : new CloseFacets(outer, cellMm);
  const changeMm = new Float32Array(isCore.length).fill(Number.NaN);
  for (let f = 0; f < changeMm.length; f++) {
    if (isCore[f] === 1 || draftDeg[f] === onRim) continue;
    const [x, y, z] = centerOf(mesh, f);
    changeMm[f] = standsOut(x, y, z)
      ? Math.min(farthestMm, all.distanceMm(x, y, z, farthestMm))
      : -Math.min(farthestMm, outside.distanceMm(x, y, z, farthestMm));
  }
  return changeMm;
}

/** Facets whose center is such a place. */
function facetsAt(mesh: IndexedMesh, isWanted: (x: number, y: number, z: number) => boolean): Uint32Array {
  return mesh.facets.filter((_, corner) => isWanted(...centerOf(mesh, Math.floor(corner / 3))));
}
