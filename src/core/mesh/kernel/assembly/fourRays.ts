/** Four rays at a time through the tree of tree.ts: a lane each. */
import { endMm, endSlot, facetsToTry, largest, setEnd, tryFacet } from './rayFacets';
import {
  boxBytes,
  boxes,
  children,
  childrenBytes,
  coordinateMarginMm,
  diagonalMm,
  leafBytes,
  leafSlots,
  leaves,
  middleX,
  middleY,
  middleZ,
} from './surface';

/** Stands for a direction of 0, so that no box is missed by 0 times infinity. */
const leastDirection: f64 = 1e-20;

/** Float64 per ray: origin x, y, z and unit direction x, y, z. */
const rays: usize = memory.data(4 * 48, 16);
const rayBytes: usize = 48;
/** In float32, a vector of the four rays each: origin, origin from the middle, direction, one over it; x, y, z each. */
const lanes: usize = memory.data(12 * 16, 16);
/** How far each ray is still looked along, float32; less than nothing when it is done. */
const looksMm: usize = memory.data(16, 16);
/** Where each ray ended, and what it starts on, which it does not meet. */
const metSlots: usize = memory.data(16, 16);
const endsMm: usize = memory.data(32, 16);
const ownSlots: usize = memory.data(16, 16);
/** Links still to visit: where each ray enters the box (16 bytes), the link, where the first of them does. */
const waiting: usize = memory.data(64 * 32, 16);
const waitingBytes: usize = 32;

/** @param ownSlot -1 for none */
export function setRay(ray: usize, x: f64, y: f64, z: f64, dx: f64, dy: f64, dz: f64, ownSlot: i32): void {
  const at = rays + rayBytes * ray;
  store<f64>(at, x);
  store<f64>(at, y, 8);
  store<f64>(at, z, 16);
  store<f64>(at, dx, 24);
  store<f64>(at, dy, 32);
  store<f64>(at, dz, 40);
  store<i32>(ownSlots + 4 * ray, ownSlot);
  store<f32>(looksMm + 4 * ray, f32.MAX_VALUE);
  const lane = lanes + 4 * ray;
  store<f32>(lane, <f32>x);
  store<f32>(lane, <f32>y, 16);
  store<f32>(lane, <f32>z, 32);
  store<f32>(lane, <f32>(x - middleX), 48);
  store<f32>(lane, <f32>(y - middleY), 64);
  store<f32>(lane, <f32>(z - middleZ), 80);
  store<f32>(lane, <f32>dx, 96);
  store<f32>(lane, <f32>dy, 112);
  store<f32>(lane, <f32>dz, 128);
  store<f32>(lane, <f32>(1 / (abs(dx) > leastDirection ? dx : leastDirection)), 144);
  store<f32>(lane, <f32>(1 / (abs(dy) > leastDirection ? dy : leastDirection)), 160);
  store<f32>(lane, <f32>(1 / (abs(dz) > leastDirection ? dz : leastDirection)), 176);
}

/** For a place of the four that is not needed. */
export function setNoRay(ray: usize): void {
  store<f32>(looksMm + 4 * ray, -1);
}

/** -1 when the ray met nothing. */
export function metSlot(ray: usize): i32 {
  return load<i32>(metSlots + 4 * ray);
}

export function distanceMm(ray: usize): f64 {
  return load<f64>(endsMm + 8 * ray);
}

/** With `any`, the ray is done when it has met one. */
function tryLeaf(firstSlot: i32, ray: usize, nearestMm: f64, any: bool, leaving: bool): void {
  const leaf = leaves + leafBytes * <usize>(firstSlot / leafSlots);
  const lane = lanes + 4 * ray;
  let facets = facetsToTry(
    leaf,
    v128.load32_splat(lane, 48),
    v128.load32_splat(lane, 64),
    v128.load32_splat(lane, 80),
    v128.load32_splat(lane, 96),
    v128.load32_splat(lane, 112),
    v128.load32_splat(lane, 128),
  );
  if (facets == 0) return;
  const at = rays + rayBytes * ray;
  setEnd(load<i32>(metSlots + 4 * ray), load<f64>(endsMm + 8 * ray));
  const ownSlot = load<i32>(ownSlots + 4 * ray);
  while (facets != 0) {
    const slot = firstSlot + ctz(facets);
    if (slot != ownSlot) {
      tryFacet(
        slot,
        load<f64>(at),
        load<f64>(at, 8),
        load<f64>(at, 16),
        load<f64>(at, 24),
        load<f64>(at, 32),
        load<f64>(at, 40),
        nearestMm,
        leaving,
      );
    }
    facets &= facets - 1;
  }
  if (endSlot < 0) return;
  store<i32>(metSlots + 4 * ray, endSlot);
  store<f64>(endsMm + 8 * ray, endMm);
  store<f32>(looksMm + 4 * ray, any ? <f32>-1 : <f32>(endMm * (1 + 1e-6)));
}

/**
 * First facet along each of four rays (unit direction). Rays that start side by side visit mostly the same
 * nodes: together they take two thirds of the time that they take one by one. Hits nearer than `nearestMm` don't count.
 * With `any`, one hit is as good as another; with `leaving`, a hit counts where the ray comes out of the material alone.
 */
export function followFour(nearestMm: f64, any: bool, leaving: bool): void {
  for (let ray: usize = 0; ray < 4; ray++) {
    store<i32>(metSlots + 4 * ray, -1);
    store<f64>(endsMm + 8 * ray, Infinity);
  }
  const x = v128.load(lanes);
  const y = v128.load(lanes, 16);
  const z = v128.load(lanes, 32);
  const inverseX = v128.load(lanes, 144);
  const inverseY = v128.load(lanes, 160);
  const inverseZ = v128.load(lanes, 176);
  const lengthX = f32x4.abs(inverseX);
  const lengthY = f32x4.abs(inverseY);
  const lengthZ = f32x4.abs(inverseZ);
  // Rounded: coordinates, and what is made of distances to boxes, which are at most the diagonal and the ray's own from the
  // middle.
  const fromMiddleMm = largest(v128.load(lanes, 48), v128.load(lanes, 64), v128.load(lanes, 80));
  const grow = f32x4.add(
    f32x4.splat(<f32>2 * coordinateMarginMm + <f32>(1e-6 * diagonalMm)),
    f32x4.mul(fromMiddleMm, f32x4.splat(1e-6)),
  );
  let waitingEnd = waiting + waitingBytes;
  v128.store(waiting, f32x4.splat(0));
  store<i32>(waiting, 0, 16);
  while (waitingEnd > waiting) {
    waitingEnd -= waitingBytes;
    const bestMm = v128.load(looksMm);
    let looking = i32x4.bitmask(f32x4.le(v128.load(waitingEnd), bestMm));
    if (looking == 0) continue;
    const node = load<i32>(waitingEnd, 16);
    if (node < 0) {
      while (looking != 0) {
        tryLeaf(~node, <usize>ctz(looking), nearestMm, any, leaving);
        looking &= looking - 1;
      }
      continue;
    }
    const box = boxes + boxBytes * <usize>node;
    const links = children + childrenBytes * <usize>node;
    const from = waitingEnd;
    for (let child: usize = 0; child < 16; child += 4) {
      const at = box + child;
      const midX = f32x4.mul(f32x4.sub(v128.load32_splat(at), x), inverseX);
      const midY = f32x4.mul(f32x4.sub(v128.load32_splat(at, 16), y), inverseY);
      const midZ = f32x4.mul(f32x4.sub(v128.load32_splat(at, 32), z), inverseZ);
      const halfX = f32x4.mul(f32x4.add(v128.load32_splat(at, 48), grow), lengthX);
      const halfY = f32x4.mul(f32x4.add(v128.load32_splat(at, 64), grow), lengthY);
      const halfZ = f32x4.mul(f32x4.add(v128.load32_splat(at, 80), grow), lengthZ);
      const enter = f32x4.pmax(
        f32x4.pmax(f32x4.sub(midX, halfX), f32x4.sub(midY, halfY)),
        f32x4.pmax(f32x4.sub(midZ, halfZ), f32x4.splat(0)),
      );
      const leave = f32x4.pmin(
        f32x4.pmin(f32x4.add(midX, halfX), f32x4.add(midY, halfY)),
        f32x4.pmin(f32x4.add(midZ, halfZ), bestMm),
      );
      const meets = f32x4.le(enter, leave);
      if (!v128.any_true(meets)) continue;
      const entered = v128.bitselect(enter, f32x4.splat(f32.POSITIVE_INFINITY), meets);
      const pair = f32x4.pmin(entered, v128.shuffle<f32>(entered, entered, 2, 3, 0, 1));
      const nearest = f32x4.extract_lane(f32x4.pmin(pair, v128.shuffle<f32>(pair, pair, 1, 0, 3, 2)), 0);
      // The nearest comes last, to be looked at first.
      let place = waitingEnd;
      while (place > from && load<f32>(place - waitingBytes, 20) < nearest) {
        v128.store(place, v128.load(place - waitingBytes));
        store<u64>(place, load<u64>(place - waitingBytes, 16), 16);
        place -= waitingBytes;
      }
      v128.store(place, entered);
      store<i32>(place, load<i32>(links + child), 16);
      store<f32>(place, nearest, 20);
      waitingEnd += waitingBytes;
    }
  }
}
