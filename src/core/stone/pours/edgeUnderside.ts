import { castRay } from '../../mesh/rayWall';
import type { SurfaceIndex } from '../../mesh/surfaceIndex';
import type { ColumnGrid } from './columnGrid';

/** Halvings of the way to the next column: a pitch of 0.3 mm comes down to 2 micrometers. */
const halvings = 7;

/**
 * How high the pattern's underside comes between a covered column and the open ones beside it. A sheet that met the edge
 * lower would slip under it and leave a film of stone below the pattern.
 *
 * What rises faster than 45 degrees is the side of a wall, not its underside.
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
    let [inside, outside] = [0, 1];
    for (let round = 0; round < halvings; round++) {
      const share = (inside + outside) / 2;
      const hit = castRay(
        index,
        [x + share * stepX * pitchMm, y + share * stepY * pitchMm, below],
        [0, 0, 1],
      );
      const height = hit === null ? Infinity : below + hit.distanceMm;
      if (height - bottomMm > share * stepMm) {
        outside = share;
      } else {
        inside = share;
        if (height > highest) highest = height;
      }
    }
  }
  return highest;
}
