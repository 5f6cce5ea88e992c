const levels = 1024;

/**
 * How much water a height picture would hold, in height units times pixels: every pixel is raised to the lowest
 * level at which water runs off over the border of the picture (flooding from the border inward, lowest spill first;
 * Barnes, Lehman & Mulla 2014, from memory). Heights are taken in 1024 levels. Holes inside the part hold water up to the
 * spill level around them but are not counted, so windows do not empty a shell.
 * @param height row after row, `-Infinity` where nothing stands
 * @param width pixels in a row; the outermost pixels must be empty
 */
export function heldWater(height: Float32Array, width: number): number {
  let lowest = Infinity;
  let highest = -Infinity;
  for (const value of height) {
    if (value === -Infinity) continue;
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  if (!(highest > lowest)) return 0;
  const levelOf = (value: number) =>
    value === -Infinity ? 0 : 1 + Math.floor(((value - lowest) / (highest - lowest)) * (levels - 2));
  const waiting: number[][] = Array.from({ length: levels }, () => []);
  const isSeen = new Uint8Array(height.length);
  isSeen[0] = 1;
  waiting[0]!.push(0);
  let held = 0;
  for (let level = 0; level < levels; level++) {
    const spill = lowest + ((level - 1) / (levels - 2)) * (highest - lowest);
    for (let pixel = waiting[level]!.pop(); pixel !== undefined; pixel = waiting[level]!.pop()) {
      const own = height[pixel]!;
      if (own !== -Infinity && own < spill) held += spill - own;
      const column = pixel % width;
      for (const next of [
        column > 0 ? pixel - 1 : -1,
        column < width - 1 ? pixel + 1 : -1,
        pixel - width,
        pixel + width,
      ]) {
        if (next < 0 || next >= height.length || isSeen[next] === 1) continue;
        isSeen[next] = 1;
        waiting[Math.max(level, levelOf(height[next]!))]!.push(next);
      }
    }
  }
  return held;
}
