/**
 * Walls and reach of a surface in SIMD. Four facets or four boxes at a time are tried in float32, with margins for its
 * rounding; what passes is worked in float64 by the same steps as in TypeScript, so that both give the same figures.
 */
import { putBall, diameterMm } from './touchingBall';
import { prepareCones } from './cones';
import { endMm, endSlot, followRay } from './ray';
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
  followRay(x, y, z, dx, dy, dz, -1, 0, false);
  return endSlot;
}

export function castDistanceMm(): f64 {
  return endMm;
}

/** Ray wall of each slot listed at `slots`: float32 mm to `wallMm`, the slot met (-1 for none) to `metSlot`. */
export function rayWalls(count: i32, slots: usize, nearestMm: f64, wallMm: usize, metSlot: usize): void {
  for (let end = slots + 4 * <usize>count; slots < end; slots += 4, wallMm += 4, metSlot += 4) {
    const slot = load<i32>(slots);
    let met = -1;
    let distance: f32 = f32.NaN;
    if (moveTo(slot)) {
      followRay(standX, standY, standZ, -normalX, -normalY, -normalZ, slot, nearestMm, false);
      met = endSlot;
      if (met >= 0) distance = <f32>endMm;
    }
    store<f32>(wallMm, distance);
    store<i32>(metSlot, met);
  }
}

/** Ball wall of each slot listed, from its ray wall at `rayMm`: float32 mm to `wallMm`. */
export function ballWalls(count: i32, slots: usize, tangentMm: f64, rayMm: usize, wallMm: usize): void {
  const unboundedMm = 2 * diagonalMm;
  for (let end = slots + 4 * <usize>count; slots < end; slots += 4, rayMm += 4, wallMm += 4) {
    store<f32>(wallMm, f32.NaN);
    const slot = load<i32>(slots);
    if (!moveTo(slot)) continue;
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
  for (let end = slots + 4 * <usize>count; slots < end; slots += 4, flags++) {
    let reached: u8 = 0;
    if (moveTo(load<i32>(slots))) {
      const x = standX + liftMm * normalX;
      const y = standY + liftMm * normalY;
      const z = standZ + liftMm * normalZ;
      const sine = normalX * pullX + normalY * pullY + normalZ * pullZ;
      if (sine > -uprightSine) {
        followRay(x, y, z, pullX, pullY, pullZ, -1, 0, true);
        if (endSlot < 0) reached |= 1;
      }
      if (sine < uprightSine) {
        followRay(x, y, z, -pullX, -pullY, -pullZ, -1, 0, true);
        if (endSlot < 0) reached |= 2;
      }
    }
    store<u8>(flags, reached);
  }
}
