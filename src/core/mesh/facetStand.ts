import type { SurfaceIndex } from './surfaceIndex';

/** A place to measure from: the center of a facet and its outward normal, in float64. Reused from facet to facet. */
export class FacetStand {
  x = 0;
  y = 0;
  z = 0;
  normalX = 0;
  normalY = 0;
  normalZ = 0;

  /** Moves to the facet in `slot`; false when it has no area and so no normal. */
  moveTo(index: SurfaceIndex, slot: number): boolean {
    const { points, corners } = index;
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
    if (!(doubleArea > 0)) return false;
    this.x = ax + (ux + vx) / 3;
    this.y = ay + (uy + vy) / 3;
    this.z = az + (uz + vz) / 3;
    this.normalX = nx / doubleArea;
    this.normalY = ny / doubleArea;
    this.normalZ = nz / doubleArea;
    return true;
  }
}
