/** The part as it is seen along the pull, as rows of cells: quick to make, and enough to place clamps round it. */
import { onPlan } from '../../core/closing/closingFrame';
import type { ClosingFrame } from '../../core/closing/closingTypes';
import type { DisplayChunk } from '../../pipeline/told';

/** Cells along the longer side of the plan. */
const cells = 240;

/** Path data in mm on the plan, x to the right and y up, from the middle of the part. */
export function planSilhouette(frame: ClosingFrame, display: readonly DisplayChunk[]): string {
  const [halfU, halfV] = frame.halfSizeMm;
  const cellMm = (2 * Math.max(halfU, halfV)) / cells;
  if (!(cellMm > 0)) return '';
  const columns = Math.max(1, Math.ceil((2 * halfU) / cellMm));
  const rows = Math.max(1, Math.ceil((2 * halfV) / cellMm));
  const covered = new Uint8Array(columns * rows);
  const cell = (mm: number, halfMm: number, count: number) =>
    Math.min(count - 1, Math.max(0, Math.floor((mm + halfMm) / cellMm)));
  const cover = (row: number, fromMm: number, toMm: number) => {
    const start = row * columns;
    covered.fill(1, start + cell(fromMm, halfU, columns), start + cell(toMm, halfU, columns) + 1);
  };
  const u = [0, 0, 0];
  const v = [0, 0, 0];
  for (const { corners } of display) {
    for (let at = 0; at < corners.length; at += 9) {
      for (let corner = 0; corner < 3; corner++) {
        const from = at + 3 * corner;
        const place = onPlan(frame, [corners[from]!, corners[from + 1]!, corners[from + 2]!]);
        u[corner] = place[0];
        v[corner] = place[1];
        cover(cell(place[1], halfV, rows), place[0], place[0]);
      }
      coverTriangle();
    }
  }
  return pathOf();

  /** Each row that the triangle crosses, from its left to its right side along the row's middle. */
  function coverTriangle(): void {
    const first = cell(Math.min(v[0]!, v[1]!, v[2]!), halfV, rows);
    const last = cell(Math.max(v[0]!, v[1]!, v[2]!), halfV, rows);
    for (let row = first; row <= last; row++) {
      const height = (row + 0.5) * cellMm - halfV;
      let [left, right] = [Infinity, -Infinity];
      for (let corner = 0; corner < 3; corner++) {
        const next = (corner + 1) % 3;
        const [from, to] = [v[corner]!, v[next]!];
        if (from > height === to > height) continue;
        const cut = u[corner]! + ((height - from) / (to - from)) * (u[next]! - u[corner]!);
        left = Math.min(left, cut);
        right = Math.max(right, cut);
      }
      if (left <= right) cover(row, left, right);
    }
  }

  function pathOf(): string {
    const parts: string[] = [];
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        if (covered[row * columns + column] === 0) continue;
        const from = column;
        while (column < columns && covered[row * columns + column] !== 0) column++;
        const width = ((column - from) * cellMm).toFixed(2);
        const [x, y] = [(from * cellMm - halfU).toFixed(2), (row * cellMm - halfV).toFixed(2)];
        // Rows overlap a little: else hairlines of the ground show between them.
        parts.push(`M${x},${y}h${width}v${(1.2 * cellMm).toFixed(3)}h-${width}z`);
      }
    }
    return parts.join('');
  }
}
