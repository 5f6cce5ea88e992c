/**
 * The top of a shell in plan: a grid of nodes over a superellipse, its outermost nodes on the outline, with lines along
 * the edges of the window.
 */
import type { WindowDesign } from './shellDesign';

/** Between an ellipse (2) and a rectangle. */
const planExponent = 4.2;
/** Rounds the window's corners the same way. */
const windowExponent = 9;
/** Over how many cells the nodes beside the window give way to its rounding. */
const windowEaseCells = 5;

/** A closed range of grid lines. */
export interface CellBlock {
  readonly firstColumn: number;
  readonly lastColumn: number;
  readonly firstRow: number;
  readonly lastRow: number;
}

export interface PlanGrid {
  /** Grid lines across x, and across y. */
  readonly columns: number;
  readonly rows: number;
  /** x and y of node (column, row) at `2 * (row * columns + column)`, mm. */
  readonly nodesMm: Float64Array;
  /** Lines that bound the window, or null without one. */
  readonly window: CellBlock | null;
}

/** The outline at an angle seen from the middle: point and outward unit normal. */
export function outlineAt(halfLengthMm: number, halfWidthMm: number, angle: number) {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const radius = 1 / superNorm(cos / halfLengthMm, sin / halfWidthMm, planExponent);
  const slope = (part: number, half: number) =>
    (Math.sign(part) * Math.abs(part / half) ** (planExponent - 1)) / half;
  const nx = slope(cos, halfLengthMm);
  const ny = slope(sin, halfWidthMm);
  const length = Math.hypot(nx, ny);
  return { x: radius * cos, y: radius * sin, nx: nx / length, ny: ny / length };
}

/**
 * @param halfLengthMm of the outline's box
 * @param cellMm edge of a cell where the relief needs it fine; cells in the window's columns are longer
 */
export function planGrid(
  halfLengthMm: number,
  halfWidthMm: number,
  cellMm: number,
  window: WindowDesign | null,
): PlanGrid {
  const xStops =
    window === null ? [] : [window.centerXMm - window.halfLengthMm, window.centerXMm + window.halfLengthMm];
  const yStops = window === null ? [] : [-window.halfWidthMm, window.halfWidthMm];
  const x = gridLines(halfLengthMm, xStops, [cellMm, 1.6 * cellMm, 1.2 * cellMm]);
  const y = gridLines(halfWidthMm, yStops, [1.2 * cellMm, cellMm, 1.2 * cellMm]);
  const nodesMm = new Float64Array(2 * x.lines.length * y.lines.length);
  let next = 0;
  for (const lineY of y.lines) {
    for (const lineX of x.lines) {
      const rounding = cornerRounding(lineX / halfLengthMm, lineY / halfWidthMm);
      nodesMm[next++] = lineX * rounding;
      nodesMm[next++] = lineY * rounding;
    }
  }
  const block =
    window === null
      ? null
      : {
          firstColumn: x.stops[0] as number,
          lastColumn: x.stops[1] as number,
          firstRow: y.stops[0] as number,
          lastRow: y.stops[1] as number,
        };
  const grid = { columns: x.lines.length, rows: y.lines.length, nodesMm, window: block };
  if (window !== null && block !== null) roundWindow(grid, block, window);
  return grid;
}

/** Evenly divided lines from -half to half that pass through the stops; `stops` gives the stops' line numbers. */
function gridLines(half: number, through: readonly number[], cellsMm: readonly number[]) {
  const lines = [-half];
  const stops: number[] = [];
  [...through, half].forEach((end, piece) => {
    const start = lines.at(-1) as number;
    const cells = Math.round((end - start) / (cellsMm[piece] as number));
    for (let i = 1; i <= cells; i++) lines.push(start + ((end - start) * i) / cells);
    stops.push(lines.length - 1);
  });
  return { lines, stops };
}

function superNorm(x: number, y: number, exponent: number): number {
  return (Math.abs(x) ** exponent + Math.abs(y) ** exponent) ** (1 / exponent);
}

/** Factor that takes the square of |x|, |y| <= 1 to the superellipse; eases to 1 towards the middle. */
function cornerRounding(x: number, y: number): number {
  const square = Math.max(Math.abs(x), Math.abs(y));
  if (square === 0) return 1;
  return 1 + (square / superNorm(x, y, planExponent) - 1) * square ** 4;
}

/** Moves the nodes on the window's lines to its rounded outline, and those around it along. */
function roundWindow(grid: PlanGrid, block: CellBlock, window: WindowDesign): void {
  const before = grid.nodesMm.slice();
  for (let row = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++) {
      const edgeColumn = Math.min(block.lastColumn, Math.max(block.firstColumn, column));
      const edgeRow = Math.min(block.lastRow, Math.max(block.firstRow, row));
      const away = Math.max(Math.abs(column - edgeColumn), Math.abs(row - edgeRow));
      if (away >= windowEaseCells) continue;
      const ease = (1 - away / windowEaseCells) ** 2;
      const at = 2 * (edgeRow * grid.columns + edgeColumn);
      const here = 2 * (row * grid.columns + column);
      const along = (2 * (edgeColumn - block.firstColumn)) / (block.lastColumn - block.firstColumn) - 1;
      const across = (2 * (edgeRow - block.firstRow)) / (block.lastRow - block.firstRow) - 1;
      const square = Math.max(Math.abs(along), Math.abs(across));
      const rounding = square === 0 ? 1 : square / superNorm(along, across, windowExponent);
      const targetX = window.centerXMm + along * rounding * window.halfLengthMm;
      const targetY = across * rounding * window.halfWidthMm;
      grid.nodesMm[here] = (before[here] as number) + ease * (targetX - (before[at] as number));
      grid.nodesMm[here + 1] = (before[here + 1] as number) + ease * (targetY - (before[at + 1] as number));
    }
  }
}
