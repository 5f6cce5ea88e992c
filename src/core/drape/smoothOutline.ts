/** The border of a piece as it is cut: threads' ends along a dart become an edge, and points that a line hardly misses are left out. */
import type { Point2 } from '../templates/piece';
import type { BorderPoint } from './outline';

/** A rim may be off by that much. */
const rimToleranceMm = 0.02;
/** Of a step of the net: a line through its stairs. */
const stairs = 0.75;

/**
 * @param growMm how far dart edges are moved out: the half of the gap that the net leaves between fronts, and what overlaps
 * @returns the outline; edges that cannot grow without lying on the piece itself stay
 */
export function smoothOutline(
  border: readonly BorderPoint[],
  stepMm: number,
  growMm: number,
): readonly Point2[] {
  const runs = runsOf(border);
  const kept = runs.map(({ points, onDart }) => thinned(points, onDart ? stairs * stepMm : rimToleranceMm));
  const lines = kept.map((line) => [...line]);
  runs.forEach(({ onDart }, at) => {
    if (!onDart || growMm <= 0 || runs.length === 1) return;
    const plain = [...lines];
    const grown = movedOut(lines[at]!, growMm);
    const count = lines.length;
    lines[at] = grown;
    const before = lines[(at + count - 1) % count]!;
    const after = lines[(at + 1) % count]!;
    lines[(at + count - 1) % count] = [...before.slice(0, -1), grown[0]!];
    if (count > 1) lines[(at + 1) % count] = [grown.at(-1)!, ...lines[(at + 1) % count]!.slice(1)];
    if (after.length < 2 || before.length < 2 || !isSimple(joined(lines))) lines.splice(0, count, ...plain);
  });
  return joined(lines);
}

/** Stretches end to end; where one ends the next begins. */
const joined = (lines: readonly (readonly Point2[])[]): readonly Point2[] =>
  lines.flatMap((line) => (lines.length === 1 ? line : line.slice(0, -1)));

interface Run {
  readonly points: readonly Point2[];
  readonly onDart: boolean;
}

/** Stretches of dart and of rim; each ends where the next begins. */
function runsOf(border: readonly BorderPoint[]): readonly Run[] {
  const count = border.length;
  const pointAt = (at: number): Point2 => [border[at % count]!.x, border[at % count]!.y];
  const isDart = (at: number) => {
    const [a, b] = [border[at % count]!, border[(at + 1) % count]!];
    return a.onDart && b.onDart && (a.node >= 0 || b.node >= 0);
  };
  let first = 0;
  while (first < count && isDart(first) === isDart((first + count - 1) % count)) first++;
  if (first === count) return [{ points: border.map(({ x, y }) => [x, y] as const), onDart: isDart(0) }];
  const runs: Run[] = [];
  let [points, onDart]: [Point2[], boolean] = [[pointAt(first)], isDart(first)];
  for (let step = 0; step < count; step++) {
    const at = first + step;
    if (isDart(at) !== onDart) {
      runs.push({ points, onDart });
      points = [pointAt(at)];
      onDart = isDart(at);
    }
    points.push(pointAt(at + 1));
  }
  runs.push({ points, onDart });
  return runs;
}

/** Ramer, Douglas and Peucker; both ends stay. */
function thinned(points: readonly Point2[], toleranceMm: number): readonly Point2[] {
  const keep = new Uint8Array(points.length);
  keep[0] = 1;
  keep[points.length - 1] = 1;
  const isClosed = offLine(points[0]!, points[0]!, points.at(-1)!) < 1e-9;
  const spans: [number, number][] = [];
  if (isClosed && points.length > 3) {
    const middle = farthest(points, 0, points.length - 1).at;
    keep[middle] = 1;
    spans.push([0, middle], [middle, points.length - 1]);
  } else spans.push([0, points.length - 1]);
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    const { at, offMm } = farthest(points, from, to);
    if (offMm <= toleranceMm) continue;
    keep[at] = 1;
    spans.push([from, at], [at, to]);
  }
  return points.filter((_, at) => keep[at] === 1);
}

function farthest(
  points: readonly Point2[],
  from: number,
  to: number,
): { readonly at: number; readonly offMm: number } {
  let [at, offMm] = [from, -1];
  for (let one = from + 1; one < to; one++) {
    const off = offLine(points[one]!, points[from]!, points[to]!);
    if (off > offMm) [at, offMm] = [one, off];
  }
  return { at, offMm };
}

/** Distance from a point to a stretch. */
function offLine([x, y]: Point2, [ax, ay]: Point2, [bx, by]: Point2): number {
  const [ex, ey] = [bx - ax, by - ay];
  const square = ex * ex + ey * ey;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * ex + (y - ay) * ey) / square));
  return Math.hypot(x - ax - share * ex, y - ay - share * ey);
}

/** The cloth lies on the left, so out is to the right. */
function movedOut(line: readonly Point2[], byMm: number): Point2[] {
  return line.map(([x, y], at) => {
    const normals: Point2[] = [];
    for (const [from, to] of [
      [at - 1, at],
      [at, at + 1],
    ] as const) {
      const [a, b] = [line[from], line[to]];
      if (a === undefined || b === undefined) continue;
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
      normals.push([(b[1] - a[1]) / size, -(b[0] - a[0]) / size]);
    }
    const sum = normals.reduce<Point2>((one, [nx, ny]) => [one[0] + nx, one[1] + ny], [0, 0]);
    const size = Math.hypot(...sum) || 1;
    const reach = Math.min(2, normals.length / size) / size;
    return [x + byMm * sum[0] * reach, y + byMm * sum[1] * reach] as const;
  });
}

/** Whether no two edges of a closed outline cross. */
export function isSimple(outline: readonly Point2[]): boolean {
  const count = outline.length;
  for (let a = 0; a < count; a++) {
    const [p, q] = [outline[a]!, outline[(a + 1) % count]!];
    for (let b = a + 2; b < count; b++) {
      if (a === 0 && b === count - 1) continue;
      const [r, s] = [outline[b]!, outline[(b + 1) % count]!];
      if (Math.max(p[0], q[0]) < Math.min(r[0], s[0]) || Math.max(r[0], s[0]) < Math.min(p[0], q[0]))
        continue;
      if (Math.max(p[1], q[1]) < Math.min(r[1], s[1]) || Math.max(r[1], s[1]) < Math.min(p[1], q[1]))
        continue;
      if (side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0) return false;
    }
  }
  return true;
}

const side = (a: Point2, b: Point2, p: Point2): number =>
  Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));

export function outlineAreaMm2(outline: readonly Point2[]): number {
  let twice = 0;
  outline.forEach(([x, y], at) => {
    const [nextX, nextY] = outline[(at + 1) % outline.length]!;
    twice += x * nextY - y * nextX;
  });
  return twice / 2;
}

export function isWithin(outline: readonly Point2[], [x, y]: Point2): boolean {
  let within = false;
  outline.forEach(([ax, ay], at) => {
    const [bx, by] = outline[(at + 1) % outline.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay)) within = !within;
  });
  return within;
}
