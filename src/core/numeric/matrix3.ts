/** Small fixed-size vectors and matrices, rows first; enough for plates, no more. */

export type Vector3 = readonly [number, number, number];
export type Matrix3 = readonly [Vector3, Vector3, Vector3];

type Index = 0 | 1 | 2;

/** The vector whose entries `entry` gives. */
export function vector3(entry: (row: Index) => number): Vector3 {
  return [entry(0), entry(1), entry(2)];
}

/** The matrix whose entries `entry` gives. */
export function matrix3(entry: (row: Index, column: Index) => number): Matrix3 {
  const row = (r: Index): Vector3 => vector3((c) => entry(r, c));
  return [row(0), row(1), row(2)];
}

/** Matrix times vector. */
export function timesVector(matrix: Matrix3, vector: Vector3): Vector3 {
  return vector3((r) => matrix[r][0] * vector[0] + matrix[r][1] * vector[1] + matrix[r][2] * vector[2]);
}

/** Matrix times matrix. */
export function timesMatrix(left: Matrix3, right: Matrix3): Matrix3 {
  return matrix3((r, c) => left[r][0] * right[0][c] + left[r][1] * right[1][c] + left[r][2] * right[2][c]);
}

/** Rows and columns exchanged. */
export function transposed(matrix: Matrix3): Matrix3 {
  return matrix3((r, c) => matrix[c][r]);
}
