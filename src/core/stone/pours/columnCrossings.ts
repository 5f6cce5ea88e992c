import { keepWithin } from '../../counts';
import type { IndexedMesh } from '../../mesh/types';
import { forEachCrossing, type ColumnGrid } from './columnGrid';

/** Where the columns of a grid meet a surface, column after column, each from the top down. */
export interface ColumnCrossings {
  /** Crossings of column c: `starts[c]` to `starts[c + 1] - 1`. */
  readonly starts: Uint32Array;
  readonly heightMm: Float64Array;
  /** 1 where the facet looks along the pull. */
  readonly looksUp: Uint8Array;
}

const tooDeep =
  'Along this pull the model has so many surfaces over each other that the mold cannot be worked out. Take the part alone out of the file, without infill, or export it with a coarser mesh.';

/**
 * Counted first, so that nothing is laid out for more than can be kept.
 * @throws Problem `pours.crossings`
 */
export function columnCrossings(mesh: IndexedMesh, grid: ColumnGrid): ColumnCrossings {
  const count = grid.side * grid.side;
  const starts = new Uint32Array(count + 1);
  let whole = 0;
  forEachCrossing(mesh, grid, (column) => {
    keepWithin('crossings', ++whole, 'pours.crossings', tooDeep);
    starts[column + 1]!++;
  });
  for (let column = 0; column < count; column++) {
    keepWithin('crossingsOfColumn', starts[column + 1]!, 'pours.crossings', tooDeep);
    starts[column + 1]! += starts[column]!;
  }
  const filled = starts.slice(0, count);
  const heightMm = new Float64Array(whole);
  const looksUp = new Uint8Array(whole);
  forEachCrossing(mesh, grid, (column, height, up) => {
    // Kept in order as they come; a column has few crossings.
    let at = filled[column]!;
    filled[column] = at + 1;
    const first = starts[column]!;
    while (at > first && heightMm[at - 1]! < height) {
      heightMm[at] = heightMm[at - 1]!;
      looksUp[at] = looksUp[at - 1]!;
      at--;
    }
    heightMm[at] = height;
    looksUp[at] = up ? 1 : 0;
  });
  return { starts, heightMm, looksUp };
}
