/** The pages of a set of templates: the key first, then every piece at true size. */
import { Problem } from '../problem';
import { formatNumber } from '../units/formatNumber';
import { clothOutline, clothSheets, placedDrawing, type ClothSheet } from './clothDrawing';
import { carried, together, type DrawnSheet } from './drawing';
import { keyPages } from './keyPages';
import type { FabricNest } from './nest';
import { searchNest } from './nestSearch';
import { outlineRows } from './nestSheet';
import { boundsOf, posed, turned, type Bounds2 } from './outline';
import type { Outline, PlyPiece } from './piece';
import { pieceDrawing, pieceTitle, wayUpText } from './pieceDrawing';
import {
  clearOf,
  frameHeightMm,
  framedPage,
  leastWidthMm,
  marginMm,
  papers,
  type PaperSize,
} from './sheetFrame';
import { tilesAlong, tilesOf } from './tiles';

/** A sheet size, or paper as wide as the roll with the whole nest on it. */
export type PaperChoice = keyof typeof papers | 'roll';

/** Between pieces on a page, mm. */
const pageGapMm = 6;
/** PDF pages end at 14 400 points, 5080 mm (ISO 32000-1, annex C.2). */
const longestMm = 5000;
const mostPages = 400;

/** @throws Problem `templates.pages` when it would be more pages than anyone joins */
export function templatePages(nests: readonly FabricNest[], paper: PaperChoice): DrawnSheet[] {
  const sheet = paper === 'roll' ? papers.a4 : papers[paper];
  const keys = nests.flatMap((nest) => keyPages(nest, sheet));
  const pieces = nests.flatMap(({ placements }) => placements.map(({ piece }) => piece));
  const pages =
    paper === 'roll'
      ? nests.flatMap(clothSheets).flatMap(rollPages)
      : [
          ...wholePages(pieces, sheet),
          ...pieces.filter((piece) => !fitsOn(piece, sheet)).flatMap(tiledOn(sheet)),
        ];
  if (keys.length + pages.length > mostPages)
    throw new Problem(
      'templates.pages',
      `The templates would be ${formatNumber(keys.length + pages.length, 0)} pages. Choose larger paper, or paper as wide as the roll.`,
    );
  return [...keys, ...pages];
}

const sizeOf = ({ lowXMm, lowYMm, highXMm, highYMm }: Bounds2) =>
  [highXMm - lowXMm, highYMm - lowYMm] as const;

function fitsOn({ outlineMm }: PlyPiece, paper: PaperSize): boolean {
  const [length, width] = sizeOf(boundsOf(outlineMm));
  const [x, y] = sizeOf(clearOf(paper));
  return (length <= x && width <= y) || (length <= y && width <= x);
}

/** Several to a page where they fit; on paper a piece may be turned, its arrow says where the warp is. */
function wholePages(all: readonly PlyPiece[], paper: PaperSize): DrawnSheet[] {
  const { lowXMm, lowYMm, highXMm, highYMm } = clearOf(paper);
  const clear: Outline = [
    [lowXMm, lowYMm],
    [highXMm, lowYMm],
    [highXMm, highYMm],
    [lowXMm, highYMm],
  ];
  const rows = outlineRows(clear, 2);
  let waiting = all.filter((piece) => fitsOn(piece, paper));
  const pages: DrawnSheet[] = [];
  while (waiting.length > 0) {
    const own = waiting;
    const { placed, left } = searchNest({
      outlines: own.map(({ outlineMm }) => outlineMm),
      sheets: [{ rows, endMm: highXMm - lowXMm }],
      gapMm: pageGapMm,
      turnsDeg: [0, 90],
      tiltsDeg: [0],
      tries: 20,
      seed: 1,
    });
    // What fits a page by its box finds a place on an empty one, so every round places at least one.
    const drawings = placed.map(({ outline, shape, row, alongMm }) => {
      const pose = {
        turnDeg: shape.turnDeg,
        atMm: [lowXMm + alongMm - shape.lowMm[0], lowYMm + row * rows.rowMm - shape.lowMm[1]] as const,
      };
      return carried(pieceDrawing(own[outline]!), pose.turnDeg, (point) => posed(point, pose));
    });
    const names = own.filter((_, outline) => !left.includes(outline)).map(({ name }) => name);
    const single = placed.length === 1 ? own[placed[0]!.outline]! : null;
    pages.push(
      framedPage(
        paper,
        single === null ? `Pieces ${names.join(', ')}, 1 : 1` : `${pieceTitle(single)}, 1 : 1`,
        single === null ? ['Cut each piece with its arrow along the warp.'] : notesOf(single),
        together(drawings),
      ),
    );
    waiting = left.map((outline) => own[outline]!);
  }
  return pages;
}

const notesOf = (piece: PlyPiece): string[] => [
  `Way up: ${wayUpText(piece)}.`,
  ...(piece.mirrored ? ['Mirror image, for the mate.'] : []),
];

/** A piece over several pages, upright or turned, whichever takes fewer. */
const tiledOn =
  (paper: PaperSize) =>
  (piece: PlyPiece): DrawnSheet[] => {
    const clear = clearOf(paper);
    const [x, y] = sizeOf(clear);
    const [length, width] = sizeOf(boundsOf(piece.outlineMm));
    const pagesAt = (a: number, b: number) => tilesAlong(a, x) * tilesAlong(b, y);
    const turnDeg = pagesAt(width, length) < pagesAt(length, width) ? 90 : 0;
    const move = (point: readonly [number, number]) => turned(point, turnDeg);
    const outline = piece.outlineMm.map(move);
    const tiles = tilesOf(carried(pieceDrawing(piece), turnDeg, move), boundsOf(outline), x, y, [outline]);
    return tiles.map(({ number, row, column, view, drawing }) =>
      framedPage(
        paper,
        `${pieceTitle(piece)}, 1 : 1`,
        [
          ...notesOf(piece),
          `Sheet ${number} of ${tiles.length}: row ${row + 1}, column ${column + 1}.`,
          'Join on the dashed lines: marks of the same numbers over each other.',
        ],
        carried(drawing, 0, ([px, py]) => [px - view.lowXMm + clear.lowXMm, py - view.lowYMm + clear.lowYMm]),
      ),
    );
  };

const upright = (point: readonly [number, number]) => turned(point, 90);

/** The cloth itself, its length up the page; a nest longer than a page may be goes on on the next. */
function rollPages(sheet: ClothSheet): DrawnSheet[] {
  const cloth = together([clothOutline(sheet), ...sheet.placements.map(placedDrawing)]);
  const outline = sheet.outlineMm.map(upright);
  const bounds = boundsOf(outline);
  const [acrossMm, alongMm] = sizeOf(bounds);
  const pageYMm = Math.min(alongMm, longestMm - frameHeightMm);
  const paper = {
    widthMm: Math.max(leastWidthMm, acrossMm + 2 * marginMm),
    heightMm: pageYMm + frameHeightMm,
  };
  const clear = clearOf(paper);
  const tiles = tilesOf(carried(cloth, 90, upright), bounds, acrossMm, pageYMm, [outline]);
  return tiles.map(({ number, view, drawing }) =>
    framedPage(
      paper,
      `${sheet.title}, 1 : 1`,
      tiles.length === 1 ? [] : [`Sheet ${number} of ${tiles.length}.`],
      carried(drawing, 0, ([x, y]) => [x - view.lowXMm + clear.lowXMm, y - view.lowYMm + clear.lowYMm]),
    ),
  );
}
