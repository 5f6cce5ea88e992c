import type { SurfaceIndex } from '../../mesh/surfaceIndex';
import type { ColumnGrid, ColumnHeights } from './columnGrid';
import { edgeUndersideMm } from './edgeUnderside';

/** Values of `OpenColumns.region`. */
export const columnRegion = { pattern: 0, outside: 1, window: 2 } as const;

export interface OpenColumns {
  /** `columnRegion` per column. */
  readonly region: Uint8Array;
  /** Height of the parting at covered columns beside open ones, and at those; NaN elsewhere. */
  readonly edgeMm: Float32Array;
  /** Of these, the ones at the outer outline (the others border windows). */
  readonly isOuterEdge: Uint8Array;
}

/**
 * Which columns the pattern leaves open, and at which height its edge lies beside them: the underside of the edge column
 * out to the very edge, raised to that of its neighbors, so that the parting always meets the pattern's side and never
 * slips under its rim.
 * @param index of the pattern in the pull frame
 * @param liftMm by which the parting stays above the very edge
 */
export function openColumns(
  index: SurfaceIndex,
  grid: ColumnGrid,
  { bottomMm, topMm }: ColumnHeights,
  liftMm: number,
): OpenColumns {
  const { side } = grid;
  const count = side * side;
  const region = new Uint8Array(count);
  for (let column = 0; column < count; column++) {
    if (topMm[column] === -Infinity && bottomMm[column] === Infinity) region[column] = columnRegion.window;
  }
  floodOutside(region, side);
  const isEdge = new Uint8Array(count);
  const isOuterEdge = new Uint8Array(count);
  for (let row = 1; row < side - 1; row++) {
    for (let column = row * side + 1; column < (row + 1) * side - 1; column++) {
      if (region[column] !== columnRegion.pattern) continue;
      for (const other of around(column, side)) {
        if (region[other] === columnRegion.outside) isOuterEdge[column] = 1;
        if (region[other] !== columnRegion.pattern) isEdge[column] = 1;
      }
    }
  }
  const undersideMm = bottomMm.slice();
  for (let column = side; column < count - side; column++) {
    if (isEdge[column] === 0) continue;
    const opens = steps.filter(([i, j]) => region[column + j * side + i] !== columnRegion.pattern);
    undersideMm[column] = edgeUndersideMm(index, grid, column, bottomMm[column]!, opens);
  }
  const edgeMm = new Float32Array(count).fill(NaN);
  for (let column = side; column < count - side; column++) {
    if (isEdge[column] === 0) continue;
    let highest = undersideMm[column]!;
    for (const other of around(column, side)) {
      if (isEdge[other] === 1 && undersideMm[other]! > highest) highest = undersideMm[other]!;
    }
    edgeMm[column] = highest + liftMm;
  }
  levelBeside(edgeMm, isOuterEdge, region, side);
  return { region, edgeMm, isOuterEdge };
}

/** To the eight columns around one. */
const steps = [-1, 0, 1]
  .flatMap((j) => [-1, 0, 1].map((i) => [i, j] as const))
  .filter(([i, j]) => i !== 0 || j !== 0);

/** Open columns beside the edge take its highest height there, so that the parting crosses the outline level. */
function levelBeside(edgeMm: Float32Array, isOuterEdge: Uint8Array, region: Uint8Array, side: number): void {
  const beside: [column: number, heightMm: number][] = [];
  for (let column = side + 1; column < region.length - side - 1; column++) {
    if (region[column] === columnRegion.pattern) continue;
    let highest = -Infinity;
    for (const other of around(column, side)) {
      if (region[other] === columnRegion.pattern && edgeMm[other]! > highest) highest = edgeMm[other]!;
    }
    if (highest > -Infinity) beside.push([column, highest]);
  }
  for (const [column, heightMm] of beside) {
    edgeMm[column] = heightMm;
    if (region[column] === columnRegion.outside) isOuterEdge[column] = 1;
  }
}

export function around(column: number, side: number): readonly number[] {
  return [
    column - side - 1,
    column - side,
    column - side + 1,
    column - 1,
    column + 1,
    column + side - 1,
    column + side,
    column + side + 1,
  ];
}

/** Turns the open columns that hang together with the border into `outside`. */
function floodOutside(region: Uint8Array, side: number): void {
  const waiting = [0];
  region[0] = columnRegion.outside;
  const look = (column: number) => {
    if (region[column] !== columnRegion.window) return;
    region[column] = columnRegion.outside;
    waiting.push(column);
  };
  for (let column = waiting.pop(); column !== undefined; column = waiting.pop()) {
    const i = column % side;
    if (i > 0) look(column - 1);
    if (i < side - 1) look(column + 1);
    if (column >= side) look(column - side);
    if (column < side * (side - 1)) look(column + side);
  }
}
