/**
 * Order of facets along a Hilbert curve through their centers. Neighbors in space become neighbors in memory, which
 * packs smaller and lets rays touch fewer cache lines.
 *
 * Source of the curve's arithmetic: J. Skilling, "Programming the Hilbert curve", AIP Conference Proceedings 707
 * (2004), axes-to-transpose form.
 */

const bitsPerAxis = 10;
const cells = 2 ** bitsPerAxis;

/**
 * Facet numbers in curve order; facets in the same cell keep their order.
 *
 * @param steps 3 whole numbers per vertex, 0 to `longestSteps`
 */
export function curveOrder(steps: Int32Array, facets: Uint32Array, longestSteps: number): Uint32Array {
  const facetCount = facets.length / 3;
  const keys = new Uint32Array(facetCount);
  const scale = (cells - 1) / (3 * Math.max(1, longestSteps));
  for (let f = 0; f < facetCount; f++) {
    const a = 3 * (facets[3 * f] as number);
    const b = 3 * (facets[3 * f + 1] as number);
    const c = 3 * (facets[3 * f + 2] as number);
    keys[f] = hilbertKey(
      (((steps[a] as number) + (steps[b] as number) + (steps[c] as number)) * scale) | 0,
      (((steps[a + 1] as number) + (steps[b + 1] as number) + (steps[c + 1] as number)) * scale) | 0,
      (((steps[a + 2] as number) + (steps[b + 2] as number) + (steps[c + 2] as number)) * scale) | 0,
    );
  }
  return sortedByKey(keys);
}

/** Place of a cell along the curve, 0 to 2^30 - 1; each coordinate is a whole number below 1024. */
export function hilbertKey(x: number, y: number, z: number): number {
  for (let bit = cells >> 1; bit > 1; bit >>= 1) {
    const below = bit - 1;
    if (x & bit) x ^= below;
    if (y & bit) {
      x ^= below;
    } else {
      const swap = (x ^ y) & below;
      x ^= swap;
      y ^= swap;
    }
    if (z & bit) {
      x ^= below;
    } else {
      const swap = (x ^ z) & below;
      x ^= swap;
      z ^= swap;
    }
  }
  y ^= x;
  z ^= y;
  let flip = 0;
  for (let bit = cells >> 1; bit > 1; bit >>= 1) if (z & bit) flip ^= bit - 1;
  return (spread(x ^ flip) << 2) | (spread(y ^ flip) << 1) | spread(z ^ flip);
}

/** Puts two empty bits between the bits of a 10-bit number. */
function spread(value: number): number {
  let bits = value & 0x3ff;
  bits = (bits | (bits << 16)) & 0x030000ff;
  bits = (bits | (bits << 8)) & 0x0300f00f;
  bits = (bits | (bits << 4)) & 0x030c30c3;
  return (bits | (bits << 2)) & 0x09249249;
}

/** Stable radix sort of the numbers 0, 1, 2, ... by their 30-bit keys. */
function sortedByKey(keys: Uint32Array): Uint32Array {
  let from = new Uint32Array(keys.length).map((_, i) => i);
  let to = new Uint32Array(keys.length);
  for (let shift = 0; shift < 3 * bitsPerAxis; shift += bitsPerAxis) {
    const starts = new Uint32Array(cells + 1);
    for (const key of keys) {
      const next = ((key >>> shift) & (cells - 1)) + 1;
      starts[next] = (starts[next] as number) + 1;
    }
    for (let i = 0; i < cells; i++) starts[i + 1] = (starts[i + 1] as number) + (starts[i] as number);
    for (const item of from) {
      const digit = ((keys[item] as number) >>> shift) & (cells - 1);
      const place = starts[digit] as number;
      to[place] = item;
      starts[digit] = place + 1;
    }
    [from, to] = [to, from];
  }
  return from;
}
