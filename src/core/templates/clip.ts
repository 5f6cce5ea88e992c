/** The part of a drawing that a window shows. */
import type { DrawnLine } from './drawing';
import type { Point2 } from './piece';
import type { Bounds2 } from './outline';

/** Lines cut at the window's edge; a closed line that is cut comes back in open pieces. */
export function clippedLine(line: DrawnLine, view: Bounds2): DrawnLine[] {
  const { points, closed } = line;
  const runs: Point2[][] = [];
  const count = closed ? points.length : points.length - 1;
  let whole = true;
  for (let i = 0; i < count; i++) {
    const [from, to] = [points[i]!, points[(i + 1) % points.length]!];
    const part = clippedSegment(from, to, view);
    if (part === null || part[0] !== from || part[1] !== to) whole = false;
    if (part === null) continue;
    const run = runs.at(-1);
    if (run !== undefined && run.at(-1) === part[0]) run.push(part[1]);
    else runs.push([...part]);
  }
  if (whole) return [line];
  const [first, last] = [runs[0], runs.at(-1)];
  // The start of a closed line is a place like any other.
  if (closed && runs.length > 1 && last!.at(-1) === first![0]) runs[0] = [...runs.pop()!, ...first!.slice(1)];
  return runs.map((run) => ({ ...line, points: run, closed: false }));
}

/** Liang and Barsky's clipping of a segment; its own ends are handed back where they lie in the view. */
function clippedSegment(from: Point2, to: Point2, view: Bounds2): [Point2, Point2] | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  let [start, end] = [0, 1];
  const sides = [
    [-dx, from[0] - view.lowXMm],
    [dx, view.highXMm - from[0]],
    [-dy, from[1] - view.lowYMm],
    [dy, view.highYMm - from[1]],
  ] as const;
  for (const [toward, room] of sides) {
    if (toward === 0) {
      if (room < 0) return null;
    } else if (toward < 0) start = Math.max(start, room / toward);
    else end = Math.min(end, room / toward);
  }
  if (start > end) return null;
  const at = (t: number): Point2 => [from[0] + t * dx, from[1] + t * dy];
  return [start === 0 ? from : at(start), end === 1 ? to : at(end)];
}

export const isWithin = ([x, y]: Point2, { lowXMm, lowYMm, highXMm, highYMm }: Bounds2): boolean =>
  x >= lowXMm && x <= highXMm && y >= lowYMm && y <= highYMm;
