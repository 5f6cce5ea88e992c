/**
 * Walls and reach of a surface in SIMD. Four facets or four boxes at a time are tried in float32, with margins for its
 * rounding; what passes is worked in float64.
 */
import { putBall, diameterMm } from './touchingBall';
import { prepareCones } from './cones';
import { distanceMm, followFour, metSlot, setNoRay, setRay } from './fourRays';
import { prepareLeaves } from './leaves';
import { moveTo, normalX, normalY, normalZ, standX, standY, standZ } from './stand';
import { shrinkToSurface } from './ball';
import { diagonalMm, nodeCount, setNodeCount } from './surface';
import { buildTree } from './tree';

export { place, setSize } from './surface';

/**
 * Builds tree, leaves and cones and returns how many nodes there are; call `place` and `setSize` before. `scratch`:
 * 64 bytes per leaf.
 */
export function prepare(scratch: usize): i32 {
  setNodeCount(buildTree(scratch));
  prepareLeaves();
  prepareCones(scratch);
  return nodeCount;
}

/** Where a ray ends: the slot met, -1 for none; its distance is asked for next. */
export function castRay(x: f64, y: f64, z: f64, dx: f64, dy: f64, dz: f64): i32 {
  setRay(0, x, y, z, dx, dy, dz, -1);
  for (let ray: usize = 1; ray < 4; ray++) setNoRay(ray);
  followFour(0, false, false);
  return metSlot(0);
}

export function castDistanceMm(): f64 {
  return distanceMm(0);
}

/** Ray wall of each slot listed at `slots`: float32 mm to `wallMm`, the slot met (-1 for none) to `metSlots`. */
export function rayWalls(count: i32, slots: usize, nearestMm: f64, wallMm: usize, metSlots: usize): void {
  for (let end = slots + 4 * <usize>count; slots < end; slots += 16, wallMm += 16, metSlots += 16) {
    const rays = min<usize>(4, (end - slots) / 4);
    for (let ray: usize = 0; ray < 4; ray++) {
      const slot = ray < rays ? load<i32>(slots + 4 * ray) : -1;
      if (slot >= 0 && moveTo(slot)) setRay(ray, standX, standY, standZ, -normalX, -normalY, -normalZ, slot);
      else setNoRay(ray);
    }
    followFour(nearestMm, false, true);
    for (let ray: usize = 0; ray < rays; ray++) {
      const met = metSlot(ray);
      store<f32>(wallMm + 4 * ray, met >= 0 ? <f32>distanceMm(ray) : f32.NaN);
      store<i32>(metSlots + 4 * ray, met);
    }
  }
}

/** Ball wall of each slot listed, from its ray wall at `rayMm`: float32 mm to `wallMm`. */
export function ballWalls(count: i32, slots: usize, tangentMm: f64, rayMm: usize, wallMm: usize): void {
  const unboundedMm = 2 * diagonalMm;
  for (let end = slots + 4 * <usize>count; slots < end; slots += 4, rayMm += 4, wallMm += 4) {
    store<f32>(wallMm, f32.NaN);
    const slot = load<i32>(slots);
    if (!moveTo(slot)) continue;
    // A float32 ray wall may be rounded down: start a little above and let the surface itself decide.
    const ray = <f64>load<f32>(rayMm);
    const start = ray > 0 ? ray * (1 + 1e-6) : unboundedMm;
    putBall(standX, standY, standZ, -normalX, -normalY, -normalZ, start);
    shrinkToSurface(slot, tangentMm);
    if (diameterMm < unboundedMm) store<f32>(wallMm, <f32>diameterMm);
  }
}

/** Reach of each slot listed along a unit pull: a byte each, 1 from the show side, 2 from the core side. */
export function reach(
  count: i32,
  slots: usize,
  pullX: f64,
  pullY: f64,
  pullZ: f64,
  liftMm: f64,
  uprightSine: f64,
  flags: usize,
): void {
  memory.fill(flags, 0, <usize>count);
  reachFrom(1, count, slots, pullX, pullY, pullZ, liftMm, uprightSine, flags);
  reachFrom(2, count, slots, -pullX, -pullY, -pullZ, liftMm, uprightSine, flags);
}

/** Flags of the four slots whose rays are on their way. */
const flagsOfRays: usize = memory.data(4 * sizeof<usize>());

/** Adds `flag` to what can be reached from where the direction leads to. */
function reachFrom(
  flag: u8,
  count: i32,
  slots: usize,
  dx: f64,
  dy: f64,
  dz: f64,
  liftMm: f64,
  uprightSine: f64,
  flags: usize,
): void {
  let rays: usize = 0;
  for (let end = slots + 4 * <usize>count; slots < end; slots += 4, flags++) {
    if (!moveTo(load<i32>(slots))) continue;
    if (normalX * dx + normalY * dy + normalZ * dz <= -uprightSine) continue;
    const x = standX + liftMm * normalX;
    const y = standY + liftMm * normalY;
    const z = standZ + liftMm * normalZ;
    store<usize>(flagsOfRays + sizeof<usize>() * rays, flags);
    setRay(rays++, x, y, z, dx, dy, dz, -1);
    if (rays == 4) rays = endReach(flag, rays);
  }
  endReach(flag, rays);
}

/** Follows the rays that have been set and flags those that meet nothing; 0. */
function endReach(flag: u8, rays: usize): usize {
  for (let ray = rays; ray < 4; ray++) setNoRay(ray);
  followFour(0, true, false);
  for (let ray: usize = 0; ray < rays; ray++) {
    const flags = load<usize>(flagsOfRays + sizeof<usize>() * ray);
    if (metSlot(ray) < 0) store<u8>(flags, load<u8>(flags) | flag);
  }
  return 0;
}
