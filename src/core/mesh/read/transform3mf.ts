/**
 * Twelve numbers of a 3MF transform, in the order of the file: m00 m01 m02 m10 m11 m12 m20 m21 m22 m30 m31 m32 of an
 * affine matrix that row vectors are multiplied with, x' = x m00 + y m10 + z m20 + m30 (3MF core specification 1.3,
 * section 3.3).
 */
export type Transform3mf = readonly number[];

export const noTransform: Transform3mf = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0];

/** Null when the text is not twelve finite numbers. */
export function parseTransform(text: string): Transform3mf | null {
  const numbers = text.trim().split(/\s+/, 13).map(Number);
  return numbers.length === 12 && numbers.every(Number.isFinite) ? numbers : null;
}

/** The transform that does `first` and then `second`. */
export function chain(first: Transform3mf, second: Transform3mf): Transform3mf {
  const chained: number[] = [];
  for (let row = 0; row < 4; row++) {
    for (let column = 0; column < 3; column++) {
      let sum = row === 3 ? second[9 + column]! : 0;
      for (let k = 0; k < 3; k++) sum += first[3 * row + k]! * second[3 * k + column]!;
      chained.push(sum);
    }
  }
  return chained;
}

/** Negative for a transform that mirrors, 0 for one that flattens. */
export function determinant(m: Transform3mf): number {
  const at = (i: number) => m[i]!;
  return (
    at(0) * (at(4) * at(8) - at(5) * at(7)) -
    at(1) * (at(3) * at(8) - at(5) * at(6)) +
    at(2) * (at(3) * at(7) - at(4) * at(6))
  );
}
