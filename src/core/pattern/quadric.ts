/**
 * Sums of squared distances to planes, as the ten coefficients of a quadratic form (Garland and Heckbert, Surface simplification
 * using quadric error metrics, 1997).
 */
export const numbersPerQuadric = 10;

/** Adds the plane through a point to the quadric with that number. */
// oxlint-disable-next-line max-params
export function addPlane(
  quadrics: Float64Array,
  number: number,
  normal: Float64Array,
  positions: Float64Array,
  point: number,
  weight: number,
): void {
  const [x, y, z] = [normal[0]!, normal[1]!, normal[2]!];
  const d = -(x * positions[point]! + y * positions[point + 1]! + z * positions[point + 2]!);
  const at = numbersPerQuadric * number;
  quadrics[at]! += weight * x * x;
  quadrics[at + 1]! += weight * y * y;
  quadrics[at + 2]! += weight * z * z;
  quadrics[at + 3]! += weight * x * y;
  quadrics[at + 4]! += weight * y * z;
  quadrics[at + 5]! += weight * z * x;
  quadrics[at + 6]! += weight * x * d;
  quadrics[at + 7]! += weight * y * d;
  quadrics[at + 8]! += weight * z * d;
  quadrics[at + 9]! += weight * d * d;
}

/** What two quadrics together say of a point, mm². */
export function errorAt(
  quadrics: Float64Array,
  one: number,
  other: number,
  positions: Float64Array,
  point: number,
): number {
  const [a, b] = [numbersPerQuadric * one, numbersPerQuadric * other];
  const q = (term: number) => quadrics[a + term]! + quadrics[b + term]!;
  const [x, y, z] = [positions[point]!, positions[point + 1]!, positions[point + 2]!];
  const error =
    x * (q(0) * x + 2 * (q(3) * y + q(5) * z + q(6))) +
    y * (q(1) * y + 2 * (q(4) * z + q(7))) +
    z * (q(2) * z + 2 * q(8)) +
    q(9);
  return error > 0 ? error : 0;
}
