import { around } from './openColumns';

/**
 * Widens what is known in a grid of heights by a band that is level with the nearest known column; NaN stays beyond it. So
 * a land leaves the pattern's edge square, and where the rim steps up or down the land steps beside it: a slope that set out
 * from the very edge would leave a wedge of stone between itself and the pattern's side.
 * @param columns width of the band in columns
 */
export function levelBand(knownMm: Float32Array, side: number, columns: number): Float32Array {
  const source = new Int32Array(knownMm.length).fill(-1);
  let front: number[] = [];
  knownMm.forEach((height, column) => {
    if (Number.isNaN(height)) return;
    source[column] = column;
    front.push(column);
  });
  const apart = (one: number, other: number) =>
    ((one % side) - (other % side)) ** 2 + (Math.floor(one / side) - Math.floor(other / side)) ** 2;
  const isInside = (column: number) =>
    column > side && column < knownMm.length - side && column % side > 0 && column % side < side - 1;
  while (front.length > 0) {
    const next = new Set<number>();
    for (const column of front) {
      if (!isInside(column)) continue;
      const from = source[column]!;
      for (const other of around(column, side)) {
        const away = apart(other, from);
        if (away > columns ** 2 || (source[other]! >= 0 && apart(other, source[other]!) <= away)) continue;
        source[other] = from;
        next.add(other);
      }
    }
    front = [...next];
  }
  return Float32Array.from(source, (from) => (from < 0 ? NaN : knownMm[from]!));
}
