/**
 * An outline as rows: the sheet is divided into strips of one height along the roll, and each strip knows from where to where along
 * the roll the outline reaches in it. Along the roll nothing is rounded; across it everything is rounded outward, so what is clear of
 * each other in rows is clear in truth.
 */
import type { Outline } from './piece';

/** `[from, to, from, to ...]` along the roll, mm, rising, no two of them touching. */
export type RowSpans = readonly number[];

/** Rows touch at their edges; what only lies on an edge is in neither of them. */
const edgeMm = 1e-6;

/** Spans joined where they meet. */
export function joined(spans: number[][]): number[] {
  const out: number[] = [];
  for (const [from, to] of spans.sort((a, b) => a[0]! - b[0]!)) {
    if (out.length > 0 && from! <= out.at(-1)!) out[out.length - 1] = Math.max(out.at(-1)!, to!);
    else out.push(from!, to!);
  }
  return out;
}

/** For each row from `lowMm` up: where the outline's inside, or its border, lies in it. */
export function coveredRows(outline: Outline, lowMm: number, rowMm: number, count: number): RowSpans[] {
  return Array.from({ length: count }, (_, row) => {
    const [low, high] = [lowMm + row * rowMm + edgeMm, lowMm + (row + 1) * rowMm - edgeMm];
    // A point inside, moved straight up, meets the upper edge of the row inside, or the border first.
    return joined([...insideAt(outline, low), ...insideAt(outline, high), ...borderIn(outline, low, high)]);
  });
}

/** For each row: where not all of its height is inside the outline. */
export function outsideRows(outline: Outline, lowMm: number, rowMm: number, count: number): RowSpans[] {
  return Array.from({ length: count }, (_, row) => {
    const [low, high] = [lowMm + row * rowMm + edgeMm, lowMm + (row + 1) * rowMm - edgeMm];
    return joined([
      ...gapsBetween(insideAt(outline, low)),
      ...gapsBetween(insideAt(outline, high)),
      ...borderIn(outline, low, high),
    ]);
  });
}

/**
 * The rows grown on all sides by a gap. Row 0 of the result lies `reach` rows under row 0 of what is given.
 * A row grows into another by what Pythagoras leaves of the gap over the least distance between the two rows.
 */
export function grownRows(
  rows: readonly RowSpans[],
  rowMm: number,
  gapMm: number,
): { readonly rows: RowSpans[]; readonly reach: number } {
  // A trace more than asked, for what the row edges leave out.
  const gap = gapMm + 4 * edgeMm;
  const reach = Math.ceil(gapMm / rowMm - edgeMm);
  const grown = Array.from({ length: rows.length + 2 * reach }, (_, at) => {
    const spans: number[][] = [];
    const middle = at - reach;
    for (let row = Math.max(0, middle - reach); row <= Math.min(rows.length - 1, middle + reach); row++) {
      const apartMm = Math.max(0, Math.abs(row - middle) - 1) * rowMm;
      const sideMm = Math.sqrt(Math.max(0, gap * gap - apartMm * apartMm));
      for (let i = 0; i < rows[row]!.length; i += 2)
        spans.push([rows[row]![i]! - sideMm, rows[row]![i + 1]! + sideMm]);
    }
    return joined(spans);
  });
  return { rows: grown, reach };
}

function insideAt(outline: Outline, y: number): number[][] {
  const crossings: number[] = [];
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    if (ay > y !== by > y) crossings.push(ax + ((y - ay) / (by - ay)) * (bx - ax));
  });
  crossings.sort((a, b) => a - b);
  return Array.from({ length: crossings.length / 2 }, (_, i) => [crossings[2 * i]!, crossings[2 * i + 1]!]);
}

function gapsBetween(spans: readonly number[][]): number[][] {
  const edges = [-Infinity, ...spans.flat(), Infinity];
  return Array.from({ length: edges.length / 2 }, (_, i) => [edges[2 * i]!, edges[2 * i + 1]!]);
}

function borderIn(outline: Outline, low: number, high: number): number[][] {
  return outline.flatMap(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    if (Math.max(ay, by) <= low || Math.min(ay, by) >= high) return [];
    const at = (y: number) => (ay === by ? ax : ax + ((y - ay) / (by - ay)) * (bx - ax));
    const [under, over] = ay <= by ? [ax, bx] : [bx, ax];
    const from = Math.min(ay, by) < low ? at(low) : under;
    const to = Math.max(ay, by) > high ? at(high) : over;
    return ay === by ? [[Math.min(ax, bx), Math.max(ax, bx)]] : [[Math.min(from, to), Math.max(from, to)]];
  });
}
