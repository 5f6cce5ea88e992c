/** Linear programs with few unknowns and many conditions. */

/** Lower than this a gain is rounding. */
const noticed = 1e-9;
const mostPivots = 2000;

/**
 * The y of least cost with `conditions` y >= `least`, y >= 0. Worked on its dual, where the start is known and the tableau has only
 * as many rows as there are unknowns: simplex method, steepest column, the least ratio leaves.
 * @param costs none below zero
 * @param conditions one row per condition
 * @returns null where no y meets them
 */
export function leastCost(
  costs: readonly number[],
  conditions: readonly (readonly number[])[],
  least: readonly number[],
): readonly number[] | null {
  const [rows, columns] = [costs.length, conditions.length + costs.length];
  // Row r: sum over conditions of their entry r, plus a slack, is the cost r. The last row holds what a column would gain.
  const tableau = Array.from({ length: rows }, (_, row) => {
    const line = new Float64Array(columns + 1);
    conditions.forEach((condition, column) => (line[column] = condition[row]!));
    line[conditions.length + row] = 1;
    line[columns] = costs[row]!;
    return line;
  });
  const gains = new Float64Array(columns + 1);
  gains.set(least);
  for (let pivots = 0; pivots < mostPivots; pivots++) {
    const entering = largestOf(gains, columns);
    if (gains[entering]! <= noticed)
      return Array.from(gains.subarray(conditions.length, columns), (gain) => Math.max(0, -gain));
    const leaving = leavingRow(tableau, entering, columns);
    if (leaving < 0) return null;
    pivot(tableau, gains, leaving, entering);
  }
  return null;
}

function largestOf(gains: Float64Array, columns: number): number {
  let best = 0;
  for (let column = 1; column < columns; column++) if (gains[column]! > gains[best]!) best = column;
  return best;
}

function leavingRow(tableau: readonly Float64Array[], entering: number, last: number): number {
  let leaving = -1;
  let leastRatio = Number.POSITIVE_INFINITY;
  tableau.forEach((line, row) => {
    if (line[entering]! <= noticed) return;
    const ratio = line[last]! / line[entering]!;
    if (ratio < leastRatio) [leastRatio, leaving] = [ratio, row];
  });
  return leaving;
}

function pivot(tableau: readonly Float64Array[], gains: Float64Array, row: number, column: number): void {
  const line = tableau[row]!;
  const scale = line[column]!;
  for (let at = 0; at < line.length; at++) line[at] = line[at]! / scale;
  for (const other of [...tableau, gains]) {
    const share = other[column]!;
    if (other === line || share === 0) continue;
    for (let at = 0; at < line.length; at++) other[at] = other[at]! - share * line[at]!;
  }
}
