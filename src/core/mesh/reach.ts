import { castRay } from './rayWall';
import type { SurfaceIndex } from './surfaceIndex';
import { reachBit, type Vec3 } from './types';

/** A facet this little turned away from the pull still counts as standing along it. */
const verticalSine = Math.sin((0.1 * Math.PI) / 180);
/** Rays start this share of the box diagonal off the surface. */
const liftShare = 1e-5;

/** Reach bits of the facets `from` to `to - 1`: which mold half can reach each facet center along the pull. */
export function measureReach(
  index: SurfaceIndex,
  pull: Vec3,
  from: number,
  to: number,
  reach: Uint8Array,
): void {
  const { points, corners, facetOfSlot, facetCount } = index;
  const lift = liftShare * index.diagonalMm;
  const back: Vec3 = [-pull[0], -pull[1], -pull[2]];
  for (let slot = 0; slot < facetCount; slot++) {
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
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    reach[facet] = 0;
    if (!(length > 0)) continue;
    const along = (nx * pull[0] + ny * pull[1] + nz * pull[2]) / length;
    const start: Vec3 = [
      ax + (ux + vx) / 3 + (lift * nx) / length,
      ay + (uy + vy) / 3 + (lift * ny) / length,
      az + (uz + vz) / 3 + (lift * nz) / length,
    ];
    let bits = 0;
    if (along > -verticalSine && castRay(index, start, pull) === null) bits |= reachBit.fromShowSide;
    if (-along > -verticalSine && castRay(index, start, back) === null) bits |= reachBit.fromCoreSide;
    reach[facet] = bits;
  }
}
