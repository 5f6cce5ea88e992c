/** Which parts of columns along the pull lie inside a body. */
import type { IndexedMesh } from '../mesh/types';
import { forEachCrossing, type ColumnGrid } from '../stone/pours/columnGrid';

/** Inside of a body in one column, from the top down, without overlap. */
export type Intervals = readonly (readonly [highMm: number, lowMm: number])[];

/** Of each column that meets the body; sparse, most columns meet few. Bodies that overlap count once. */
export function bodyIntervals(body: IndexedMesh, grid: ColumnGrid): (Intervals | undefined)[] {
  const crossings: [heightMm: number, up: boolean][][] = [];
  forEachCrossing(body, grid, (column, heightMm, up) => {
    (crossings[column] ??= []).push([heightMm, up]);
  });
  return crossings.map((inColumn) => {
    inColumn.sort((a, b) => b[0] - a[0]);
    const inside: [number, number][] = [];
    let [depth, entered, before] = [0, 0, Number.NaN];
    let beforeUp = false;
    for (const [height, up] of inColumn) {
      // A shared edge is met twice.
      const again = up === beforeUp && Math.abs(before - height) < 1e-5;
      [before, beforeUp] = [height, up];
      if (again) continue;
      if (up) {
        if (depth++ === 0) entered = height;
      } else if (depth > 0 && --depth === 0) inside.push([entered, height]);
    }
    return inside;
  });
}

/** What is left of a column when another body is cut out of it. */
export function intervalsWithout(from: Intervals, cut: Intervals): Intervals {
  return cut.reduce<Intervals>(
    (left, [cutHigh, cutLow]) =>
      left.flatMap(([high, low]): Intervals => {
        if (cutLow >= high || cutHigh <= low) return [[high, low]];
        const over: Intervals = cutHigh < high ? [[high, cutHigh]] : [];
        return cutLow > low ? [...over, [cutLow, low]] : over;
      }),
    from,
  );
}
