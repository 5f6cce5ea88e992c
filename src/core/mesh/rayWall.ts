import type { SurfaceIndex } from './surfaceIndex';
import type { Vec3 } from './types';

/** Rays may leave a facet by this share of its size and still hit it, so that none slips through a shared edge. */
const edgeTolerance = 1e-10;
/** Hits nearer than this share of the box diagonal are the start of the ray itself. */
const nearestShare = 1e-6;

/** Where a ray ended; reused from ray to ray. */
interface RayEnd {
  slot: number;
  distanceMm: number;
}

/**
 * First facet along a ray (unit direction, either facing), walking the cells of the grid in order. Hits of
 * `skippedSlot` and hits nearer than `nearestMm` don't count. Writes slot -1 when nothing is met.
 */
function followRay(
  index: SurfaceIndex,
  originX: number,
  originY: number,
  originZ: number,
  dx: number,
  dy: number,
  dz: number,
  skippedSlot: number,
  nearestMm: number,
  end: RayEnd,
): void {
  const { points, corners, grid } = index;
  const { countX, countY, countZ, cellMm, starts, slots } = grid;
  end.slot = -1;
  end.distanceMm = Infinity;

  // Cell units along the ray, starting where it enters the box.
  const ox = (originX - grid.originMm[0]) / cellMm;
  const oy = (originY - grid.originMm[1]) / cellMm;
  const oz = (originZ - grid.originMm[2]) / cellMm;
  const perX = 1 / dx;
  const perY = 1 / dy;
  const perZ = 1 / dz;
  let enter = 0;
  let x = Math.floor(ox);
  let y = Math.floor(oy);
  let z = Math.floor(oz);
  if (x < 0 || x >= countX || y < 0 || y >= countY || z < 0 || z >= countZ) {
    let leave = Infinity;
    if (dx !== 0) {
      enter = Math.max(enter, Math.min(-ox * perX, (countX - ox) * perX));
      leave = Math.min(leave, Math.max(-ox * perX, (countX - ox) * perX));
    } else if (ox < 0 || ox > countX) return;
    if (dy !== 0) {
      enter = Math.max(enter, Math.min(-oy * perY, (countY - oy) * perY));
      leave = Math.min(leave, Math.max(-oy * perY, (countY - oy) * perY));
    } else if (oy < 0 || oy > countY) return;
    if (dz !== 0) {
      enter = Math.max(enter, Math.min(-oz * perZ, (countZ - oz) * perZ));
      leave = Math.min(leave, Math.max(-oz * perZ, (countZ - oz) * perZ));
    } else if (oz < 0 || oz > countZ) return;
    if (enter > leave * (1 + 1e-12) + 1e-9) return;
    x = Math.min(countX - 1, Math.max(0, Math.floor(ox + enter * dx)));
    y = Math.min(countY - 1, Math.max(0, Math.floor(oy + enter * dy)));
    z = Math.min(countZ - 1, Math.max(0, Math.floor(oz + enter * dz)));
  }
  const stepX = dx > 0 ? 1 : -1;
  const stepY = dy > 0 ? countX : -countX;
  const stepZ = dz > 0 ? countX * countY : -countX * countY;
  const deltaX = Math.abs(perX);
  const deltaY = Math.abs(perY);
  const deltaZ = Math.abs(perZ);
  let nextX = dx === 0 ? Infinity : ((dx > 0 ? x + 1 : x) - ox) * perX;
  let nextY = dy === 0 ? Infinity : ((dy > 0 ? y + 1 : y) - oy) * perY;
  let nextZ = dz === 0 ? Infinity : ((dz > 0 ? z + 1 : z) - oz) * perZ;
  let leftX = dx > 0 ? countX - x : x + 1;
  let leftY = dy > 0 ? countY - y : y + 1;
  let leftZ = dz > 0 ? countZ - z : z + 1;
  let cell = x + countX * (y + countY * z);

  let best = Infinity;
  let bestSlot = -1;
  for (;;) {
    const last = starts[cell + 1]!;
    for (let entry = starts[cell]!; entry < last; entry++) {
      const slot = slots[entry]!;
      if (slot === skippedSlot) continue;
      // Moller and Trumbore 1997, both facings.
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
      const px = dy * vz - dz * vy;
      const py = dz * vx - dx * vz;
      const pz = dx * vy - dy * vx;
      const determinant = ux * px + uy * py + uz * pz;
      if (determinant === 0) continue;
      const scale = 1 / determinant;
      const sx = originX - ax;
      const sy = originY - ay;
      const sz = originZ - az;
      const shareB = (sx * px + sy * py + sz * pz) * scale;
      if (!(shareB >= -edgeTolerance && shareB <= 1 + edgeTolerance)) continue;
      const qx = sy * uz - sz * uy;
      const qy = sz * ux - sx * uz;
      const qz = sx * uy - sy * ux;
      const shareC = (dx * qx + dy * qy + dz * qz) * scale;
      if (!(shareC >= -edgeTolerance && shareB + shareC <= 1 + edgeTolerance)) continue;
      const distance = (vx * qx + vy * qy + vz * qz) * scale;
      if (distance > nearestMm && distance < best) {
        best = distance;
        bestSlot = slot;
      }
    }
    const leave = nextX < nextY ? (nextX < nextZ ? nextX : nextZ) : nextY < nextZ ? nextY : nextZ;
    if (best <= leave * cellMm) break;
    if (leave === nextX) {
      if (--leftX === 0) break;
      nextX += deltaX;
      cell += stepX;
    } else if (leave === nextY) {
      if (--leftY === 0) break;
      nextY += deltaY;
      cell += stepY;
    } else {
      if (--leftZ === 0) break;
      nextZ += deltaZ;
      cell += stepZ;
    }
  }
  end.slot = bestSlot;
  end.distanceMm = best;
}

/**
 * Ray wall of the facets `from` to `to - 1`: from the facet center along the inward normal to the first facet met,
 * of either facing, the facet itself and hits nearer than 1e-6 box diagonals left out. Worked in float64, stored
 * as float32 mm; NaN and -1 where nothing is met or the facet has no area. Both arrays are indexed by facet.
 */
export function measureRayWalls(
  index: SurfaceIndex,
  from: number,
  to: number,
  rayWallMm: Float32Array,
  rayFacet: Int32Array,
): void {
  const { points, corners, facetOfSlot, facetCount } = index;
  const nearestMm = nearestShare * index.diagonalMm;
  const end: RayEnd = { slot: -1, distanceMm: Infinity };
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
    rayWallMm[facet] = NaN;
    rayFacet[facet] = -1;
    if (!(doubleArea > 0)) continue;
    followRay(
      index,
      ax + (ux + vx) / 3,
      ay + (uy + vy) / 3,
      az + (uz + vz) / 3,
      -nx / doubleArea,
      -ny / doubleArea,
      -nz / doubleArea,
      slot,
      nearestMm,
      end,
    );
    if (end.slot < 0) continue;
    rayWallMm[facet] = end.distanceMm;
    rayFacet[facet] = facetOfSlot === null ? end.slot : facetOfSlot[end.slot]!;
  }
}

/**
 * First facet that a ray meets, of either facing; null when it meets none. `origin` in mm; `direction` need not be
 * a unit vector, `distanceMm` is a true distance.
 */
export function castRay(
  index: SurfaceIndex,
  origin: Vec3,
  direction: Vec3,
): { facet: number; distanceMm: number } | null {
  const length = Math.hypot(direction[0], direction[1], direction[2]);
  if (!(length > 0) || index.facetCount === 0) return null;
  const end: RayEnd = { slot: -1, distanceMm: Infinity };
  followRay(
    index,
    origin[0],
    origin[1],
    origin[2],
    direction[0] / length,
    direction[1] / length,
    direction[2] / length,
    -1,
    0,
    end,
  );
  if (end.slot < 0) return null;
  const facet = index.facetOfSlot === null ? end.slot : index.facetOfSlot[end.slot]!;
  return { facet, distanceMm: end.distanceMm };
}
