/** Exact distance from a point to a triangle. */

/**
 * Squared distance to triangle `t` of `corners` (9 numbers each): by the region of the triangle's plane that the point lies
 * over (Ericson, Real-Time Collision Detection, 2005, section 5.1.5).
 */
export function squaredDistance(
  corners: Float64Array,
  t: number,
  px: number,
  py: number,
  pz: number,
): number {
  const o = 9 * t;
  const ax = corners[o]!;
  const ay = corners[o + 1]!;
  const az = corners[o + 2]!;
  const abx = corners[o + 3]! - ax;
  const aby = corners[o + 4]! - ay;
  const abz = corners[o + 5]! - az;
  const acx = corners[o + 6]! - ax;
  const acy = corners[o + 7]! - ay;
  const acz = corners[o + 8]! - az;
  const apx = px - ax;
  const apy = py - ay;
  const apz = pz - az;
  const d1 = abx * apx + aby * apy + abz * apz;
  const d2 = acx * apx + acy * apy + acz * apz;
  const whole = apx * apx + apy * apy + apz * apz;
  if (d1 <= 0 && d2 <= 0) return whole;
  const ab2 = abx * abx + aby * aby + abz * abz;
  const ac2 = acx * acx + acy * acy + acz * acz;
  const abac = abx * acx + aby * acy + abz * acz;
  const d3 = d1 - ab2;
  const d4 = d2 - abac;
  if (d3 >= 0 && d4 <= d3) return pastB(whole, d1, ab2);
  const vc = d1 * d4 - d3 * d2;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) return ab2 > 0 ? clamped(whole - (d1 * d1) / ab2) : whole;
  const d5 = d1 - abac;
  const d6 = d2 - ac2;
  if (d6 >= 0 && d5 <= d6) return pastB(whole, d2, ac2);
  const vb = d5 * d2 - d1 * d6;
  if (vb <= 0 && d2 >= 0 && d6 <= 0) return ac2 > 0 ? clamped(whole - (d2 * d2) / ac2) : whole;
  const va = d3 * d6 - d5 * d4;
  if (va <= 0 && d4 >= d3 && d5 >= d6) {
    const along = (d4 - d3) / (d4 - d3 + (d5 - d6));
    const x = apx - abx - along * (acx - abx);
    const y = apy - aby - along * (acy - aby);
    const z = apz - abz - along * (acz - abz);
    return x * x + y * y + z * z;
  }
  const nx = aby * acz - abz * acy;
  const ny = abz * acx - abx * acz;
  const nz = abx * acy - aby * acx;
  const height = nx * apx + ny * apy + nz * apz;
  const n2 = nx * nx + ny * ny + nz * nz;
  return n2 > 0 ? (height * height) / n2 : whole;
}

const clamped = (square: number): number => (square > 0 ? square : 0);
/** |p - b|² from |p - a|², (b - a)·(p - a) and |b - a|². */
const pastB = (whole: number, along: number, length2: number): number => clamped(whole - 2 * along + length2);

/** 9 numbers per facet. */
export function cornersOf(positions: Float64Array, facets: Uint32Array): Float64Array {
  const corners = new Float64Array(3 * facets.length);
  for (let at = 0; at < facets.length; at++) {
    const vertex = 3 * facets[at]!;
    corners[3 * at] = positions[vertex]!;
    corners[3 * at + 1] = positions[vertex + 1]!;
    corners[3 * at + 2] = positions[vertex + 2]!;
  }
  return corners;
}
