/** A drawing larger than the page, on several pages that overlap: marks on both pages lie over each other when they are joined. */
import { clippedLine, isWithin } from './clip';
import { circleOf, lineOf, textOf, together, type Drawing } from './drawing';
import { isInside, type Bounds2 } from './outline';
import type { Outline, Point2 } from './piece';

const overlapMm = 10;
/** Of the two marks of a join from the ends of the page. */
const markInsetMm = 20;

export interface Tile {
  /** From 1, in the order of the pages. */
  readonly number: number;
  readonly row: number;
  readonly column: number;
  /** What of the drawing this page shows. */
  readonly view: Bounds2;
  /** In the drawing's own place. */
  readonly drawing: Drawing;
}

export const tilesAlong = (sizeMm: number, pageMm: number): number =>
  sizeMm <= pageMm + 1e-9 ? 1 : Math.ceil((sizeMm - overlapMm) / (pageMm - overlapMm) - 1e-9);

/**
 * @param bounds of what must be shown
 * @param inside pages that show nothing of the drawing and lie in none of these are left out
 */
export function tilesOf(
  drawing: Drawing,
  bounds: Bounds2,
  pageXMm: number,
  pageYMm: number,
  inside: readonly Outline[],
): Tile[] {
  const columns = tilesAlong(bounds.highXMm - bounds.lowXMm, pageXMm);
  const rows = tilesAlong(bounds.highYMm - bounds.lowYMm, pageYMm);
  const viewAt = (row: number, column: number): Bounds2 => {
    const lowXMm = bounds.lowXMm + column * (pageXMm - overlapMm);
    const lowYMm = bounds.lowYMm + row * (pageYMm - overlapMm);
    return { lowXMm, lowYMm, highXMm: lowXMm + pageXMm, highYMm: lowYMm + pageYMm };
  };
  const shown = Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const view = viewAt(row, column);
    return { row, column, view, part: partOf(drawing, view) };
  }).filter(({ part, view }) => part.lines.length > 0 || inside.some((one) => isInside(one, middleOf(view))));
  const numberAt = (row: number, column: number): number | null => {
    const at = shown.findIndex((tile) => tile.row === row && tile.column === column);
    return at === -1 ? null : at + 1;
  };
  return shown.map(({ row, column, view, part }, i) => ({
    number: i + 1,
    row,
    column,
    view,
    drawing: together([part, ...joinsOf(row, column, view, i + 1, numberAt)]),
  }));
}

const middleOf = ({ lowXMm, lowYMm, highXMm, highYMm }: Bounds2): Point2 => [
  (lowXMm + highXMm) / 2,
  (lowYMm + highYMm) / 2,
];

const partOf = ({ lines, texts }: Drawing, view: Bounds2): Drawing => ({
  lines: lines.flatMap((line) => clippedLine(line, view)),
  texts: texts.filter(({ atMm }) => isWithin(atMm, view)),
});

/** A line in the middle of each overlap with two marks on it, the same on both pages. */
function joinsOf(
  row: number,
  column: number,
  { lowXMm, lowYMm, highXMm, highYMm }: Bounds2,
  number: number,
  numberAt: (row: number, column: number) => number | null,
): Drawing[] {
  const half = overlapMm / 2;
  const upright = (x: number): [Point2, Point2] => [
    [x, lowYMm],
    [x, highYMm],
  ];
  const level = (y: number): [Point2, Point2] => [
    [lowXMm, y],
    [highXMm, y],
  ];
  const sides = [
    { other: numberAt(row, column - 1), line: upright(lowXMm + half) },
    { other: numberAt(row, column + 1), line: upright(highXMm - half) },
    { other: numberAt(row - 1, column), line: level(lowYMm + half) },
    { other: numberAt(row + 1, column), line: level(highYMm - half) },
  ];
  return sides.flatMap(({ other, line }) =>
    other === null ? [] : [joinOf(line, `${Math.min(number, other)} + ${Math.max(number, other)}`)],
  );
}

function joinOf(line: [Point2, Point2], label: string): Drawing {
  const [[ax, ay], [bx, by]] = line;
  const length = Math.hypot(bx - ax, by - ay);
  const places = [markInsetMm, length - markInsetMm].map((at): Point2 => [
    ax + ((bx - ax) * at) / length,
    ay + ((by - ay) * at) / length,
  ]);
  return {
    lines: [
      lineOf('sheet', line, { dashed: true, widthMm: 0.1 }),
      ...places.flatMap(([x, y]) => [
        circleOf('sheet', [x, y], 2),
        lineOf('sheet', [
          [x - 4, y],
          [x + 4, y],
        ]),
        lineOf('sheet', [
          [x, y - 4],
          [x, y + 4],
        ]),
      ]),
    ],
    texts: places.map(([x, y]) => textOf(label, [x + 2.4, y + 1], 2.2)),
  };
}
