import type { ColumnGrid, ColumnHeights } from './columnGrid';
import { levelBand } from './levelBand';
import { around, columnRegion, type OpenColumns } from './openColumns';
import { spreadHeights } from './spreadHeights';

/** The parting as a height per column, and how far the sheet that follows it may stray. */
export interface PartingHeights {
  readonly heightMm: Float32Array;
  readonly lowMm: Float32Array;
  readonly highMm: Float32Array;
  /** Land of the outer rim, spread over the whole grid as if the pattern were filled. */
  readonly landMm: Float32Array;
  /** Middle of the outer rim's heights: where the box is parted. */
  readonly boxPartingMm: number;
  /** The height of a flat land; null when the rim rises and falls. */
  readonly flatLandMm: number | null;
}

/** Rims that rise and fall by less than this lie flat. */
const flatMm = 0.02;
const roundingMm = 5e-4;
/** Width of the level band beside an edge that rises and falls. */
const levelMm = 2;
/** The sheet follows lands that are not flat to this. */
const landToleranceMm = 0.03;

/**
 * Where the two halves part, column by column.
 *
 * - Outside and in windows the parting is a land: a band of it is level with the pattern's edge beside it, and in between
 *   it spreads from edge to edge.
 * - It runs on level into the first covered column, so that no thin flap of stone stands against the pattern's side.
 * - Further in it stays inside the first wall that a column meets from the show side, so that only the pattern's own
 *   skins touch stone. What lies in a column under that wall, undercuts included, belongs to the positive.
 */
export function partingHeights(
  { side, pitchMm }: ColumnGrid,
  columns: ColumnHeights,
  open: OpenColumns,
): PartingHeights {
  const { topMm, exitMm } = columns;
  const { region, edgeMm, isOuterEdge } = open;
  const outerEdgeMm = edgeMm.map((height, column) => (isOuterEdge[column] === 1 ? height : NaN));
  const rim = outerEdgeMm.filter((height) => !Number.isNaN(height)).sort();
  if (rim.length === 0) throw new Error('a pattern without an outline has no parting');
  const isFlat = rim.at(-1)! - rim[0]! < flatMm;
  const flatLandMm = isFlat ? rim.at(-1)! : null;
  const boxPartingMm = flatLandMm ?? rim[rim.length >> 1]!;
  if (flatLandMm !== null) {
    for (let column = 0; column < edgeMm.length; column++) {
      if (isOuterEdge[column] === 1) edgeMm[column] = flatLandMm;
    }
  }
  const landMm =
    flatLandMm === null
      ? spreadHeights(levelBand(outerEdgeMm, side, levelMm / pitchMm), side)
      : new Float32Array(side * side).fill(flatLandMm);
  const openMm = windowLands(side, pitchMm, columns, open);

  const heightMm = new Float32Array(side * side);
  const lowMm = new Float32Array(side * side);
  const highMm = new Float32Array(side * side);
  for (let column = 0; column < heightMm.length; column++) {
    if (region[column] !== columnRegion.pattern || !Number.isNaN(edgeMm[column]!)) {
      const edge = edgeMm[column]!;
      const land = region[column] === columnRegion.outside ? landMm[column]! : openMm[column]!;
      const height = Number.isNaN(edge) ? land : edge;
      heightMm[column] = height;
      // Never lower: a film of stone would slip under the rim.
      lowMm[column] = height - roundingMm;
      highMm[column] = height + landToleranceMm;
      continue;
    }
    let highestExit = exitMm[column]!;
    let lowestTop = topMm[column]!;
    for (const other of around(column, side)) {
      if (exitMm[other]! > highestExit) highestExit = exitMm[other]!;
      if (topMm[other]! > -Infinity && topMm[other]! < lowestTop) lowestTop = topMm[other]!;
    }
    if (!(highestExit < lowestTop)) {
      // The wall is thinner than the columns are apart: only its own middle is sure to lie in it.
      highestExit = exitMm[column]!;
      lowestTop = topMm[column]!;
    }
    const middle = (highestExit + lowestTop) / 2;
    const room = Math.max(0, (lowestTop - highestExit) * 0.4);
    heightMm[column] = middle;
    lowMm[column] = middle - room;
    highMm[column] = middle + room;
  }
  return { heightMm, lowMm, highMm, landMm, boxPartingMm, flatLandMm };
}

/**
 * Heights of the parting in windows: level with the highest place of the window's edge where all of its edge reaches that
 * high, which shuts it off flat and without feather edges; else spread from edge to edge. Levels `open.edgeMm` with it.
 */
function windowLands(
  side: number,
  pitchMm: number,
  { topMm }: ColumnHeights,
  { region, edgeMm }: OpenColumns,
): Float32Array {
  const windowMm = new Float32Array(side * side).fill(NaN);
  const seen = new Uint8Array(side * side);
  let isUneven = false;
  for (let first = 0; first < region.length; first++) {
    if (region[first] !== columnRegion.window || seen[first] === 1) continue;
    const members = [first];
    const edges: number[] = [];
    seen[first] = 1;
    let highestEdge = -Infinity;
    let lowestTop = Infinity;
    for (let next = 0; next < members.length; next++) {
      for (const other of around(members[next]!, side)) {
        if (region[other] === columnRegion.window && seen[other] === 0) {
          seen[other] = 1;
          members.push(other);
        } else if (region[other] === columnRegion.pattern) {
          edges.push(other);
          highestEdge = Math.max(highestEdge, edgeMm[other]!);
          if (topMm[other]! > -Infinity) lowestTop = Math.min(lowestTop, topMm[other]!);
        }
      }
    }
    if (!(highestEdge < lowestTop)) {
      isUneven = true;
      continue;
    }
    for (const edge of edges) edgeMm[edge] = highestEdge;
    for (const member of members) {
      windowMm[member] = highestEdge;
      if (!Number.isNaN(edgeMm[member]!)) edgeMm[member] = highestEdge;
    }
  }
  if (!isUneven) return windowMm;
  const spread = spreadHeights(levelBand(edgeMm, side, levelMm / pitchMm), side);
  return windowMm.map((height, column) => (Number.isNaN(height) ? spread[column]! : height));
}
