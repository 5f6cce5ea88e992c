/** Where the surface lies in memory: points and corners in curve order, and what `prepare` adds. */

/** 3 float64 per point, mm. */
export let points: usize = 0;
/** 3 point numbers per slot. */
export let corners: usize = 0;
/** 24 float32 per node, see tree.ts. */
export let boxes: usize = 0;
/** 4 links per node: a node, or ~firstSlot of a leaf. */
export let children: usize = 0;
/** 16 float32 per node, see cones.ts. */
export let cones: usize = 0;
/** 52 float32 per leaf, see leaves.ts. */
export let leaves: usize = 0;
/** The root is node 0; every node comes before those below it. */
export let nodeCount: i32 = 0;
export let slotCount: i32 = 0;
/** Leaf coordinates are counted from here, so that float32 holds them well. */
export let middleX: f64 = 0;
export let middleY: f64 = 0;
export let middleZ: f64 = 0;
/** Length of the box diagonal. */
export let diagonalMm: f64 = 0;
/** Float32 rounds a coordinate of the part by less than this. */
export let coordinateMarginMm: f32 = 0;
/** The same for a coordinate counted from the middle. */
export let leafMarginMm: f32 = 0;

export const leafSlots: i32 = 4;
export const boxBytes: usize = 96;
export const childrenBytes: usize = 16;
export const coneBytes: usize = 64;
export const leafBytes: usize = 208;

export function place(
  points_: usize,
  corners_: usize,
  boxes_: usize,
  children_: usize,
  cones_: usize,
  leaves_: usize,
  slotCount_: i32,
): void {
  points = points_;
  corners = corners_;
  boxes = boxes_;
  children = children_;
  cones = cones_;
  leaves = leaves_;
  slotCount = slotCount_;
}

export function setNodeCount(count: i32): void {
  nodeCount = count;
}

/** @param largestCoordinateMm largest coordinate of the part, either sign */
export function setSize(x: f64, y: f64, z: f64, diagonal: f64, largestCoordinateMm: f64): void {
  middleX = x;
  middleY = y;
  middleZ = z;
  diagonalMm = diagonal;
  coordinateMarginMm = <f32>(2e-7 * largestCoordinateMm);
  leafMarginMm = <f32>(2e-7 * diagonal);
}

/** Address of a corner's point. */
export function cornerPoint(slot: i32, corner: i32): usize {
  return points + 24 * <usize>load<u32>(corners + 12 * <usize>slot + 4 * <usize>corner);
}
