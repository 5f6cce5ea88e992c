/** The grid that a pattern is made on: nodes in the frame, the rim plane on one layer of them. */
import { keepWithin, mostCounts } from '../counts';
import type { ColumnGrid } from './heights';
import type { BoxMm } from '../mesh/boxOf';

/** Node (i, j, k) has the number (k countY + j) countX + i. */
export interface PatternGrid extends ColumnGrid {
  readonly countZ: number;
  readonly lowZMm: number;
  /** Between layers; near `stepMm`, and such that a flat top lies midway between two layers. */
  readonly layerMm: number;
  /** The layer of nodes that lies in the rim plane. */
  readonly rimLayer: number;
}

/**
 * Columns over the box and `marginMm` around it.
 * @throws Problem `pattern.grid`
 */
export function layColumns(box: BoxMm, stepMm: number, marginMm: number): ColumnGrid {
  const { low, high } = box;
  const along = (axis: number) => Math.ceil((high[axis]! - low[axis]! + 2 * marginMm) / stepMm) + 2;
  const [countX, countY] = [along(0), along(1)];
  const layers = Math.ceil((high[2]! - low[2]! + 2 * marginMm) / stepMm) + 2;
  const fitting = gridThatFits(box, stepMm, marginMm);
  keepWithin(
    'patternNodes',
    countX * countY * layers,
    'pattern.grid',
    `The part is too large for a grid of ${stepMm} mm: it would have ${countX} × ${countY} × ${layers} points. Enter ${fitting === null ? 'a coarser grid' : `a grid of ${fitting} mm`}, or check the unit and the scale of the part.`,
  );
  const middle = (axis: number, count: number) => (low[axis]! + high[axis]!) / 2 - ((count - 1) / 2) * stepMm;
  return { stepMm, countX, countY, lowXMm: middle(0, countX), lowYMm: middle(1, countY) };
}

/** Coarser grids are not offered to the maker. */
const coarsestMm = 1;

/** A grid of whole hundredths that keeps within the count, with some room; null where only one coarser than any offered does. */
function gridThatFits({ low, high }: BoxMm, stepMm: number, marginMm: number): number | null {
  const points = (step: number) =>
    [0, 1, 2].reduce((product, axis) => {
      const side = high[axis]! - low[axis]! + (2 * marginMm * step) / stepMm;
      return product * (side / step + 3);
    }, 1);
  for (let hundredths = Math.ceil(100 * stepMm); hundredths <= 100 * coarsestMm; hundredths++)
    if (points(hundredths / 100) < 0.95 * mostCounts.patternNodes) return hundredths / 100;
  return null;
}

/** The layers over those columns. `belowMm`: how far the fields run on below the rim. */
export function layLayers(
  columns: ColumnGrid,
  rimMm: number,
  topMm: number,
  marginMm: number,
  belowMm: number,
): PatternGrid {
  const { stepMm } = columns;
  const layerMm = (topMm - rimMm) / (Math.max(1, Math.round((topMm - rimMm) / stepMm - 0.5)) + 0.5);
  const rimLayer = Math.ceil(belowMm / layerMm) + 2;
  const above = Math.ceil((topMm - rimMm + marginMm) / layerMm) + 2;
  return { ...columns, layerMm, rimLayer, countZ: rimLayer + above + 1, lowZMm: rimMm - rimLayer * layerMm };
}

/** Place of a node, mm in the frame. */
export function nodePlace(grid: PatternGrid, node: number): [number, number, number] {
  const i = node % grid.countX;
  const row = (node - i) / grid.countX;
  const j = row % grid.countY;
  const k = (row - j) / grid.countY;
  return [grid.lowXMm + i * grid.stepMm, grid.lowYMm + j * grid.stepMm, grid.lowZMm + k * grid.layerMm];
}
