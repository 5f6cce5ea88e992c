import type { SurfaceIndex } from './surfaceIndex';

/** The shrinking of a ball against one facet ends when a step gains less than this share. */
const settledShare = 1e-9;
/**
 * Facets turned from the ball's own facet by no more than this are its own skin and don't limit the ball. Without it
 * a ball on a curved skin feels the dihedral angles of the facets beside it: on a finely faceted rod, two thirds of
 * the true diameter at facet centers. 30 degrees spans the steps of round bosses down to twelve sides.
 */
const ownSkinCosine = Math.cos((30.1 * Math.PI) / 180);
/** Steps that the shrinking may take; it settles in three to five. */
const mostSteps = 32;

/** A ball that touches the surface at a point, its center along the inward normal. */
export interface TouchingBall {
  pointX: number;
  pointY: number;
  pointZ: number;
  /** Unit inward normal. */
  inwardX: number;
  inwardY: number;
  inwardZ: number;
  diameterMm: number;
}

/**
 * Shrinks the ball until the facet in `slot` no longer cuts it. The largest ball through point p with its center
 * along d that a surface point q allows has the diameter |q - p|^2 / (d . (q - p)); the least of it over the facet is
 * found by taking the facet's point closest to the ball's center, shrinking the ball to pass through it, and again
 * (Dinkelbach's method for the least of a quotient: each step lands above the least one, ever closer).
 */
export function shrinkToFacet(
  index: SurfaceIndex,
  slot: number,
  tangentMm: number,
  ball: TouchingBall,
): void {
  const { points, corners } = index;
  const { inwardX, inwardY, inwardZ } = ball;
  const a = 3 * corners[3 * slot]!;
  const b = 3 * corners[3 * slot + 1]!;
  const c = 3 * corners[3 * slot + 2]!;
  // Relative to the touching point.
  const ax = points[a]! - ball.pointX;
  const ay = points[a + 1]! - ball.pointY;
  const az = points[a + 2]! - ball.pointZ;
  const bx = points[b]! - ball.pointX;
  const by = points[b + 1]! - ball.pointY;
  const bz = points[b + 2]! - ball.pointZ;
  const cx = points[c]! - ball.pointX;
  const cy = points[c + 1]! - ball.pointY;
  const cz = points[c + 2]! - ball.pointZ;
  if (
    inwardX * ax + inwardY * ay + inwardZ * az <= tangentMm &&
    inwardX * bx + inwardY * by + inwardZ * bz <= tangentMm &&
    inwardX * cx + inwardY * cy + inwardZ * cz <= tangentMm
  ) {
    return;
  }
  const ux = bx - ax;
  const uy = by - ay;
  const uz = bz - az;
  const vx = cx - ax;
  const vy = cy - ay;
  const vz = cz - az;
  // Does the plane of the facet cut the ball at all?
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const square = nx * nx + ny * ny + nz * nz;
  const height0 = nx * ax + ny * ay + nz * az;
  const lean = nx * inwardX + ny * inwardY + nz * inwardZ;
  if (lean < 0 && lean * lean > ownSkinCosine * ownSkinCosine * square) return;
  const uu = ux * ux + uy * uy + uz * uz;
  const uv = ux * vx + uy * vy + uz * vz;
  const vv = vx * vx + vy * vy + vz * vz;

  for (let step = 0; step < mostSteps; step++) {
    const radius = ball.diameterMm / 2;
    const height = height0 - radius * lean;
    // Squared radius of the circle that the facet's plane cuts from the ball, times the squared normal.
    const section = radius * radius * square - height * height;
    if (section <= 0) return;
    const wx = radius * inwardX - ax;
    const wy = radius * inwardY - ay;
    const wz = radius * inwardZ - az;
    const d1 = ux * wx + uy * wy + uz * wz;
    const d2 = vx * wx + vy * wy + vz * wz;
    // Most facets that get here lie beside that circle: past one of their edges by more than its radius.
    const insideB = vv * d1 - uv * d2;
    if (insideB < 0 && insideB * insideB >= section * vv) return;
    const insideC = uu * d2 - uv * d1;
    if (insideC < 0 && insideC * insideC >= section * uu) return;
    const insideA = square - insideB - insideC;
    if (insideA < 0 && insideA * insideA >= section * (uu + vv - 2 * uv)) return;
    // Closest point of the facet to the ball's center (Ericson, Real-Time Collision Detection, 5.1.5).
    let shareB: number;
    let shareC: number;
    if (d1 <= 0 && d2 <= 0) {
      shareB = 0;
      shareC = 0;
    } else {
      const d3 = d1 - uu;
      const d4 = d2 - uv;
      const d5 = d1 - uv;
      const d6 = d2 - vv;
      const areaC = d1 * d4 - d3 * d2;
      const areaB = d5 * d2 - d1 * d6;
      const areaA = d3 * d6 - d5 * d4;
      if (d3 >= 0 && d4 <= d3) {
        shareB = 1;
        shareC = 0;
      } else if (d6 >= 0 && d5 <= d6) {
        shareB = 0;
        shareC = 1;
      } else if (areaC <= 0 && d1 >= 0 && d3 <= 0) {
        shareB = d1 / (d1 - d3);
        shareC = 0;
      } else if (areaB <= 0 && d2 >= 0 && d6 <= 0) {
        shareB = 0;
        shareC = d2 / (d2 - d6);
      } else if (areaA <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
        shareC = (d4 - d3) / (d4 - d3 + (d5 - d6));
        shareB = 1 - shareC;
      } else {
        const sum = areaA + areaB + areaC;
        shareB = areaB / sum;
        shareC = areaC / sum;
      }
    }
    const qx = ax + shareB * ux + shareC * vx;
    const qy = ay + shareB * uy + shareC * vy;
    const qz = az + shareB * uz + shareC * vz;
    const rise = qx * inwardX + qy * inwardY + qz * inwardZ;
    if (!(rise > 0)) return;
    const diameter = (qx * qx + qy * qy + qz * qz) / rise;
    if (!(diameter < ball.diameterMm)) return;
    const settled = diameter > ball.diameterMm * (1 - settledShare);
    ball.diameterMm = diameter;
    if (settled) return;
  }
}
