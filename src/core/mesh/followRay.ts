import type { SurfaceIndex } from './surfaceIndex';
import { bitCount } from './surfaceIndexGrid';

/** A ray may pass outside a facet by this share of it and still hit, so that none slips through a shared edge. */
const edgeTolerance = 1e-10;

/** Where a ray ended; reused from ray to ray. */
export interface RayEnd {
  /** -1 when nothing was met. */
  slot: number;
  distanceMm: number;
}

/**
 * First facet along a ray (unit direction), walking the cells of the grid in order. Hits of
 * `skippedSlot` and hits nearer than `nearestMm` don't count; with `leaving` none but those where the ray comes out of the
 * material (through a facet that looks along it) do. Writes slot -1 when nothing is met.
 */
export function followRay(
  index: SurfaceIndex,
  originX: number,
  originY: number,
  originZ: number,
  dx: number,
  dy: number,
  dz: number,
  skippedSlot: number,
  nearestMm: number,
  leaving: boolean,
  end: RayEnd,
): void {
  const { points, corners, grid } = index;
  const { countX, countY, countZ, cellMm, filled, ranks, starts, slots } = grid;
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
    const word = filled[cell >>> 5]!;
    const bit = 1 << (cell & 31);
    if ((word & bit) !== 0) {
      const rank = ranks[cell >>> 5]! + bitCount(word & (bit - 1));
      const last = starts[rank + 1]!;
      for (let entry = starts[rank]!; entry < last; entry++) {
        const slot = slots[entry]!;
        if (slot === skippedSlot) continue;
        // Moller and Trumbore 1997; the determinant is negative where the facet looks along the ray.
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
        if (leaving && determinant > 0) continue;
        // The same figures times the determinant, turned positive: only a hit needs the division.
        const size = determinant < 0 ? -determinant : determinant;
        const sign = determinant < 0 ? -1 : 1;
        const most = size * (1 + edgeTolerance);
        const least = -size * edgeTolerance;
        const sx = originX - ax;
        const sy = originY - ay;
        const sz = originZ - az;
        const shareB = (sx * px + sy * py + sz * pz) * sign;
        if (!(shareB >= least && shareB <= most)) continue;
        const qx = sy * uz - sz * uy;
        const qy = sz * ux - sx * uz;
        const qz = sx * uy - sy * ux;
        const shareC = (dx * qx + dy * qy + dz * qz) * sign;
        if (!(shareC >= least && shareB + shareC <= most) || size === 0) continue;
        const distance = (vx * qx + vy * qy + vz * qz) / determinant;
        // Of equally near facets, as along a shared edge, the one in the lowest slot.
        if (distance > nearestMm && (distance < best || (distance === best && slot < bestSlot))) {
          best = distance;
          bestSlot = slot;
        }
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
