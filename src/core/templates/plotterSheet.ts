/** All cloth at true size on one sheet, for a knife plotter: remnants and rolls one over the other, each with its name. */
import { clothOutline, clothSheets, placedDrawing } from './clothDrawing';
import { carried, textOf, together, type DrawnSheet, type Drawing } from './drawing';
import type { FabricNest } from './nest';
import { checkMarks } from './sheetFrame';

const borderMm = 10;
const betweenMm = 20;
const checkHeightMm = 60;

export function plotterSheet(nests: readonly FabricNest[]): DrawnSheet {
  const sheets = nests.flatMap(clothSheets);
  const parts: Drawing[] = [carried(checkMarks(), 0, ([x, y]) => [x + borderMm, y + borderMm])];
  let y = borderMm + checkHeightMm;
  let widthMm = 180;
  for (const sheet of sheets) {
    const { lowXMm, lowYMm, highXMm, highYMm } = sheet.bounds;
    const [moveX, moveY] = [borderMm - lowXMm, y - lowYMm];
    parts.push(
      carried(together([clothOutline(sheet), ...sheet.placements.map(placedDrawing)]), 0, ([px, py]) => [
        px + moveX,
        py + moveY,
      ]),
      { lines: [], texts: [textOf(sheet.title, [borderMm, y + highYMm - lowYMm + 3], 6)] },
    );
    y += highYMm - lowYMm + betweenMm;
    widthMm = Math.max(widthMm, highXMm - lowXMm + 2 * borderMm);
  }
  return { widthMm, heightMm: y, ...together(parts) };
}
