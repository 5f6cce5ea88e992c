/** How much of what is drawn the made show face leaves out: edges that it rounds, draft that it takes, what is too narrow for it. */
import { farthestMm } from './changeMap';
import { CloseFacets } from '../mesh/closeFacets';
import { facetLeans, onRim, type Shell } from './facetLeans';
import type { PatternGrid } from './grid';
import { cornersOf } from '../mesh/triangleDistance';

/**
 * Farthest that a place of the drawn part, seen along the pull, stands out of the made show face; mm, 0 where none does.
 * @param topMm heights of the drawn part by column; -Infinity where it is missed
 * @param coreMm distance from the core, to the nodes
 * @param showMm that distance at the show face
 */
export function takenOffMm(
  shell: Shell,
  grid: PatternGrid,
  topMm: Float64Array,
  coreMm: Float32Array,
  showMm: number,
): number {
  const { draftDeg, isCore } = facetLeans(shell);
  const { positions, facets } = shell.mesh;
  const isShow = (corner: number) => {
    const f = Math.floor(corner / 3);
    return isCore[f] === 0 && draftDeg[f] !== onRim;
  };
  const show = new CloseFacets(
    cornersOf(
      positions,
      facets.filter((_, corner) => isShow(corner)),
    ),
    3,
  );
  const { countX, countY, stepMm, layerMm, lowXMm, lowYMm, lowZMm } = grid;
  let most = 0;
  for (let column = 0; column < topMm.length; column++) {
    const top = topMm[column]!;
    if (top <= shell.rimMm) continue;
    const below = Math.floor((top - lowZMm) / layerMm);
    // Deeper than this under the show face: nothing is taken off there.
    if (coreMm[below * countX * countY + column]! < showMm - stepMm) continue;
    if (coreMm[(below + 1) * countX * countY + column]! < showMm) continue;
    const i = column % countX;
    const j = (column - i) / countX;
    const off = show.distanceMm(lowXMm + i * stepMm, lowYMm + j * stepMm, top, farthestMm);
    most = Math.max(most, Math.min(farthestMm, off));
  }
  return most;
}
