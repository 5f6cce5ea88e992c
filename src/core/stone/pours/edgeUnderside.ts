import { castRay } from '../../mesh/rayWall';
import type { SurfaceIndex } from '../../mesh/surfaceIndex';
import type { ColumnGrid } from './columnGrid';

/** Halvings of the way to the next column: a pitch of 0.3 mm comes down to 0.3 micrometers. */
const halvings = 10;
/** Taken this far inside the outline, so that an upright wall that leans by rounding is not mistaken for the underside. */
const insideMm = 0.002;
/**
 * What rises by more than `wallMm` over the last `lipMm` before the outline is an upright wall that bulges a little, as where
 * two arcs are drawn in different numbers of steps: the parting keeps to its foot.
 */
const lipMm = 0.03;
const wallMm = 1;

/**
 * How high the pattern's underside comes toward the open columns beside a covered one, out to the outline itself: on a
 * rounded or beveled edge that is where the edge is widest. A sheet that met the edge lower would slip under it and leave
 * a film of stone below the pattern.
 * @param index of the pattern in the pull frame
 * @param opens steps (columns, rows) to the open columns around
 */
export function edgeUndersideMm(
  index: SurfaceIndex,
  { side, x0Mm, y0Mm, pitchMm }: ColumnGrid,
  column: number,
  bottomMm: number,
  opens: readonly (readonly [number, number])[],
): number {
  const below = index.boxMinMm[2] - 1;
  const x = x0Mm + (column % side) * pitchMm;
  const y = y0Mm + Math.floor(column / side) * pitchMm;
  let highest = bottomMm;
  for (const [stepX, stepY] of opens) {
    const stepMm = pitchMm * Math.hypot(stepX, stepY);
    const undersideAt = (share: number) =>
      castRay(index, [x + share * stepX * pitchMm, y + share * stepY * pitchMm, below], [0, 0, 1]);
    let [inside, outside] = [0, 1];
    for (let round = 0; round < halvings; round++) {
      const middle = (inside + outside) / 2;
      if (undersideAt(middle) === null) outside = middle;
      else inside = middle;
    }
    const heightInside = (mm: number) => {
      const hit = undersideAt(Math.max(0, inside - mm / stepMm));
      return hit === null ? bottomMm : below + hit.distanceMm;
    };
    const [atEdge, besideLip] = [heightInside(insideMm), heightInside(lipMm)];
    highest = Math.max(highest, atEdge - besideLip > wallMm ? besideLip : atEdge);
  }
  return highest;
}
