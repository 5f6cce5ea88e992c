import { keepWithin } from '../../counts';
import type { IndexedMesh } from '../../mesh/types';

/** Square grid of columns along the pull, in the pull frame; column (i, j) stands at x0 + i pitch, y0 + j pitch. */
export interface ColumnGrid {
  readonly side: number;
  readonly x0Mm: number;
  readonly y0Mm: number;
  readonly pitchMm: number;
}

/** What the pattern shows in each column (index i + side j); -Infinity or Infinity where nothing stands. */
export interface ColumnHeights {
  /** Highest facet that looks along the pull: the show face. */
  readonly topMm: Float32Array;
  /** Highest facet that looks against it: where the column leaves the first wall it meets. */
  readonly exitMm: Float32Array;
  /** Lowest facet that looks against it. */
  readonly bottomMm: Float32Array;
}

/** A column this little outside a facet (share of it) still meets it, so that none slips through a shared edge. */
const edgeTolerance = 1e-9;

/**
 * Calls `hit` with each column that a facet covers, the height there, and whether the facet looks along the pull.
 * @throws Problem `pours.columns` for a grid of more columns than can be worked with
 */
export function forEachCrossing(
  { positions, facets }: IndexedMesh,
  { side, x0Mm, y0Mm, pitchMm }: ColumnGrid,
  hit: (column: number, heightMm: number, looksUp: boolean) => void,
): void {
  keepWithin(
    'columns',
    side * side,
    'pours.columns',
    'The columns along the pull are too many to be worked with.',
  );
  const perMm = 1 / pitchMm;
  for (let at = 0; at < facets.length; at += 3) {
    const a = 3 * facets[at]!;
    const b = 3 * facets[at + 1]!;
    const c = 3 * facets[at + 2]!;
    const ax = (positions[a]! - x0Mm) * perMm;
    const ay = (positions[a + 1]! - y0Mm) * perMm;
    const az = positions[a + 2]!;
    const bx = (positions[b]! - x0Mm) * perMm - ax;
    const by = (positions[b + 1]! - y0Mm) * perMm - ay;
    const bz = positions[b + 2]! - az;
    const cx = (positions[c]! - x0Mm) * perMm - ax;
    const cy = (positions[c + 1]! - y0Mm) * perMm - ay;
    const cz = positions[c + 2]! - az;
    const twice = bx * cy - cx * by;
    // A facet that stands along the pull is met by no column.
    if (Math.abs(twice) < 1e-9) continue;
    const fromColumn = Math.max(0, Math.ceil(ax + Math.min(0, bx, cx) - edgeTolerance));
    const toColumn = Math.min(side - 1, Math.floor(ax + Math.max(0, bx, cx) + edgeTolerance));
    if (fromColumn > toColumn) continue;
    const fromRow = Math.max(0, Math.ceil(ay + Math.min(0, by, cy) - edgeTolerance));
    const toRow = Math.min(side - 1, Math.floor(ay + Math.max(0, by, cy) + edgeTolerance));
    const perTwice = 1 / twice;
    for (let row = fromRow; row <= toRow; row++) {
      const y = row - ay;
      for (let column = fromColumn; column <= toColumn; column++) {
        const x = column - ax;
        const shareB = (x * cy - cx * y) * perTwice;
        const shareC = (bx * y - x * by) * perTwice;
        if (shareB < -edgeTolerance || shareC < -edgeTolerance || shareB + shareC > 1 + edgeTolerance)
          continue;
        hit(row * side + column, az + shareB * bz + shareC * cz, twice > 0);
      }
    }
  }
}

/** @param mesh in the pull frame */
export function measureColumns(mesh: IndexedMesh, grid: ColumnGrid): ColumnHeights {
  const count = grid.side * grid.side;
  const topMm = new Float32Array(count).fill(-Infinity);
  const exitMm = new Float32Array(count).fill(-Infinity);
  const bottomMm = new Float32Array(count).fill(Infinity);
  forEachCrossing(mesh, grid, (column, heightMm, looksUp) => {
    if (looksUp) {
      if (heightMm > topMm[column]!) topMm[column] = heightMm;
    } else {
      if (heightMm > exitMm[column]!) exitMm[column] = heightMm;
      if (heightMm < bottomMm[column]!) bottomMm[column] = heightMm;
    }
  });
  // Where a surface is torn a column may lack one of its ends: it then has no thickness there.
  for (let column = 0; column < count; column++) {
    if (topMm[column]! < exitMm[column]!) topMm[column] = exitMm[column]!;
    if (topMm[column] === -Infinity || exitMm[column]! > -Infinity) continue;
    exitMm[column] = topMm[column]!;
    bottomMm[column] = topMm[column]!;
  }
  return { topMm, exitMm, bottomMm };
}
