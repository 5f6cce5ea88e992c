import type { Vec3 } from './types';

/** Where the cells of a grid lie. */
export interface CellFrame {
  readonly countX: number;
  readonly countY: number;
  readonly countZ: number;
  readonly cellMm: number;
  /** Lower corner of cell (0, 0, 0), mm. */
  readonly originMm: Vec3;
}

/** Cells are grown by this share of themselves, so that a ray along a cell wall misses nothing. */
const overlapShare = 1e-6;

/**
 * Writes the numbers of the cells that the facet in `slot` passes through to `cells` from place `at` on, and returns
 * the next free place; -1 when `cells` is too short. A cell is taken when no face of the cell, no plane of the facet
 * and no edge of the facet seen along an axis parts the two (Schwarz and Seidel 2010, conservative test).
 */
export function addFacetCells(
  points: Float64Array,
  corners: Uint32Array,
  slot: number,
  frame: CellFrame,
  cells: Uint32Array,
  at: number,
): number {
  const { countX, countY, countZ, cellMm, originMm } = frame;
  const a = 3 * corners[3 * slot]!;
  const b = 3 * corners[3 * slot + 1]!;
  const c = 3 * corners[3 * slot + 2]!;
  // Corners in cell units.
  const ax = (points[a]! - originMm[0]) / cellMm;
  const ay = (points[a + 1]! - originMm[1]) / cellMm;
  const az = (points[a + 2]! - originMm[2]) / cellMm;
  const bx = (points[b]! - originMm[0]) / cellMm;
  const by = (points[b + 1]! - originMm[1]) / cellMm;
  const bz = (points[b + 2]! - originMm[2]) / cellMm;
  const cx = (points[c]! - originMm[0]) / cellMm;
  const cy = (points[c + 1]! - originMm[1]) / cellMm;
  const cz = (points[c + 2]! - originMm[2]) / cellMm;
  const fromX = Math.max(0, Math.floor(Math.min(ax, bx, cx) - overlapShare));
  const fromY = Math.max(0, Math.floor(Math.min(ay, by, cy) - overlapShare));
  const fromZ = Math.max(0, Math.floor(Math.min(az, bz, cz) - overlapShare));
  const toX = Math.min(countX - 1, Math.floor(Math.max(ax, bx, cx) + overlapShare));
  const toY = Math.min(countY - 1, Math.floor(Math.max(ay, by, cy) + overlapShare));
  const toZ = Math.min(countZ - 1, Math.floor(Math.max(az, bz, cz) + overlapShare));
  if (at + (toX - fromX + 1) * (toY - fromY + 1) * (toZ - fromZ + 1) > cells.length) return -1;
  const spreadAxes = (toX > fromX ? 1 : 0) + (toY > fromY ? 1 : 0) + (toZ > fromZ ? 1 : 0);
  if (spreadAxes < 2) {
    for (let z = fromZ; z <= toZ; z++) {
      for (let y = fromY; y <= toY; y++) {
        for (let x = fromX; x <= toX; x++) cells[at++] = x + countX * (y + countY * z);
      }
    }
    return at;
  }
  const half = 0.5 + overlapShare;
  const ux = bx - ax;
  const uy = by - ay;
  const uz = bz - az;
  const vx = cx - bx;
  const vy = cy - by;
  const vz = cz - bz;
  const wx = ax - cx;
  const wy = ay - cy;
  const wz = az - cz;
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const planeAt = nx * (ax - 0.5) + ny * (ay - 0.5) + nz * (az - 0.5);
  const planeReach = (Math.abs(nx) + Math.abs(ny) + Math.abs(nz)) * half;
  // Each edge seen along z, x and y as a line whose inside is positive; `...In` is its value at cell (0, 0) plus reach.
  const alongZ = nz < 0 ? -1 : 1;
  const alongX = nx < 0 ? -1 : 1;
  const alongY = ny < 0 ? -1 : 1;
  const uzX = -uy * alongZ;
  const uzY = ux * alongZ;
  const uzIn = (Math.abs(ux) + Math.abs(uy)) * half - uzX * (ax - 0.5) - uzY * (ay - 0.5);
  const vzX = -vy * alongZ;
  const vzY = vx * alongZ;
  const vzIn = (Math.abs(vx) + Math.abs(vy)) * half - vzX * (bx - 0.5) - vzY * (by - 0.5);
  const wzX = -wy * alongZ;
  const wzY = wx * alongZ;
  const wzIn = (Math.abs(wx) + Math.abs(wy)) * half - wzX * (cx - 0.5) - wzY * (cy - 0.5);
  const uxY = -uz * alongX;
  const uxZ = uy * alongX;
  const uxIn = (Math.abs(uy) + Math.abs(uz)) * half - uxY * (ay - 0.5) - uxZ * (az - 0.5);
  const vxY = -vz * alongX;
  const vxZ = vy * alongX;
  const vxIn = (Math.abs(vy) + Math.abs(vz)) * half - vxY * (by - 0.5) - vxZ * (bz - 0.5);
  const wxY = -wz * alongX;
  const wxZ = wy * alongX;
  const wxIn = (Math.abs(wy) + Math.abs(wz)) * half - wxY * (cy - 0.5) - wxZ * (cz - 0.5);
  const uyZ = -ux * alongY;
  const uyX = uz * alongY;
  const uyIn = (Math.abs(uz) + Math.abs(ux)) * half - uyZ * (az - 0.5) - uyX * (ax - 0.5);
  const vyZ = -vx * alongY;
  const vyX = vz * alongY;
  const vyIn = (Math.abs(vz) + Math.abs(vx)) * half - vyZ * (bz - 0.5) - vyX * (bx - 0.5);
  const wyZ = -wx * alongY;
  const wyX = wz * alongY;
  const wyIn = (Math.abs(wz) + Math.abs(wx)) * half - wyZ * (cz - 0.5) - wyX * (cx - 0.5);
  for (let z = fromZ; z <= toZ; z++) {
    for (let y = fromY; y <= toY; y++) {
      if (uxY * y + uxZ * z + uxIn < 0 || vxY * y + vxZ * z + vxIn < 0 || wxY * y + wxZ * z + wxIn < 0)
        continue;
      for (let x = fromX; x <= toX; x++) {
        if (Math.abs(nx * x + ny * y + nz * z - planeAt) > planeReach) continue;
        if (uzX * x + uzY * y + uzIn < 0 || vzX * x + vzY * y + vzIn < 0 || wzX * x + wzY * y + wzIn < 0)
          continue;
        if (uyZ * z + uyX * x + uyIn < 0 || vyZ * z + vyX * x + vyIn < 0 || wyZ * z + wyX * x + wyIn < 0)
          continue;
        cells[at++] = x + countX * (y + countY * z);
      }
    }
  }
  return at;
}
