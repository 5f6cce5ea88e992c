/**
 * The rectangle of least area round a set of points of a plane. One of its sides lies along a side of the convex hull
 * (Freeman & Shapira 1975), so it is enough to try each of those.
 */

export interface LeastRectangle {
  /** Of the side that is nearest to the first axis, from that axis, counter-clockwise; over -45 up to 45 degrees. */
  readonly turnDeg: number;
  /** Along that side, and across it. */
  readonly firstMm: number;
  readonly secondMm: number;
}

/** A rectangle along the axes that is this little larger is taken instead: nobody turns a box for that. */
const noticedShare = 1e-3;
/** What stands out of a hull's side by less than this share of the size is left out: a fine circle has endless sides. */
const flatShare = 1e-5;

/** @param points x, y of each, one behind the other; at least one */
export function leastRectangle(points: ArrayLike<number>): LeastRectangle {
  const corners = hullOf(points);
  const along = rectangleAt(corners, 0);
  let least = along;
  corners.forEach(([x, y], k) => {
    const [nextX, nextY] = corners[(k + 1) % corners.length]!;
    const one = rectangleAt(corners, quarterTurn((Math.atan2(nextY - y, nextX - x) * 180) / Math.PI));
    if (areaOf(one) < areaOf(least)) least = one;
  });
  return areaOf(along) <= (1 + noticedShare) * areaOf(least) ? along : least;
}

const areaOf = ({ firstMm, secondMm }: LeastRectangle) => firstMm * secondMm;

/** The same direction of a rectangle's side, over -45 up to 45 degrees. */
const quarterTurn = (deg: number) => 45 - ((((45 - deg) % 90) + 90) % 90);

type Point = readonly [number, number];

function rectangleAt(corners: readonly Point[], turnDeg: number): LeastRectangle {
  const turn = (turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  let [lowX, highX, lowY, highY] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of corners) {
    const first = x * cos + y * sin;
    const second = y * cos - x * sin;
    lowX = Math.min(lowX, first);
    highX = Math.max(highX, first);
    lowY = Math.min(lowY, second);
    highY = Math.max(highY, second);
  }
  return { turnDeg, firstMm: highX - lowX, secondMm: highY - lowY };
}

/** Corners of the convex hull in order round it (quickhull, Barber, Dobkin & Huhdanpaa 1996). */
function hullOf(points: ArrayLike<number>): readonly Point[] {
  const count = points.length / 2;
  let [left, right] = [0, 0];
  for (let at = 1; at < count; at++) {
    if (points[2 * at]! < points[2 * left]!) left = at;
    if (points[2 * at]! > points[2 * right]!) right = at;
  }
  const all = Array.from({ length: count }, (_, at) => at);
  const wide = points[2 * right]! - points[2 * left]!;
  // Everything on one upright line: its ends are the lowest and the highest point.
  if (!(wide > 0)) [left, right] = endsUpright(points, count);
  const flatMm = flatShare * Math.max(wide, spanOf(points, 1));
  const corners: number[] = [];
  sideFrom(all, left, right);
  sideFrom(all, right, left);
  return corners.map((at) => [points[2 * at]!, points[2 * at + 1]!]);

  /** Puts down the corners from `from` up to, without, `to` that lie right of the line between them. */
  function sideFrom(candidates: readonly number[], from: number, to: number): void {
    const [fromX, fromY] = [points[2 * from]!, points[2 * from + 1]!];
    const [stepX, stepY] = [points[2 * to]! - fromX, points[2 * to + 1]! - fromY];
    const length = Math.hypot(stepX, stepY);
    const outside: number[] = [];
    let [furthest, most] = [-1, flatMm];
    if (length > 0)
      for (const at of candidates) {
        const out = ((points[2 * at]! - fromX) * stepY - (points[2 * at + 1]! - fromY) * stepX) / length;
        if (out > 0) outside.push(at);
        if (out > most) [furthest, most] = [at, out];
      }
    if (furthest < 0) {
      corners.push(from);
      return;
    }
    sideFrom(outside, from, furthest);
    sideFrom(outside, furthest, to);
  }
}

function endsUpright(points: ArrayLike<number>, count: number): [number, number] {
  let [low, high] = [0, 0];
  for (let at = 1; at < count; at++) {
    if (points[2 * at + 1]! < points[2 * low + 1]!) low = at;
    if (points[2 * at + 1]! > points[2 * high + 1]!) high = at;
  }
  return [low, high];
}

function spanOf(points: ArrayLike<number>, axis: 0 | 1): number {
  let [low, high] = [Infinity, -Infinity];
  for (let at = axis; at < points.length; at += 2) {
    low = Math.min(low, points[at]!);
    high = Math.max(high, points[at]!);
  }
  return high - low;
}
