import type { IndexedMesh } from '../../mesh/types';
import { columnCrossings } from './columnCrossings';
import type { ColumnGrid } from './columnGrid';

/** The pattern's material, summed column by column. */
export interface ColumnMaterial {
  readonly materialMm3: number;
  /** Of it, what lies below the parting level. */
  readonly belowPartingMm3: number;
  /** Stone between two walls of one column: it belongs to the positive and locks it. */
  readonly gapMm3: number;
  /** Middle of the tallest such gap, in the pull frame; null when there is none. */
  readonly gapAtMm: readonly [number, number, number] | null;
  /** Share of the covered columns, 0 to 1, whose walls do not open and close in turn: holes or turned facets. */
  readonly brokenShare: number;
}

/** Crossings nearer than this that look the same way are one: a shared edge, or a facet that lies there twice. */
const sameMm = 1e-5;
/** Gaps lower than this are rounding. */
const leastGapMm = 0.01;

/**
 * Reads each column from above: a facet that looks along the pull goes into the material, one that looks against it comes
 * out. Bodies that overlap count once. A column that never comes out ends at its last crossing.
 * @param mesh in the pull frame
 */
export function columnMaterial(mesh: IndexedMesh, grid: ColumnGrid, partingMm: number): ColumnMaterial {
  const { starts, heightMm: heights, looksUp } = columnCrossings(mesh, grid);
  const count = starts.length - 1;
  const area = grid.pitchMm ** 2;
  let materialMm = 0;
  let belowPartingMm = 0;
  let gapMm = 0;
  let tallestMm = leastGapMm;
  let gapAtMm: [number, number, number] | null = null;
  let covered = 0;
  let broken = 0;
  for (let column = 0; column < count; column++) {
    const end = starts[column + 1]!;
    let at = starts[column]!;
    if (at === end) continue;
    covered++;
    let depth = 0;
    let entered = 0;
    let left = NaN;
    let isBroken = false;
    while (at < end) {
      const height = heights[at]!;
      const up = looksUp[at]!;
      at++;
      while (at < end && looksUp[at] === up && height - heights[at]! < sameMm) at++;
      if (up === 1) {
        if (depth === 0) {
          entered = height;
          if (left - height > leastGapMm) {
            gapMm += left - height;
            if (left - height > tallestMm) {
              tallestMm = left - height;
              gapAtMm = [
                grid.x0Mm + (column % grid.side) * grid.pitchMm,
                grid.y0Mm + Math.floor(column / grid.side) * grid.pitchMm,
                (left + height) / 2,
              ];
            }
          }
        }
        depth++;
      } else if (depth > 0) {
        depth--;
        if (depth === 0) leave(height);
      } else isBroken = true;
    }
    if (depth > 0) {
      isBroken = true;
      leave(heights[end - 1]!);
    }
    if (isBroken) broken++;

    function leave(height: number): void {
      materialMm += entered - height;
      belowPartingMm += Math.max(0, Math.min(entered, partingMm) - height);
      left = height;
    }
  }
  return {
    materialMm3: materialMm * area,
    belowPartingMm3: belowPartingMm * area,
    gapMm3: gapMm * area,
    gapAtMm,
    brokenShare: covered === 0 ? 0 : broken / covered,
  };
}
