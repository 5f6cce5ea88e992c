import { buildSurfaceIndex, type SurfaceIndex } from '../../mesh/surfaceIndex';
import type { IndexedMesh } from '../../mesh/types';
import { Problem } from '../../problem';
import { boxSolid, type BoxSolid } from './boxSolid';
import { measureColumns, type ColumnGrid, type ColumnHeights } from './columnGrid';
import { openColumns, type OpenColumns } from './openColumns';
import { partingHeights, type PartingHeights } from './partingHeights';
import type { PourChoices } from './pourChoices';
import { boxOf } from './pullFrame';

/** The box and the parting in it, on which both ways of casting stand. */
export interface Parted {
  /** The pattern in the pull frame. */
  readonly pattern: IndexedMesh;
  readonly index: SurfaceIndex;
  readonly box: BoxSolid;
  readonly grid: ColumnGrid;
  readonly columns: ColumnHeights;
  readonly open: OpenColumns;
  readonly heights: PartingHeights;
}

/** The parting runs this far above the very edge of the rim, so that it meets the pattern's side for sure. */
const liftMm = 0.003;
/** Columns stand inside the grid by this share of a pitch, so that none runs along an edge drawn at a round number. */
const offGrid = 0.381966;

/**
 * Columns along the pull, the box round the pattern and the parting between its halves.
 * @param pattern in the pull frame
 * @param levels the grid has 2^levels + 1 columns along each side
 * @throws Problem `pours.flat` for a pattern that covers nothing along the pull
 */
export function partPattern(pattern: IndexedMesh, choices: PourChoices, levels: number): Parted {
  const bounds = boxOf(pattern.positions);
  const reach = outlineReach(pattern, bounds.low, bounds.high);
  // The height of the parting moves the box up and down, not sideways: leave room for the widest that its walls may lean.
  const rough = boxSolid(bounds, reach, bounds.low[2]!, choices);
  const rougher = boxSolid(bounds, reach, bounds.high[2]!, choices);
  const side = 2 ** levels + 1;
  const halfMm = Math.max(...rough.reachMm, ...rougher.reachMm);
  const pitchMm = (2 * halfMm) / (side - 6);
  const grid: ColumnGrid = {
    side,
    x0Mm: rough.centerMm[0] - (side / 2 - offGrid) * pitchMm,
    y0Mm: rough.centerMm[1] - (side / 2 - offGrid) * pitchMm,
    pitchMm,
  };
  const columns = measureColumns(pattern, grid);
  const index = buildSurfaceIndex(pattern);
  const open = openColumns(index, grid, columns, liftMm);
  if (!open.isOuterEdge.includes(1)) {
    throw new Problem(
      'pours.flat',
      'Seen along this pull the pattern covers nothing, so there is nothing to pour around. Choose another pull.',
    );
  }
  const heights = partingHeights(grid, columns, open);
  return {
    pattern,
    index,
    box: boxSolid(bounds, reach, heights.boxPartingMm, choices),
    grid,
    columns,
    open,
    heights,
  };
}

/** Furthest vertex from the middle of the plan. */
function outlineReach({ positions }: IndexedMesh, low: readonly number[], high: readonly number[]): number {
  const x = (low[0]! + high[0]!) / 2;
  const y = (low[1]! + high[1]!) / 2;
  let most = 0;
  for (let at = 0; at < positions.length; at += 3) {
    most = Math.max(most, (positions[at]! - x) ** 2 + (positions[at + 1]! - y) ** 2);
  }
  return Math.sqrt(most);
}

/** Area of the pattern's plan, openings filled, mm2. */
export function planAreaMm2({ grid, open }: Parted): number {
  let covered = 0;
  for (const region of open.region) if (region !== 1) covered++;
  return covered * grid.pitchMm ** 2;
}
