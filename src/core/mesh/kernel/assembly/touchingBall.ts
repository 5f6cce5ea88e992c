import { cornerPoint } from './surface';
import { ownSkinRad } from './cones';

/** The shrinking of a ball against one facet ends when a step gains less than this share. */
const settledShare: f64 = 1e-9;
const ownSkinCosine: f64 = Math.cos(ownSkinRad);
/** Steps that the shrinking may take; it settles in three to five. */
const mostSteps: i32 = 32;

/** The ball at hand: where it touches the surface, its unit inward normal, along which its center lies, and its size. */
export let pointX: f64 = 0;
export let pointY: f64 = 0;
export let pointZ: f64 = 0;
export let inwardX: f64 = 0;
export let inwardY: f64 = 0;
export let inwardZ: f64 = 0;
export let diameterMm: f64 = 0;

export function putBall(px: f64, py: f64, pz: f64, dx: f64, dy: f64, dz: f64, diameter: f64): void {
  pointX = px;
  pointY = py;
  pointZ = pz;
  inwardX = dx;
  inwardY = dy;
  inwardZ = dz;
  diameterMm = diameter;
}

/**
 * Shrinks the ball until the facet in `slot` no longer cuts it. The largest ball through point p with its center
 * along d that a surface point q allows has the diameter |q - p|^2 / (d . (q - p)); the least of it over the facet is
 * found by taking the facet's point closest to the ball's center, shrinking the ball to pass through it, and again
 * (Dinkelbach's method for the least of a quotient: each step lands above the least one, ever closer).
 */
export function shrinkToFacet(slot: i32, tangentMm: f64): void {
  const a = cornerPoint(slot, 0);
  const b = cornerPoint(slot, 1);
  const c = cornerPoint(slot, 2);
  // Relative to the touching point.
  const ax = load<f64>(a) - pointX;
  const ay = load<f64>(a, 8) - pointY;
  const az = load<f64>(a, 16) - pointZ;
  const bx = load<f64>(b) - pointX;
  const by = load<f64>(b, 8) - pointY;
  const bz = load<f64>(b, 16) - pointZ;
  const cx = load<f64>(c) - pointX;
  const cy = load<f64>(c, 8) - pointY;
  const cz = load<f64>(c, 16) - pointZ;
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

  for (let step: i32 = 0; step < mostSteps; step++) {
    const radius = diameterMm / 2;
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
    let shareB: f64 = 0;
    let shareC: f64 = 0;
    if (!(d1 <= 0 && d2 <= 0)) {
      const d3 = d1 - uu;
      const d4 = d2 - uv;
      const d5 = d1 - uv;
      const d6 = d2 - vv;
      const areaC = d1 * d4 - d3 * d2;
      const areaB = d5 * d2 - d1 * d6;
      const areaA = d3 * d6 - d5 * d4;
      if (d3 >= 0 && d4 <= d3) {
        shareB = 1;
      } else if (d6 >= 0 && d5 <= d6) {
        shareC = 1;
      } else if (areaC <= 0 && d1 >= 0 && d3 <= 0) {
        shareB = d1 / (d1 - d3);
      } else if (areaB <= 0 && d2 >= 0 && d6 <= 0) {
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
    if (!(diameter < diameterMm)) return;
    const settled = diameter > diameterMm * (1 - settledShare);
    diameterMm = diameter;
    if (settled) return;
  }
}
