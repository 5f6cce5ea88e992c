/**
 * Fills a grid with heights that are known in some columns only: coarser and coarser means of what is known, then
 * blended back from coarse to fine ("pull-push" of scattered data, Gortler, Grzeszczuk, Szeliski & Cohen 1996, section
 * 3.4). Known columns keep their height; equal heights spread as they are. NaN where nothing is known at all.
 */
export function spreadHeights(knownMm: Float32Array, side: number): Float32Array {
  const weight = new Float32Array(knownMm.length);
  const heights = knownMm.slice();
  for (let column = 0; column < heights.length; column++) {
    if (Number.isNaN(heights[column])) heights[column] = 0;
    else weight[column] = 1;
  }
  fill(heights, weight, side);
  return heights;
}

function fill(heights: Float32Array, weight: Float32Array, side: number): void {
  if (side === 1) {
    if (weight[0] === 0) heights[0] = NaN;
    return;
  }
  const half = (side + 1) >> 1;
  const sum = new Float64Array(half * half);
  const sumWeight = new Float64Array(half * half);
  for (let row = 0; row < side; row++) {
    for (let i = 0; i < side; i++) {
      const share = weight[row * side + i]!;
      if (share === 0) continue;
      const parent = (row >> 1) * half + (i >> 1);
      sum[parent] = sum[parent]! + share * heights[row * side + i]!;
      sumWeight[parent] = sumWeight[parent]! + share;
    }
  }
  const coarse = new Float32Array(half * half);
  const coarseWeight = new Float32Array(half * half);
  for (let parent = 0; parent < coarse.length; parent++) {
    if (sumWeight[parent] === 0) continue;
    coarse[parent] = sum[parent]! / sumWeight[parent]!;
    coarseWeight[parent] = Math.min(1, sumWeight[parent]!);
  }
  fill(coarse, coarseWeight, half);
  for (let row = 0; row < side; row++) {
    for (let i = 0; i < side; i++) {
      const share = weight[row * side + i]!;
      if (share === 1) continue;
      const blended = between(coarse, half, i / 2 - 0.25, row / 2 - 0.25);
      heights[row * side + i] = share * heights[row * side + i]! + (1 - share) * blended;
    }
  }
}

/** Bilinear, clamped at the border. */
function between(heights: Float32Array, side: number, x: number, y: number): number {
  const clampedX = Math.min(side - 1, Math.max(0, x));
  const clampedY = Math.min(side - 1, Math.max(0, y));
  const i = Math.min(Math.max(0, side - 2), Math.floor(clampedX));
  const j = Math.min(Math.max(0, side - 2), Math.floor(clampedY));
  const [u, v] = [clampedX - i, clampedY - j];
  const at = j * side + i;
  const right = side > 1 ? 1 : 0;
  const up = side > 1 ? side : 0;
  return (
    (1 - v) * ((1 - u) * heights[at]! + u * heights[at + right]!) +
    v * ((1 - u) * heights[at + up]! + u * heights[at + up + right]!)
  );
}
