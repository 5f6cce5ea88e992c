/** An outline as edges in a plane, asked for the closest place. */
import type { Edge, Point2 } from './ringEdges';

export interface Outline {
  /** 4 per edge: from x, y, to x, y; the material lies on the left. */
  readonly ends: Float64Array;
  /** 1 where the outline breaks off at the start, or the end, of an edge: 2 per edge. */
  readonly breaksOff: Uint8Array;
  /** Circle round each run of `edgesPerRun` edges: middle and radius, 3 numbers. */
  readonly runs: Float64Array;
}

const edgesPerRun = 16;

/** The same outline elsewhere. */
export const withEnds = ({ breaksOff }: Outline, ends: Float64Array): Outline => ({
  ends,
  breaksOff,
  runs: runsOf(ends),
});

function runsOf(ends: Float64Array): Float64Array {
  const step = 4 * edgesPerRun;
  const runs = new Float64Array(3 * Math.ceil(ends.length / step));
  for (let run = 0; 3 * run < runs.length; run++) {
    const [from, to] = [run * step, Math.min(ends.length, (run + 1) * step)];
    let [lowX, lowY, highX, highY] = [ends[from]!, ends[from + 1]!, ends[from]!, ends[from + 1]!];
    for (let at = from; at < to; at += 2) {
      lowX = Math.min(lowX, ends[at]!);
      highX = Math.max(highX, ends[at]!);
      lowY = Math.min(lowY, ends[at + 1]!);
      highY = Math.max(highY, ends[at + 1]!);
    }
    runs[3 * run] = (lowX + highX) / 2;
    runs[3 * run + 1] = (lowY + highY) / 2;
    runs[3 * run + 2] = Math.hypot(highX - lowX, highY - lowY) / 2;
  }
  return runs;
}

export interface ClosestPlace {
  /** Positive outside of the material. */
  readonly signedMm: number;
  readonly x: number;
  readonly y: number;
  /** Unit, out of the material. */
  readonly outX: number;
  readonly outY: number;
  /** The outline breaks off there: nothing stands opposite. */
  readonly isEnd: boolean;
}

/** Two ends are one within this. */
const joinedMm = 1e-6;

const near = (a: Point2, b: Point2) => Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-3;

export function outlineOf(edges: readonly Pick<Edge, 'from' | 'to'>[]): Outline {
  const long = edges.filter(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]) > joinedMm);
  const ends = Float64Array.from(long.flatMap(({ from, to }) => [...from, ...to]));
  return {
    ends,
    runs: runsOf(ends),
    breaksOff: Uint8Array.from(
      long.flatMap(({ from, to }, at) => {
        const before = long[(at + long.length - 1) % long.length]!;
        const after = long[(at + 1) % long.length]!;
        return [near(before.to, from) ? 0 : 1, near(after.from, to) ? 0 : 1];
      }),
    ),
  };
}

/** Laid face to face: seen from behind, with the material on the left again. */
export const seenFromBehind = (edges: readonly Edge[]): readonly Pick<Edge, 'from' | 'to'>[] =>
  edges.toReversed().map(({ from, to }) => ({ from: [to[0], -to[1]], to: [from[0], -from[1]] }));

export const lengthOfOutline = ({ ends }: Outline): number => {
  let sum = 0;
  for (let at = 0; at < ends.length; at += 4)
    sum += Math.hypot(ends[at + 2]! - ends[at]!, ends[at + 3]! - ends[at + 1]!);
  return sum;
};

/** Places a step apart along the outline: 2 numbers each. */
export function placesAlong(outline: Outline, count: number): Float64Array {
  const { ends } = outline;
  const step = lengthOfOutline(outline) / count;
  const places: number[] = [];
  let left = step / 2;
  for (let at = 0; at < ends.length; at += 4) {
    const [dx, dy] = [ends[at + 2]! - ends[at]!, ends[at + 3]! - ends[at + 1]!];
    const length = Math.hypot(dx, dy);
    for (; left <= length; left += step)
      places.push(ends[at]! + (left / length) * dx, ends[at + 1]! + (left / length) * dy);
    left -= length;
  }
  return Float64Array.from(places);
}

/** Corners within `toleranceMm` of the line of those around them are left out (Douglas and Peucker, 1973), pieces kept apart. */
export function coarser({ ends, breaksOff }: Outline, toleranceMm: number): Outline {
  const edges: { from: Point2; to: Point2 }[] = [];
  let chain: Point2[] = [];
  const close = () => {
    for (let at = 0, line = thinned(chain, toleranceMm); at + 1 < line.length; at++)
      edges.push({ from: line[at]!, to: line[at + 1]! });
    chain = [];
  };
  for (let at = 0; at < ends.length; at += 4) {
    if (chain.length === 0) chain.push([ends[at]!, ends[at + 1]!]);
    chain.push([ends[at + 2]!, ends[at + 3]!]);
    if (breaksOff[at / 2 + 1] === 1) close();
  }
  close();
  return outlineOf(edges);
}

function thinned(line: readonly Point2[], toleranceMm: number): readonly Point2[] {
  const kept = new Uint8Array(line.length);
  const waiting: [number, number][] = line.length > 1 ? [[0, line.length - 1]] : [];
  // A closed chain has no line from end to end: it is cut at its farthest point by the same rule.
  while (waiting.length > 0) {
    const [first, last] = waiting.pop()!;
    kept[first] = kept[last] = 1;
    let [farthest, mostMm] = [-1, toleranceMm];
    for (let at = first + 1; at < last; at++) {
      const off = offLine(line[at]!, line[first]!, line[last]!);
      if (off > mostMm) [farthest, mostMm] = [at, off];
    }
    if (farthest > 0) waiting.push([first, farthest], [farthest, last]);
  }
  return line.filter((_, at) => kept[at] === 1);
}

function offLine([x, y]: Point2, [ax, ay]: Point2, [bx, by]: Point2): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const share = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}

/** The closest place of the outline; every edge is asked whose run can hold it. */
export function closestPlace({ ends, breaksOff, runs }: Outline, x: number, y: number): ClosestPlace {
  let best = 0;
  let leastSquare = Number.POSITIVE_INFINITY;
  let bestShare = 0;
  let reachMm = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs.length; run += 3) {
    const awayMm = Math.sqrt((x - runs[run]!) ** 2 + (y - runs[run + 1]!) ** 2);
    reachMm = Math.min(reachMm, awayMm + runs[run + 2]!);
  }
  for (let run = 0; run < runs.length; run += 3) {
    const awayMm = Math.sqrt((x - runs[run]!) ** 2 + (y - runs[run + 1]!) ** 2);
    // A hair more, so that rounding leaves out none.
    if (awayMm - runs[run + 2]! > reachMm + 1e-9) continue;
    const from = (run / 3) * 4 * edgesPerRun;
    const to = Math.min(ends.length, from + 4 * edgesPerRun);
    for (let at = from; at < to; at += 4) {
      const ax = ends[at]!;
      const ay = ends[at + 1]!;
      const dx = ends[at + 2]! - ax;
      const dy = ends[at + 3]! - ay;
      let share = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy);
      share = share < 0 ? 0 : share > 1 ? 1 : share;
      const rx = x - ax - share * dx;
      const ry = y - ay - share * dy;
      const square = rx * rx + ry * ry;
      if (square >= leastSquare) continue;
      best = at;
      leastSquare = square;
      bestShare = share;
    }
  }
  const [dx, dy] = [ends[best + 2]! - ends[best]!, ends[best + 3]! - ends[best + 1]!];
  const length = Math.hypot(dx, dy);
  const [qx, qy] = [ends[best]! + bestShare * dx, ends[best + 1]! + bestShare * dy];
  const mm = Math.sqrt(leastSquare);
  const side = (x - qx) * dy - (y - qy) * dx >= 0 ? 1 : -1;
  // At a corner the way there leads out; along an edge, and on it, the edge's own normal does.
  const atCorner = (bestShare === 0 || bestShare === 1) && mm > 1e-9;
  return {
    signedMm: side * mm,
    x: qx,
    y: qy,
    outX: atCorner ? (side * (x - qx)) / mm : dy / length,
    outY: atCorner ? (side * (y - qy)) / mm : -dx / length,
    isEnd:
      (bestShare === 0 && breaksOff[best / 2] === 1) || (bestShare === 1 && breaksOff[best / 2 + 1] === 1),
  };
}
