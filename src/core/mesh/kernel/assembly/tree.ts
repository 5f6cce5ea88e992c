import {
  boxBytes,
  boxes,
  children,
  childrenBytes,
  coordinateMarginMm,
  cornerPoint,
  leafSlots,
  slotCount,
} from './surface';

/**
 * A tree of boxes, four under each node, over leaves of four slots. Each node's leaves are split at the plane that leaves
 * the least box area times leaves on its two sides (surface area heuristic, Wald 2007, in bins), and the larger halves
 * again until there are four. Twenty-four float32 per node: center x of its four children, then y, z, half width
 * along x, y, z, rounded outward; a missing child has half widths of minus infinity, so that nothing ever meets it.
 */
const binCount: i32 = 12;
/** Box (two vectors: least, most) and count of each bin along each axis. */
const binBytes: usize = 48;
const bins: usize = memory.data(3 * 12 * 48, 16);
/** Area times count of all bins from each on. */
const fromRight: usize = memory.data(4 * 12);

/** Box of each leaf: two vectors. */
let leafBoxes: usize = 0;
/** Leaf numbers, sorted into the ranges of the nodes. */
let order: usize = 0;
let nodeCount: i32 = 0;

function leafBox(at: i32): usize {
  return leafBoxes + 32 * <usize>load<u32>(order + 4 * <usize>at);
}

function halfArea(least: v128, most: v128): f32 {
  const size = f32x4.pmax(f32x4.sub(most, least), f32x4.splat(0));
  const x = f32x4.extract_lane(size, 0);
  const y = f32x4.extract_lane(size, 1);
  const z = f32x4.extract_lane(size, 2);
  return x * y + y * z + z * x;
}

function boundLeaves(): i32 {
  let leaf: i32 = 0;
  for (let first: i32 = 0; first < slotCount; first += leafSlots, leaf++) {
    let least = f32x4.splat(f32.MAX_VALUE);
    let most = f32x4.splat(-f32.MAX_VALUE);
    const end = min<i32>(slotCount, first + leafSlots);
    for (let slot = first; slot < end; slot++) {
      for (let corner: i32 = 0; corner < 3; corner++) {
        const point = cornerPoint(slot, corner);
        const place = f32x4(<f32>load<f64>(point), <f32>load<f64>(point, 8), <f32>load<f64>(point, 16), 0);
        least = f32x4.pmin(least, place);
        most = f32x4.pmax(most, place);
      }
    }
    v128.store(leafBoxes + 32 * <usize>leaf, least);
    v128.store(leafBoxes + 32 * <usize>leaf, most, 16);
    store<u32>(order + 4 * <usize>leaf, leaf);
  }
  return leaf;
}

function binOf(box: usize, least: v128, perBin: v128): v128 {
  // Twice the center, from twice the least center.
  const at = f32x4.mul(f32x4.sub(f32x4.add(v128.load(box), v128.load(box, 16)), least), perBin);
  return i32x4.min_s(i32x4.trunc_sat_f32x4_s(at), i32x4.splat(binCount - 1));
}

/** Splits the range in two and returns where; both sides hold at least one leaf. */
function split(from: i32, to: i32): i32 {
  let least = f32x4.splat(f32.MAX_VALUE);
  let most = f32x4.splat(-f32.MAX_VALUE);
  for (let at = from; at < to; at++) {
    const box = leafBox(at);
    const center = f32x4.add(v128.load(box), v128.load(box, 16));
    least = f32x4.pmin(least, center);
    most = f32x4.pmax(most, center);
  }
  const span = f32x4.sub(most, least);
  const perBin = v128.and(f32x4.div(f32x4.splat(<f32>binCount), span), f32x4.gt(span, f32x4.splat(0)));

  for (let bin: usize = 0; bin < 3 * <usize>binCount; bin++) {
    v128.store(bins + binBytes * bin, f32x4.splat(f32.MAX_VALUE));
    v128.store(bins + binBytes * bin, f32x4.splat(-f32.MAX_VALUE), 16);
    store<i32>(bins + binBytes * bin, 0, 32);
  }
  for (let at = from; at < to; at++) {
    const box = leafBox(at);
    const low = v128.load(box);
    const high = v128.load(box, 16);
    const bin = binOf(box, least, perBin);
    put(bins + binBytes * <usize>i32x4.extract_lane(bin, 0), low, high);
    put(bins + binBytes * <usize>(binCount + i32x4.extract_lane(bin, 1)), low, high);
    put(bins + binBytes * <usize>(2 * binCount + i32x4.extract_lane(bin, 2)), low, high);
  }

  let bestCost: f32 = f32.MAX_VALUE;
  let bestAxis: i32 = -1;
  let bestBin: i32 = 0;
  for (let axis: i32 = 0; axis < 3; axis++) {
    const axisBins = bins + binBytes * <usize>(axis * binCount);
    let low = f32x4.splat(f32.MAX_VALUE);
    let high = f32x4.splat(-f32.MAX_VALUE);
    let count: i32 = 0;
    for (let bin = binCount - 1; bin > 0; bin--) {
      const at = axisBins + binBytes * <usize>bin;
      low = f32x4.pmin(low, v128.load(at));
      high = f32x4.pmax(high, v128.load(at, 16));
      count += load<i32>(at, 32);
      store<f32>(fromRight + 4 * <usize>bin, halfArea(low, high) * <f32>count);
    }
    low = f32x4.splat(f32.MAX_VALUE);
    high = f32x4.splat(-f32.MAX_VALUE);
    count = 0;
    for (let bin: i32 = 0; bin < binCount - 1; bin++) {
      const at = axisBins + binBytes * <usize>bin;
      low = f32x4.pmin(low, v128.load(at));
      high = f32x4.pmax(high, v128.load(at, 16));
      count += load<i32>(at, 32);
      if (count == 0) continue;
      if (count == to - from) break;
      const cost = halfArea(low, high) * <f32>count + load<f32>(fromRight + 4 * <usize>(bin + 1));
      if (cost < bestCost) {
        bestCost = cost;
        bestAxis = axis;
        bestBin = bin;
      }
    }
  }
  // All centers in one place: the order they come in is as good as any.
  if (bestAxis < 0) return (from + to) / 2;

  let left = from;
  let right = to;
  while (left < right) {
    const bin = binOf(leafBox(left), least, perBin);
    const along =
      bestAxis == 0
        ? i32x4.extract_lane(bin, 0)
        : bestAxis == 1
          ? i32x4.extract_lane(bin, 1)
          : i32x4.extract_lane(bin, 2);
    if (along <= bestBin) {
      left++;
      continue;
    }
    right--;
    const passed = load<u32>(order + 4 * <usize>left);
    store<u32>(order + 4 * <usize>left, load<u32>(order + 4 * <usize>right));
    store<u32>(order + 4 * <usize>right, passed);
  }
  return left;
}

function put(bin: usize, low: v128, high: v128): void {
  v128.store(bin, f32x4.pmin(v128.load(bin), low));
  v128.store(bin, f32x4.pmax(v128.load(bin, 16), high), 16);
  store<i32>(bin, load<i32>(bin, 32) + 1, 32);
}

function rangeArea(from: i32, to: i32): f32 {
  let least = f32x4.splat(f32.MAX_VALUE);
  let most = f32x4.splat(-f32.MAX_VALUE);
  for (let at = from; at < to; at++) {
    const box = leafBox(at);
    least = f32x4.pmin(least, v128.load(box));
    most = f32x4.pmax(most, v128.load(box, 16));
  }
  boundLeast = least;
  boundMost = most;
  return halfArea(least, most);
}
let boundLeast: v128 = f32x4.splat(0);
let boundMost: v128 = f32x4.splat(0);

/** Builds the node over a range of leaves and all below it; returns its number, which is less than theirs. */
function buildNode(from: i32, to: i32): i32 {
  const node = nodeCount++;
  let count: i32 = 1;
  // Ends of up to four ranges; a range is split while it holds the most box area.
  let end0 = to;
  let end1 = to;
  let end2 = to;
  while (count < 4) {
    let widest: i32 = -1;
    let widestArea: f32 = -1;
    for (let range: i32 = 0; range < count; range++) {
      const start = range == 0 ? from : range == 1 ? end0 : range == 2 ? end1 : end2;
      const end = range == count - 1 ? to : range == 0 ? end0 : range == 1 ? end1 : end2;
      if (end - start < 2) continue;
      const area = rangeArea(start, end);
      if (area > widestArea) {
        widestArea = area;
        widest = range;
      }
    }
    if (widest < 0) break;
    const start = widest == 0 ? from : widest == 1 ? end0 : widest == 2 ? end1 : end2;
    const end = widest == count - 1 ? to : widest == 0 ? end0 : widest == 1 ? end1 : end2;
    const middle = split(start, end);
    if (widest == 0) {
      end2 = end1;
      end1 = end0;
      end0 = middle;
    } else if (widest == 1) {
      end2 = end1;
      end1 = middle;
    } else {
      end2 = middle;
    }
    count++;
  }
  const box = boxes + boxBytes * <usize>node;
  const links = children + childrenBytes * <usize>node;
  for (let child: i32 = 0; child < 4; child++) {
    const at = box + 4 * <usize>child;
    if (child >= count) {
      for (let vector: usize = 0; vector < 48; vector += 16) {
        store<f32>(at + vector, 0);
        store<f32>(at + vector, -f32.MAX_VALUE * 2, 48);
      }
      store<i32>(links + 4 * <usize>child, 0);
      continue;
    }
    const start = child == 0 ? from : child == 1 ? end0 : child == 2 ? end1 : end2;
    const end = child == count - 1 ? to : child == 0 ? end0 : child == 1 ? end1 : end2;
    rangeArea(start, end);
    const center = f32x4.mul(f32x4.add(boundLeast, boundMost), f32x4.splat(0.5));
    const half = f32x4.add(
      f32x4.mul(f32x4.sub(boundMost, boundLeast), f32x4.splat(0.5)),
      f32x4.splat(coordinateMarginMm),
    );
    store<f32>(at, f32x4.extract_lane(center, 0));
    store<f32>(at, f32x4.extract_lane(center, 1), 16);
    store<f32>(at, f32x4.extract_lane(center, 2), 32);
    store<f32>(at, f32x4.extract_lane(half, 0), 48);
    store<f32>(at, f32x4.extract_lane(half, 1), 64);
    store<f32>(at, f32x4.extract_lane(half, 2), 80);
    const link =
      end - start == 1 ? ~(leafSlots * <i32>load<u32>(order + 4 * <usize>start)) : buildNode(start, end);
    store<i32>(links + 4 * <usize>child, link);
  }
  return node;
}

/** Builds the tree and returns how many nodes it has. `scratch`: 36 bytes per leaf. */
export function buildTree(scratch: usize): i32 {
  leafBoxes = scratch;
  nodeCount = 0;
  order = scratch + 32 * <usize>((slotCount + leafSlots - 1) / leafSlots);
  buildNode(0, boundLeaves());
  return nodeCount;
}
