/** A sheet of cloth that fills up: what is taken of each row, and the first place along it where a piece goes. */
import { boundsOf, turned } from './outline';
import { coveredRows, grownRows, joined, outsideRows, type RowSpans } from './nestRows';
import type { Outline, Point2 } from './piece';

/** One piece at one turn, in the rows of a sheet. */
export interface RowShape {
  readonly turnDeg: number;
  readonly rows: readonly RowSpans[];
  /** What others must keep clear of, from `reach` rows under its first. */
  readonly grown: readonly RowSpans[];
  readonly reach: number;
  readonly lengthMm: number;
  /** Lowest corner of its box before it is moved. */
  readonly lowMm: Point2;
}

/** Rows of a sheet; a roll has no outline and no end. */
export interface RowSheet {
  readonly rowMm: number;
  readonly count: number;
  readonly lowMm: Point2;
  readonly taken: readonly RowSpans[];
}

export interface RowPlace {
  readonly shape: RowShape;
  readonly row: number;
  readonly alongMm: number;
}

/** A trace of overlap in the numbers, far under what a knife can follow. */
const traceMm = 1e-7;

/** The usable width divided evenly, so that a piece as wide as the roll still fits. */
export function rollRows(widthMm: number, aboutRowMm: number): RowSheet {
  const count = Math.max(1, Math.ceil(widthMm / aboutRowMm - 1e-9));
  return { rowMm: widthMm / count, count, lowMm: [0, 0], taken: Array.from({ length: count }, () => []) };
}

/** An outline to stay inside of. */
export function outlineRows(outline: Outline, aboutRowMm: number): RowSheet {
  const { lowXMm, lowYMm, highYMm } = boundsOf(outline);
  const { rowMm, count } = rollRows(highYMm - lowYMm, aboutRowMm);
  const moved = outline.map(([x, y]): Point2 => [x - lowXMm, y - lowYMm]);
  return { rowMm, count, lowMm: [lowXMm, lowYMm], taken: outsideRows(moved, 0, rowMm, count) };
}

export function rowShapeOf(outline: Outline, turnDeg: number, rowMm: number, gapMm: number): RowShape {
  const points = outline.map((point) => turned(point, turnDeg));
  const { lowXMm, lowYMm, highXMm, highYMm } = boundsOf(points);
  const moved = points.map(([x, y]): Point2 => [x - lowXMm, y - lowYMm]);
  const rows = coveredRows(moved, 0, rowMm, Math.max(1, Math.ceil((highYMm - lowYMm) / rowMm - 1e-6)));
  const { rows: grown, reach } = grownRows(rows, rowMm, gapMm);
  return { turnDeg, rows, grown, reach, lengthMm: highXMm - lowXMm, lowMm: [lowXMm, lowYMm] };
}

/** The place that ends first along the sheet, lowest across among equals; null when it goes nowhere before `endMm`. */
export function firstPlace(
  taken: readonly RowSpans[],
  shape: RowShape,
  endMm: number,
  fromFar: boolean,
): { readonly row: number; readonly alongMm: number } | null {
  let best: { row: number; alongMm: number } | null = null;
  let mostAlongMm = endMm - shape.lengthMm;
  const last = taken.length - shape.rows.length;
  for (let at = 0; at <= last; at++) {
    const row = fromFar ? last - at : at;
    const alongMm = slideIn(taken, shape.rows, row, mostAlongMm);
    if (alongMm === null) continue;
    best = { row, alongMm };
    mostAlongMm = alongMm - traceMm;
  }
  return best;
}

/** Slides a piece along the sheet until nothing taken is under it; null when that is not before `mostAlongMm`. */
function slideIn(
  taken: readonly RowSpans[],
  rows: readonly RowSpans[],
  at: number,
  mostAlongMm: number,
): number | null {
  let alongMm = 0;
  let clearFor = 0;
  // All rows must be clear at one place: after a slide the round begins anew.
  for (let row = 0; clearFor < rows.length; row = row + 1 === rows.length ? 0 : row + 1) {
    const before = alongMm;
    const others = taken[at + row]!;
    const own = rows[row]!;
    for (let i = 0; i < own.length; i += 2)
      for (let k = 0; k < others.length; k += 2) {
        if (others[k]! >= own[i + 1]! + alongMm - traceMm) break;
        if (others[k + 1]! > own[i]! + alongMm + traceMm) alongMm = others[k + 1]! - own[i]!;
      }
    if (alongMm > mostAlongMm || alongMm === Infinity) return null;
    // A slide for a later span of this row can bring an earlier one onto something: this row is asked again too.
    clearFor = alongMm === before ? clearFor + 1 : 0;
  }
  return alongMm;
}

/** What is taken once the piece lies there. */
export function withPlaced(taken: readonly RowSpans[], { shape, row, alongMm }: RowPlace): RowSpans[] {
  const next = [...taken];
  shape.grown.forEach((spans, i) => {
    const at = row - shape.reach + i;
    if (at < 0 || at >= next.length) return;
    const pairs: number[][] = [];
    for (let k = 0; k < spans.length; k += 2) pairs.push([spans[k]! + alongMm, spans[k + 1]! + alongMm]);
    const others = next[at]!;
    for (let k = 0; k < others.length; k += 2) pairs.push([others[k]!, others[k + 1]!]);
    next[at] = joined(pairs);
  });
  return next;
}
