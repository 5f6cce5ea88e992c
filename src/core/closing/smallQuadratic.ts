/**
 * Least of ½ dᵀH d + gᵀd over three unknowns with a few linear limits, by trying every set of up to three limits that
 * may bind. With at most a handful of limits this is quicker and surer than following edges (textbook KKT conditions).
 */

export type Triple = readonly [number, number, number];

/** row · d ≥ least */
export interface LinearLimit {
  readonly row: Triple;
  readonly least: number;
}

export interface QuadraticStep {
  readonly step: Triple;
  /** How hard each limit pushes, 0 for those that don't bind; same order as the limits. */
  readonly push: readonly number[];
}

/** row · q */
export const valueOf = (row: Triple, q: Triple): number => row[0] * q[0] + row[1] * q[1] + row[2] * q[2];

/** `hessian` rows first, positive definite. null when no set fits (limits that contradict each other). */
export function leastQuadratic(
  hessian: readonly [Triple, Triple, Triple],
  gradient: Triple,
  limits: readonly LinearLimit[],
): QuadraticStep | null {
  let best: { step: Triple; push: number[]; value: number } | null = null;
  for (const binding of subsetsUpTo3(limits.length)) {
    const solved = solveBinding(hessian, gradient, binding, limits);
    if (solved === null) continue;
    const { step, push } = solved;
    if (push.some((one) => one < 0)) continue;
    const reach = 1e-12 * (1 + Math.abs(step[0]) + Math.abs(step[1]) + Math.abs(step[2]));
    if (limits.some(({ row, least }) => valueOf(row, step) < least - reach)) continue;
    const curved: Triple = [valueOf(hessian[0], step), valueOf(hessian[1], step), valueOf(hessian[2], step)];
    const value = 0.5 * valueOf(step, curved) + valueOf(gradient, step);
    if (best !== null && value >= best.value) continue;
    const allPush = limits.map(() => 0);
    for (const [i, limit] of binding.entries()) allPush[limit] = push[i]!;
    best = { step, push: allPush, value };
  }
  return best;
}

function subsetsUpTo3(count: number): number[][] {
  const subsets: number[][] = [[]];
  for (let a = 0; a < count; a++) {
    subsets.push([a]);
    for (let b = a + 1; b < count; b++) {
      subsets.push([a, b]);
      for (let c = b + 1; c < count; c++) subsets.push([a, b, c]);
    }
  }
  return subsets;
}

/** H d + g = Σ push row, row · d = least for the binding limits. */
function solveBinding(
  hessian: readonly [Triple, Triple, Triple],
  gradient: Triple,
  binding: readonly number[],
  limits: readonly LinearLimit[],
): { step: Triple; push: number[] } | null {
  const size = 3 + binding.length;
  const rows: number[][] = [];
  for (let i = 0; i < 3; i++)
    rows.push([...hessian[i]!, ...binding.map((limit) => -limits[limit]!.row[i]!), -gradient[i]!]);
  for (const limit of binding)
    rows.push([...limits[limit]!.row, ...binding.map(() => 0), limits[limit]!.least]);
  const solution = eliminated(rows, size);
  if (solution === null) return null;
  return { step: [solution[0]!, solution[1]!, solution[2]!], push: solution.slice(3) };
}

/** Gaussian elimination with the largest pivot, rows scaled; the last column is the right-hand side. */
function eliminated(rows: number[][], size: number): number[] | null {
  const scale = rows.map((row) => Math.max(...row.slice(0, size).map(Math.abs)));
  if (scale.some((one) => !(one > 0))) return null;
  for (const [i, row] of rows.entries()) for (let j = 0; j <= size; j++) row[j]! /= scale[i]!;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++)
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = row;
    const found = rows[pivot]!;
    if (!(Math.abs(found[column]!) > 1e-13)) return null;
    rows[pivot] = rows[column]!;
    rows[column] = found;
    for (let row = column + 1; row < size; row++) {
      const factor = rows[row]![column]! / found[column]!;
      if (factor !== 0) for (let j = column; j <= size; j++) rows[row]![j]! -= factor * found[j]!;
    }
  }
  const solution = Array.from({ length: size }, () => 0);
  for (let row = size - 1; row >= 0; row--) {
    let rest = rows[row]![size]!;
    for (let j = row + 1; j < size; j++) rest -= rows[row]![j]! * solution[j]!;
    solution[row] = rest / rows[row]![row]!;
  }
  return solution;
}
