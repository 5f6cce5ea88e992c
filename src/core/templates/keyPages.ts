/** The small picture of the nest, and the order of cutting: what the pages at true size are pieces of. */
import { formatNumber } from '../units/formatNumber';
import { clothSheets, type ClothSheet } from './clothDrawing';
import { carried, lineOf, textOf, together, type DrawnSheet, type Drawing } from './drawing';
import type { FabricNest, Placement } from './nest';
import { posed } from './outline';
import { roomiest, wayUpText } from './pieceDrawing';
import { clearOf, framedPage, type PaperSize } from './sheetFrame';

/** Said where blades and uncured resin come into the hand; rules of the place and the data sheet come first. */
const cautions = [
  'Blades: cut away from the hand; gloves against resin per the',
  'supplier’s safety data sheet. Local rules come first.',
];
const scales = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 100];
const rowMm = 4;
/** Under each piece of cloth, for its name. */
const betweenMm = 8;

/** One page for each fabric, more where the list is long. */
export function keyPages(nest: FabricNest, paper: PaperSize): DrawnSheet[] {
  const { lowXMm, lowYMm, highXMm, highYMm } = clearOf(paper);
  const sheets = clothSheets(nest);
  const scale = scaleFor(sheets, highXMm - lowXMm, (highYMm - lowYMm) * 0.5);
  const lines = [...figureLines(nest), ...nest.placements.map(orderLine)];
  const picture: Drawing[] = [];
  let y = highYMm;
  for (const sheet of sheets) {
    y -= (sheet.bounds.highYMm - sheet.bounds.lowYMm) / scale + betweenMm;
    picture.push(small(sheet, scale, lowXMm, y + betweenMm - 2));
  }
  const pages: DrawnSheet[] = [];
  for (let from = 0; from < lines.length || pages.length === 0;) {
    const top = (pages.length === 0 ? y : highYMm) - 3;
    const fits = Math.max(1, Math.floor((top - lowYMm) / rowMm));
    const list = lines
      .slice(from, from + fits)
      .map((line, i) => textOf(line, [lowXMm, top - i * rowMm], 2.8));
    const title = `Key: ${nest.roll.fabric}, about 1 : ${scale}, not for cutting${pages.length === 0 ? '' : ', continued'}`;
    pages.push(
      framedPage(
        paper,
        title,
        cautions,
        together([...(pages.length === 0 ? picture : []), { lines: [], texts: list }]),
      ),
    );
    from += fits;
  }
  return pages;
}

function scaleFor(sheets: readonly ClothSheet[], widthMm: number, heightMm: number): number {
  const length = Math.max(...sheets.map(({ bounds }) => bounds.highXMm - bounds.lowXMm));
  const across = sheets.reduce((sum, { bounds }) => sum + bounds.highYMm - bounds.lowYMm, 0);
  const room = Math.max(20, heightMm - betweenMm * sheets.length);
  const needed = Math.max(length / widthMm, across / room);
  return scales.find((scale) => scale >= needed) ?? Math.ceil(needed);
}

function small(
  { title, outlineMm, bounds, placements }: ClothSheet,
  scale: number,
  xMm: number,
  yMm: number,
): Drawing {
  const drawing: Drawing = {
    lines: [
      lineOf('sheet', outlineMm, { closed: true }),
      ...placements.map((placement) =>
        lineOf(
          'mark',
          placement.piece.outlineMm.map((point) => posed(point, placement)),
          { closed: true },
        ),
      ),
    ],
    texts: placements.map((placement) => {
      const [x, y] = posed(roomiest(placement.piece).middle, placement);
      return textOf(`${placement.cutOrder}: ${placement.piece.name}`, [x, y - scale], 2.6 * scale, {
        anchor: 'middle',
      });
    }),
  };
  const moved = carried(
    drawing,
    0,
    ([x, y]) => [xMm + (x - bounds.lowXMm) / scale, yMm + (y - bounds.lowYMm) / scale],
    1 / scale,
  );
  return together([moved, { lines: [], texts: [textOf(title, [xMm, yMm - 4], 2.8)] }]);
}

function figureLines({
  roll,
  rollLengthMm,
  wasteShare,
  clothMassG,
  piecesMassG,
  cost,
}: FabricNest): string[] {
  const length =
    rollLengthMm > 0
      ? `${formatNumber(rollLengthMm, 0)} mm of the roll of ${formatNumber(roll.widthMm ?? 0, 0)} mm; `
      : '';
  const price = cost === null ? '' : `; cost ${formatNumber(cost, 2)}`;
  return [
    `${length}waste ${formatNumber(100 * wasteShare, 0)} %; cloth ${formatNumber(clothMassG, 0)} g, of it pieces ${formatNumber(piecesMassG, 0)} g${price}`,
    'Order of cutting:',
  ];
}

function orderLine({ cutOrder, piece, remnant, turnDeg }: Placement): string {
  const from = remnant === null ? 'roll' : `remnant ${remnant + 1}`;
  const turn = turnDeg === 0 ? '' : `, turned ${formatNumber(turnDeg, 0)}°`;
  const mirror = piece.mirrored ? ', mirror image for the mate' : '';
  return `${cutOrder}: ${piece.name}, ply ${piece.ply}, fibers ${formatNumber(piece.fiberDeg, 0)}°, ${wayUpText(piece)}${mirror}; from the ${from}${turn}`;
}
