/** Plane geometry of closed outlines, in mm. */
import type { Outline, Point2 } from './piece';

export interface Bounds2 {
  readonly lowXMm: number;
  readonly lowYMm: number;
  readonly highXMm: number;
  readonly highYMm: number;
}

/** Positive for a counterclockwise outline, mm² (shoelace formula). */
export function signedAreaMm2(outline: Outline): number {
  return outline.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = outline[(i + 1) % outline.length]!;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}

export function boundsOf(points: readonly Point2[]): Bounds2 {
  let [lowXMm, lowYMm, highXMm, highYMm] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    lowXMm = Math.min(lowXMm, x);
    lowYMm = Math.min(lowYMm, y);
    highXMm = Math.max(highXMm, x);
    highYMm = Math.max(highYMm, y);
  }
  return { lowXMm, lowYMm, highXMm, highYMm };
}

/** Turned counterclockwise about the origin; quarter turns are exact. */
export function turned([x, y]: Point2, deg: number): Point2 {
  const quarters = deg / 90;
  const [cos, sin] = Number.isInteger(quarters)
    ? ([
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ][((quarters % 4) + 4) % 4] as [number, number])
    : [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  return [x * cos - y * sin, x * sin + y * cos];
}

/** Where a piece lies on a sheet: turned about its own origin first, then moved. */
export interface Pose {
  readonly turnDeg: number;
  readonly atMm: Point2;
}

export function posed(point: Point2, { turnDeg, atMm }: Pose): Point2 {
  const [x, y] = turned(point, turnDeg);
  return [x + atMm[0], y + atMm[1]];
}

/** Even-odd rule; a point on the border may fall on either side. */
export function isInside(outline: Outline, [x, y]: Point2): boolean {
  let inside = false;
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

/** Distance of a point from the border, mm. */
export function borderDistanceMm(outline: Outline, [x, y]: Point2): number {
  return outline.reduce((least, [ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    const lengthSquared = (bx - ax) ** 2 + (by - ay) ** 2;
    const along = lengthSquared === 0 ? 0 : ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / lengthSquared;
    const t = Math.min(1, Math.max(0, along));
    return Math.min(least, Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y));
  }, Infinity);
}
