/** Which parts of columns along the pull lie inside a body. */
import type { IndexedMesh } from '../mesh/types';
import { columnCrossings } from '../stone/pours/columnCrossings';
import type { ColumnGrid } from '../stone/pours/columnGrid';

/** Inside of a body in one column, from the top down, without overlap. */
export type Intervals = readonly (readonly [highMm: number, lowMm: number])[];

/**
 * Of each column that meets the body; sparse, most columns meet few. Bodies that overlap count once.
 * @throws Problem `pours.crossings`
 */
export function bodyIntervals(body: IndexedMesh, grid: ColumnGrid): (Intervals | undefined)[] {
  const { starts, heightMm, looksUp } = columnCrossings(body, grid);
  const intervals: (Intervals | undefined)[] = [];
  for (let column = 0; column + 1 < starts.length; column++) {
    const end = starts[column + 1]!;
    if (starts[column] === end) continue;
    const inside: [number, number][] = [];
    let [depth, entered, before, beforeUp] = [0, 0, Number.NaN, 0];
    for (let at = starts[column]!; at < end; at++) {
      const height = heightMm[at]!;
      const up = looksUp[at]!;
      // A shared edge is met twice.
      const again = up === beforeUp && Math.abs(before - height) < 1e-5;
      [before, beforeUp] = [height, up];
      if (again) continue;
      if (up === 1) {
        if (depth++ === 0) entered = height;
      } else if (depth > 0 && --depth === 0) inside.push([entered, height]);
    }
    intervals[column] = inside;
  }
  return intervals;
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
