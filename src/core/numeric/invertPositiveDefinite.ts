/** Inverse of a small symmetric positive definite matrix, by its Cholesky factor (textbook linear algebra). */
import { Problem } from '../problem';

/** A pivot below this share of its scaled diagonal (which is 1) counts as no pivot at all. */
const smallestPivot = 1e-13;

/**
 * `matrix` is n × n, symmetric, rows first; the lower triangle is read. Rows and columns are first scaled to a unit
 * diagonal, because the entries of one matrix may carry different units (a stretching and a bending stiffness).
 * Throws `numeric.notPositiveDefinite` when a pivot is not positive.
 */
export function invertPositiveDefinite(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const scale = matrix.map((row, i) => 1 / Math.sqrt(row[i] ?? Number.NaN));
  const factor: number[][] = Array.from({ length: n }, () => Array.from({ length: n }, () => 0));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = matrix[i]![j]! * scale[i]! * scale[j]!;
      for (let k = 0; k < j; k++) rest -= factor[i]![k]! * factor[j]![k]!;
      if (i !== j) factor[i]![j] = rest / factor[j]![j]!;
      else if (rest > smallestPivot) factor[i]![i] = Math.sqrt(rest);
      else
        throw new Problem(
          'numeric.notPositiveDefinite',
          'These stiffnesses contradict each other: some deformation would need no work.',
        );
    }
  }
  const inverse = factor.map((row) => row.map(() => 0));
  for (let column = 0; column < n; column++) {
    const solution = backSubstituted(factor, forwardSubstituted(factor, column));
    for (let row = 0; row < n; row++) inverse[row]![column] = solution[row]! * scale[row]! * scale[column]!;
  }
  return inverse;
}

/** Solves L y = unit vector `column`. */
function forwardSubstituted(factor: readonly (readonly number[])[], column: number): number[] {
  const y: number[] = [];
  for (let i = 0; i < factor.length; i++) {
    let rest = i === column ? 1 : 0;
    for (let k = 0; k < i; k++) rest -= factor[i]![k]! * y[k]!;
    y.push(rest / factor[i]![i]!);
  }
  return y;
}

/** Solves Lᵀ x = y. */
function backSubstituted(factor: readonly (readonly number[])[], y: readonly number[]): number[] {
  const x = [...y];
  for (let i = factor.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < factor.length; k++) x[i]! -= factor[k]![i]! * x[k]!;
    x[i]! /= factor[i]![i]!;
  }
  return x;
}
