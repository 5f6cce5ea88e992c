import { cornerPoint } from './surface';

/** The place that is measured from: center of a facet and its outward normal. */
export let standX: f64 = 0;
export let standY: f64 = 0;
export let standZ: f64 = 0;
export let normalX: f64 = 0;
export let normalY: f64 = 0;
export let normalZ: f64 = 0;

/** False when the facet has no area and so no normal. */
export function moveTo(slot: i32): bool {
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
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const doubleArea = sqrt<f64>(nx * nx + ny * ny + nz * nz);
  if (!(doubleArea > 0)) return false;
  standX = ax + (ux + vx) / 3;
  standY = ay + (uy + vy) / 3;
  standZ = az + (uz + vz) / 3;
  normalX = nx / doubleArea;
  normalY = ny / doubleArea;
  normalZ = nz / doubleArea;
  return true;
}
