import type { SurfaceIndex } from './surfaceIndex';
import { leafSlots } from './surfaceIndexTree';

/** Facets that rise above the tangent plane by less than this share of the box diagonal don't limit a ball. */
const tangentShare = 1e-9;
/** The shrinking of a ball against one facet ends when a step gains less than this share. */
const settledShare = 1e-9;

/** A ball that touches the surface at a point, its center along the inward normal. */
interface TouchingBall {
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
function shrinkToFacet(index: SurfaceIndex, slot: number, tangentMm: number, ball: TouchingBall): void {
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
  const uu = ux * ux + uy * uy + uz * uz;
  const uv = ux * vx + uy * vy + uz * vz;
  const vv = vx * vx + vy * vy + vz * vz;

  for (let round = 0; round < 16; round++) {
    const radius = ball.diameterMm / 2;
    const height = height0 - radius * lean;
    if (height * height >= radius * radius * square) return;
    // Closest point of the facet to the ball's center (Ericson, Real-Time Collision Detection, 5.1.5).
    const wx = radius * inwardX - ax;
    const wy = radius * inwardY - ay;
    const wz = radius * inwardZ - az;
    const d1 = ux * wx + uy * wy + uz * wz;
    const d2 = vx * wx + vy * wy + vz * wz;
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

/** Shrinks the ball against every facet of the surface but `ownSlot`. */
function shrinkToSurface(index: SurfaceIndex, ownSlot: number, tangentMm: number, ball: TouchingBall): void {
  const { nodeCount, boxes, links } = index.tree;
  const { pointX, pointY, pointZ, inwardX, inwardY, inwardZ } = ball;
  const slotCount = index.facetCount;
  let radius = ball.diameterMm / 2;
  let x = pointX + radius * inwardX;
  let y = pointY + radius * inwardY;
  let z = pointZ + radius * inwardZ;
  let square = radius * radius;
  for (let node = 0; node < nodeCount;) {
    const at = 8 * node;
    const dx = Math.max(boxes[at]! - x, x - boxes[at + 3]!, 0);
    const dy = Math.max(boxes[at + 1]! - y, y - boxes[at + 4]!, 0);
    const dz = Math.max(boxes[at + 2]! - z, z - boxes[at + 5]!, 0);
    if (dx * dx + dy * dy + dz * dz >= square) {
      node = links[at + 6]!;
      continue;
    }
    const firstSlot = links[at + 7]!;
    node++;
    if (firstSlot < 0) continue;
    const endSlot = Math.min(firstSlot + leafSlots, slotCount);
    for (let slot = firstSlot; slot < endSlot; slot++) {
      if (slot !== ownSlot) shrinkToFacet(index, slot, tangentMm, ball);
    }
    radius = ball.diameterMm / 2;
    x = pointX + radius * inwardX;
    y = pointY + radius * inwardY;
    z = pointZ + radius * inwardZ;
    square = radius * radius;
  }
}

/**
 * Ball wall of the facets `from` to `to - 1`: diameter of the largest ball inside the material that touches the
 * surface at the facet center, its center along the inward normal, exact against facets (not only their corners) to
 * 1e-9 of itself. It starts from the ray wall, which it can't exceed. Facets that rise above the tangent plane by
 * less than 1e-9 box diagonals are taken as coplanar. Stored as float32 mm, indexed by facet; NaN where the facet has no
 * area or nothing stands before it within two box diagonals.
 */
export function measureBallWalls(
  index: SurfaceIndex,
  from: number,
  to: number,
  rayWallMm: Float32Array,
  ballWallMm: Float32Array,
): void {
  const { points, corners, facetOfSlot, facetCount } = index;
  const tangentMm = tangentShare * index.diagonalMm;
  const unboundedMm = 2 * index.diagonalMm;
  const ball: TouchingBall = {
    pointX: 0,
    pointY: 0,
    pointZ: 0,
    inwardX: 0,
    inwardY: 0,
    inwardZ: 0,
    diameterMm: 0,
  };
  const firstSlot = facetOfSlot === null ? from : 0;
  const endSlot = facetOfSlot === null ? to : facetCount;
  for (let slot = firstSlot; slot < endSlot; slot++) {
    const facet = facetOfSlot === null ? slot : facetOfSlot[slot]!;
    if (facet < from || facet >= to) continue;
    const a = 3 * corners[3 * slot]!;
    const b = 3 * corners[3 * slot + 1]!;
    const c = 3 * corners[3 * slot + 2]!;
    const ax = points[a]!;
    const ay = points[a + 1]!;
    const az = points[a + 2]!;
    const ux = points[b]! - ax;
    const uy = points[b + 1]! - ay;
    const uz = points[b + 2]! - az;
    const vx = points[c]! - ax;
    const vy = points[c + 1]! - ay;
    const vz = points[c + 2]! - az;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const doubleArea = Math.sqrt(nx * nx + ny * ny + nz * nz);
    ballWallMm[facet] = NaN;
    if (!(doubleArea > 0)) continue;
    ball.pointX = ax + (ux + vx) / 3;
    ball.pointY = ay + (uy + vy) / 3;
    ball.pointZ = az + (uz + vz) / 3;
    ball.inwardX = -nx / doubleArea;
    ball.inwardY = -ny / doubleArea;
    ball.inwardZ = -nz / doubleArea;
    const rayWall = rayWallMm[facet]!;
    ball.diameterMm = rayWall > 0 ? rayWall * (1 + 1e-6) : unboundedMm;
    shrinkToSurface(index, slot, tangentMm, ball);
    if (rayWall > 0) ballWallMm[facet] = Math.min(ball.diameterMm, rayWall);
    else if (ball.diameterMm < unboundedMm) ballWallMm[facet] = ball.diameterMm;
  }
}
