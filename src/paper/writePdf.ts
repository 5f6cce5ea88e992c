/** Sheets as PDF pages at true size, with the wish not to be scaled in printing. */
import {
  closePath,
  degrees,
  lineTo,
  moveTo,
  PDFDocument,
  PrintScaling,
  rgb,
  setDashPattern,
  setLineWidth,
  setStrokingRgbColor,
  StandardFonts,
  stroke,
  type PDFFont,
  type PDFOperator,
  type PDFPage,
} from 'pdf-lib';
import type { DrawnLine, DrawnSheet, DrawnText, Layer } from '../core/templates/drawing';

/** A point is 1/72 inch (ISO 32000-1, 8.3.2.3). */
const pointsPerMm = 72 / 25.4;
const pt = (mm: number) => mm * pointsPerMm;

const colors: Readonly<Record<Layer, readonly [number, number, number]>> = {
  cut: [0, 0, 0],
  afterCure: [0.61, 0.17, 0.08],
  mark: [0.14, 0.29, 0.5],
  text: [0.11, 0.15, 0.2],
  sheet: [0.42, 0.45, 0.5],
};

/** @returns the bytes of the file: one page for each sheet, the same for the same sheets */
export async function writePdf(sheets: readonly DrawnSheet[], title: string): Promise<Uint8Array> {
  const file = await PDFDocument.create({ updateMetadata: false });
  file.setTitle(title);
  file.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const font = await file.embedFont(StandardFonts.Helvetica);
  const letters = new Set(font.getCharacterSet());
  for (const { widthMm, heightMm, lines, texts } of sheets) {
    const page = file.addPage([widthMm * pointsPerMm, heightMm * pointsPerMm]);
    page.pushOperators(...lines.flatMap(strokeOf));
    for (const text of texts) writeText(page, font, letters, text);
  }
  return await file.save();
}

function strokeOf({ layer, points, closed, dashed, widthMm }: DrawnLine): PDFOperator[] {
  const [red, green, blue] = colors[layer];
  return [
    setStrokingRgbColor(red, green, blue),
    setLineWidth(pt(widthMm)),
    setDashPattern(dashed ? [pt(3), pt(2)] : [], 0),
    ...points.map(([x, y], i) => (i === 0 ? moveTo(pt(x), pt(y)) : lineTo(pt(x), pt(y)))),
    ...(closed ? [closePath()] : []),
    stroke(),
  ];
}

function writeText(
  page: PDFPage,
  font: PDFFont,
  letters: ReadonlySet<number>,
  { text, atMm: [x, y], sizeMm, turnDeg, anchor }: DrawnText,
): void {
  const size = sizeMm * pointsPerMm;
  const known = inLetters(text, letters);
  const back = anchor === 'middle' ? font.widthOfTextAtSize(known, size) / 2 : 0;
  const turn = (turnDeg * Math.PI) / 180;
  const [red, green, blue] = colors.text;
  page.drawText(known, {
    x: x * pointsPerMm - back * Math.cos(turn),
    y: y * pointsPerMm - back * Math.sin(turn),
    size,
    font,
    color: rgb(red, green, blue),
    rotate: degrees(turnDeg),
  });
}

/** The fonts that every reader has know Western letters only; names in others show question marks, and the piece keeps its number. */
const inLetters = (text: string, letters: ReadonlySet<number>) =>
  Array.from(text.replaceAll(/[\u202f\u00a0\s]/gu, ' ').replaceAll('\u2212', '-'))
    .map((letter) => (letters.has(letter.codePointAt(0)!) ? letter : '?'))
    .join('');
