/** Which facets a ray meets: a quick look at the four of a leaf, and the hit itself. */
import { cornerPoint, leafMarginMm } from './surface';

/** A ray may pass outside a facet by this share of it and still hit, so that none slips through a shared edge. */
const edgeTolerance: f64 = 1e-10;

/** Where the ray at hand ends so far; slot -1 while it has met nothing. */
export let endSlot: i32 = -1;
export let endMm: f64 = Infinity;

export function setEnd(slot: i32, mm: f64): void {
  endSlot = slot;
  endMm = mm;
}

/**
 * Moves the end here when this facet is hit nearer (Moller and Trumbore 1997); of equally near ones, as along a shared
 * edge, the lowest slot. With `leaving` a hit counts where the ray comes out of the material alone.
 */
export function tryFacet(
  slot: i32,
  originX: f64,
  originY: f64,
  originZ: f64,
  dx: f64,
  dy: f64,
  dz: f64,
  nearestMm: f64,
  leaving: bool,
): void {
  const a = cornerPoint(slot, 0);
  const b = cornerPoint(slot, 1);
  const c = cornerPoint(slot, 2);
  const ax = load<f64>(a);
  const ay = load<f64>(a, 8);
  const az = load<f64>(a, 16);
  const ux = load<f64>(b) - ax;
  const uy = load<f64>(b, 8) - ay;
  const uz = load<f64>(b, 16) - az;
  const vx = load<f64>(c) - ax;
  const vy = load<f64>(c, 8) - ay;
  const vz = load<f64>(c, 16) - az;
  const px = dy * vz - dz * vy;
  const py = dz * vx - dx * vz;
  const pz = dx * vy - dy * vx;
  // Negative where the facet looks along the ray.
  const determinant = ux * px + uy * py + uz * pz;
  if (leaving && determinant > 0) return;
  // The same figures times the determinant, turned positive: only a hit needs the division.
  const size = determinant < 0 ? -determinant : determinant;
  const sign: f64 = determinant < 0 ? -1 : 1;
  const most = size * (1 + edgeTolerance);
  const least = -size * edgeTolerance;
  const sx = originX - ax;
  const sy = originY - ay;
  const sz = originZ - az;
  const shareB = (sx * px + sy * py + sz * pz) * sign;
  if (!(shareB >= least && shareB <= most)) return;
  const qx = sy * uz - sz * uy;
  const qy = sz * ux - sx * uz;
  const qz = sx * uy - sy * ux;
  const shareC = (dx * qx + dy * qy + dz * qz) * sign;
  if (!(shareC >= least && shareB + shareC <= most) || size == 0) return;
  const distance = (vx * qx + vy * qy + vz * qz) / determinant;
  if (distance > nearestMm && (distance < endMm || (distance == endMm && slot < endSlot))) {
    endMm = distance;
    endSlot = slot;
  }
}

/** d . (p x q), the side of edge p to q on which the ray passes, in each lane. */
function side(
  px: v128,
  py: v128,
  pz: v128,
  qx: v128,
  qy: v128,
  qz: v128,
  dx: v128,
  dy: v128,
  dz: v128,
): v128 {
  const x = f32x4.sub(f32x4.mul(py, qz), f32x4.mul(pz, qy));
  const y = f32x4.sub(f32x4.mul(pz, qx), f32x4.mul(px, qz));
  const z = f32x4.sub(f32x4.mul(px, qy), f32x4.mul(py, qx));
  return f32x4.add(f32x4.add(f32x4.mul(x, dx), f32x4.mul(y, dy)), f32x4.mul(z, dz));
}

export function largest(x: v128, y: v128, z: v128): v128 {
  return f32x4.pmax(f32x4.pmax(f32x4.abs(x), f32x4.abs(y)), f32x4.abs(z));
}

/** Bit per facet of the leaf that the ray may pass through: it passes all three edges on one side, or nearly so. */
export function facetsToTry(leaf: usize, x: v128, y: v128, z: v128, dx: v128, dy: v128, dz: v128): i32 {
  const ax = f32x4.sub(v128.load(leaf), x);
  const ay = f32x4.sub(v128.load(leaf, 16), y);
  const az = f32x4.sub(v128.load(leaf, 32), z);
  const bx = f32x4.sub(v128.load(leaf, 48), x);
  const by = f32x4.sub(v128.load(leaf, 64), y);
  const bz = f32x4.sub(v128.load(leaf, 80), z);
  const cx = f32x4.sub(v128.load(leaf, 96), x);
  const cy = f32x4.sub(v128.load(leaf, 112), y);
  const cz = f32x4.sub(v128.load(leaf, 128), z);
  const u = side(ax, ay, az, bx, by, bz, dx, dy, dz);
  const v = side(bx, by, bz, cx, cy, cz, dx, dy, dz);
  const w = side(cx, cy, cz, ax, ay, az, dx, dy, dz);
  // Each side is off by at most some float32 roundings of the largest product in it.
  const far = f32x4.pmax(f32x4.pmax(largest(ax, ay, az), largest(bx, by, bz)), largest(cx, cy, cz));
  const off = f32x4.mul(
    far,
    f32x4.add(f32x4.mul(far, f32x4.splat(2e-6)), f32x4.splat(<f32>8 * leafMarginMm)),
  );
  const least = f32x4.pmin(f32x4.pmin(u, v), w);
  const most = f32x4.pmax(f32x4.pmax(u, v), w);
  return i32x4.bitmask(v128.or(f32x4.ge(least, f32x4.neg(off)), f32x4.le(most, off)));
}
