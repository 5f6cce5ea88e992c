import type { FacetSamples } from './closingTypes';

/** A run of rows. */
export interface Bin {
  readonly from: number;
  readonly to: number;
  /** Direction with most scatter, and its mean. */
  readonly widest: 0 | 1 | 2 | 3;
  readonly mean: number;
  /** Area times squared distance to the mean, mm⁴, all directions. */
  readonly scatter: number;
}

/**
 * The facets that take part, each with its area and its four directions: wall, cosine, arm u, arm v. Rows are moved
 * whole as bins are split, so that a bin is always read from end to end.
 */
export interface Rows {
  readonly facet: Uint32Array;
  readonly areaMm2: Float32Array;
  readonly directions: readonly [Float32Array, Float32Array, Float32Array, Float32Array];
}

export function rowsOf({ areaMm2, wallMm, pullCosine, armUMm, armVMm }: FacetSamples): Rows {
  let count = 0;
  for (let facet = 0; facet < areaMm2.length; facet++) if (areaMm2[facet]! > 0) count++;
  const floats = () => new Float32Array(count);
  const rows: Rows = {
    facet: new Uint32Array(count),
    areaMm2: floats(),
    directions: [floats(), floats(), floats(), floats()],
  };
  const [wall, cosine, armU, armV] = rows.directions;
  for (let facet = 0, row = 0; facet < areaMm2.length; facet++) {
    if (!(areaMm2[facet]! > 0)) continue;
    rows.facet[row] = facet;
    rows.areaMm2[row] = areaMm2[facet]!;
    wall[row] = wallMm[facet]!;
    cosine[row] = pullCosine[facet]!;
    armU[row] = armUMm[facet]!;
    armV[row] = armVMm[facet]!;
    row++;
  }
  return rows;
}

/** `weights` of the squares of the four directions. */
export function measureBin(
  { areaMm2, directions }: Rows,
  weights: readonly [number, number, number, number],
  from: number,
  to: number,
): Bin {
  const [wall, cosine, armU, armV] = directions;
  // About the first facet, so that a common offset costs no digits.
  const wall0 = wall[from]!;
  const cosine0 = cosine[from]!;
  const armU0 = armU[from]!;
  const armV0 = armV[from]!;
  let area = 0;
  let wallSum = 0;
  let wallSquares = 0;
  let cosineSum = 0;
  let cosineSquares = 0;
  let armUSum = 0;
  let armUSquares = 0;
  let armVSum = 0;
  let armVSquares = 0;
  for (let row = from; row < to; row++) {
    const weight = areaMm2[row]!;
    area += weight;
    const ofWall = wall[row]! - wall0;
    wallSum += weight * ofWall;
    wallSquares += weight * ofWall * ofWall;
    const ofCosine = cosine[row]! - cosine0;
    cosineSum += weight * ofCosine;
    cosineSquares += weight * ofCosine * ofCosine;
    const ofArmU = armU[row]! - armU0;
    armUSum += weight * ofArmU;
    armUSquares += weight * ofArmU * ofArmU;
    const ofArmV = armV[row]! - armV0;
    armVSum += weight * ofArmV;
    armVSquares += weight * ofArmV * ofArmV;
  }
  const sums = [wallSum, cosineSum, armUSum, armVSum] as const;
  const squares = [wallSquares, cosineSquares, armUSquares, armVSquares] as const;
  let widest: Bin['widest'] = 0;
  let most = 0;
  let scatter = 0;
  for (const k of [0, 1, 2, 3] as const) {
    const own = weights[k] * Math.max(0, squares[k] - (sums[k] * sums[k]) / area);
    scatter += own;
    if (own > most) [widest, most] = [k, own];
  }
  const mean = directions[widest][from]! + sums[widest] / area;
  return { from, to, widest, mean, scatter };
}

/** Rows at or under the mean of the widest direction first; where the others begin. */
export function partition({ facet, areaMm2, directions }: Rows, { from, to, widest, mean }: Bin): number {
  const values = directions[widest];
  const [wall, cosine, armU, armV] = directions;
  let low = from;
  let high = to - 1;
  while (low <= high) {
    if (values[low]! <= mean) {
      low++;
      continue;
    }
    const passed = facet[low]!;
    facet[low] = facet[high]!;
    facet[high] = passed;
    swap(areaMm2, low, high);
    swap(wall, low, high);
    swap(cosine, low, high);
    swap(armU, low, high);
    swap(armV, low, high);
    high--;
  }
  return low;
}

function swap(values: Float32Array, one: number, other: number): void {
  const kept = values[one]!;
  values[one] = values[other]!;
  values[other] = kept;
}
