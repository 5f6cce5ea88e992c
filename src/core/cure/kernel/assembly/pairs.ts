/** Two voxels at a time: side by side in memory, or the same place in two lines. */

/** Two float32, widened. */
export function widened(at: usize): v128 {
  return f64x2.promote_low_f32x4(v128.load64_zero(at));
}

/** Two float64, narrowed into two float32. */
export function storeNarrowed(at: usize, pair: v128): void {
  v128.store64_lane(at, f32x4.demote_f64x2_zero(pair), 0);
}

export function fromLines(one: usize, other: usize): v128 {
  return v128.load64_lane(other, v128.load64_zero(one), 1);
}

export function widenedFromLines(one: usize, other: usize): v128 {
  return f64x2.promote_low_f32x4(v128.load32_lane(other, v128.load32_zero(one), 1));
}

export function storeToLines(one: usize, other: usize, pair: v128): void {
  v128.store64_lane(one, pair, 0);
  v128.store64_lane(other, pair, 1);
}
