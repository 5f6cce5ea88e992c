/** What every page has beside its pieces: name, number, and a bar and a square to measure before anything is cut. */
import { carried, lineOf, textOf, together, type DrawnSheet, type Drawing } from './drawing';
import type { Bounds2 } from './outline';

export interface PaperSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Sheets that can be asked for, upright (ISO 216 for A4 and A3; ANSI/ASME Y14.1 size A for Letter). */
export const papers = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
  a3: { widthMm: 297, heightMm: 420 },
} as const satisfies Record<string, PaperSize>;

/** What printers leave white, at most. */
export const marginMm = 10;
const headMm = 8;
const barMm = 100;
const squareMm = 50;
const footMm = squareMm + 6;

/** Bar, square and margins need this much. */
export const leastWidthMm = 2 * marginMm + squareMm + 10 + barMm;
export const frameHeightMm = 2 * marginMm + headMm + footMm;

/** Where pieces may lie on a page. */
export const clearOf = ({ widthMm, heightMm }: PaperSize): Bounds2 => ({
  lowXMm: marginMm,
  lowYMm: marginMm + footMm,
  highXMm: widthMm - marginMm,
  highYMm: heightMm - marginMm - headMm,
});

/** The bar of 100 mm and the square of 50 mm, from a corner up and to the right. */
export function checkMarks(): Drawing {
  const barX = squareMm + 10;
  return {
    lines: [
      lineOf(
        'sheet',
        [
          [0, 0],
          [squareMm, 0],
          [squareMm, squareMm],
          [0, squareMm],
        ],
        { closed: true },
      ),
      lineOf('sheet', [
        [barX, 5],
        [barX + barMm, 5],
      ]),
      ...[0, barMm / 2, barMm].map((at) =>
        lineOf('sheet', [
          [barX + at, 3],
          [barX + at, 7],
        ]),
      ),
    ],
    texts: [
      textOf('50 mm square', [squareMm / 2, 4], 3, { anchor: 'middle' }),
      textOf('100 mm', [barX + barMm / 2, 9], 3, { anchor: 'middle' }),
    ],
  };
}

const measureFirst = [
  'Print at 100 %, without fitting to the page. Measure the bar',
  'and both sides of the square: where they are off, print again.',
];

/** @param notes at most five short lines for the foot of the page */
export function framedPage(
  paper: PaperSize,
  title: string,
  notes: readonly string[],
  drawing: Drawing,
): DrawnSheet {
  const { widthMm, heightMm } = paper;
  const marks = carried(checkMarks(), 0, ([x, y]) => [x + marginMm, y + marginMm]);
  const footX = marginMm + squareMm + 10;
  const frame: Drawing = {
    lines: [],
    texts: [
      textOf(title, [marginMm, heightMm - marginMm - 4], 4),
      ...[...notes, ...measureFirst].map((note, i) =>
        textOf(note, [footX, marginMm + squareMm - 3 - 4.2 * i], 3),
      ),
    ],
  };
  return { widthMm, heightMm, ...together([drawing, marks, frame]) };
}
