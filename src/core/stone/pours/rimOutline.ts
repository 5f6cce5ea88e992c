import { castRay } from '../../mesh/rayWall';
import { columnRegion } from './openColumns';
import type { Parted } from './parting';

/** Halvings between two columns: a pitch of 0.3 mm comes down to 2 micrometers. */
const halvings = 7;
/** Points nearer than this to the line between their neighbors are left out. */
const straightMm = 0.003;

/**
 * The outer outline of the pattern along the pull, counter-clockwise, in the two axes of the pull frame across the pull: the
 * edge between open and covered columns, its places found by rays between the columns. null when there is none.
 */
export function rimOutline({ index, grid, open }: Parted): [number, number][] | null {
  const { side, x0Mm, y0Mm, pitchMm } = grid;
  const above = index.boxMaxMm[2] + 1;
  const isIn = (column: number) => open.region[column] !== columnRegion.outside;
  const isCovered = (x: number, y: number) => castRay(index, [x, y, above], [0, 0, -1]) !== null;

  // Crossings of the outline with the grid's lines; the key is twice the lower column, plus one on an upright line.
  const placeOf = (key: number): [number, number] => {
    const column = key >> 1;
    const [stepX, stepY] = (key & 1) === 0 ? [1, 0] : [0, 1];
    const x = x0Mm + (column % side) * pitchMm;
    const y = y0Mm + Math.floor(column / side) * pitchMm;
    let [inside, outside] = isIn(column) ? [0, 1] : [1, 0];
    for (let round = 0; round < halvings; round++) {
      const middle = (inside + outside) / 2;
      if (isCovered(x + stepX * middle * pitchMm, y + stepY * middle * pitchMm)) inside = middle;
      else outside = middle;
    }
    const share = (inside + outside) / 2;
    return [x + stepX * share * pitchMm, y + stepY * share * pitchMm];
  };
  const next = new Map<number, number>();
  for (let row = 0; row + 1 < side; row++) {
    for (let i = 0; i + 1 < side; i++) {
      const a = row * side + i;
      const isInside = isIn(a);
      if (isIn(a + 1) === isInside && isIn(a + side) === isInside && isIn(a + side + 1) === isInside)
        continue;
      const corners = [a, a + 1, a + side + 1, a + side];
      const edges = [2 * a, 2 * (a + 1) + 1, 2 * (a + side), 2 * a + 1];
      const inside = corners.map(isIn);
      for (let k = 0; k < 4; k++) {
        // Walking round the cell, the outline enters where inside ends and leaves at the next place where it begins.
        if (!inside[k] || inside[(k + 1) % 4]) continue;
        let to = (k + 1) % 4;
        while (inside[(to + 1) % 4] !== true) to = (to + 1) % 4;
        next.set(edges[k]!, edges[to]!);
      }
    }
  }

  let longest: number[] = [];
  const seen = new Set<number>();
  for (const start of next.keys()) {
    const loop: number[] = [];
    for (let key: number | undefined = start; key !== undefined && !seen.has(key); key = next.get(key)) {
      seen.add(key);
      loop.push(key);
    }
    if (loop.length > longest.length) longest = loop;
  }
  if (longest.length < 3) return null;
  const loop = withoutStraights(longest.map(placeOf));
  return signedArea(loop) < 0 ? loop.toReversed() : loop;
}

function signedArea(loop: readonly (readonly [number, number])[]): number {
  return loop.reduce((sum, [x, y], k) => {
    const [nextX, nextY] = loop[(k + 1) % loop.length]!;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}

/** Leaves out what lies on the line between its neighbors (Douglas & Peucker 1973), from the two ends furthest apart. */
function withoutStraights(loop: readonly [number, number][]): [number, number][] {
  const [startX, startY] = loop[0]!;
  let far = 0;
  let most = -1;
  loop.forEach(([x, y], k) => {
    const away = Math.hypot(x - startX, y - startY);
    if (away > most) [far, most] = [k, away];
  });
  const kept = new Uint8Array(loop.length);
  kept[0] = 1;
  kept[far] = 1;
  const waiting = [
    [0, far],
    [far, loop.length],
  ];
  for (let span = waiting.pop(); span !== undefined; span = waiting.pop()) {
    const [from, to] = span as [number, number];
    const [ax, ay] = loop[from]!;
    const [bx, by] = loop[to % loop.length]!;
    const length = Math.hypot(bx - ax, by - ay);
    let worst = -1;
    let worstMm = straightMm;
    for (let k = from + 1; k < to; k++) {
      const [x, y] = loop[k]!;
      const offMm =
        length > 0
          ? Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length
          : Math.hypot(x - ax, y - ay);
      if (offMm > worstMm) [worst, worstMm] = [k, offMm];
    }
    if (worst < 0) continue;
    kept[worst] = 1;
    waiting.push([from, worst], [worst, to]);
  }
  return loop.filter((_, k) => kept[k] === 1);
}
