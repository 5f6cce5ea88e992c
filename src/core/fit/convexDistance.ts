/**
 * Distance between a convex body and a triangle, by the algorithm of Gilbert, Johnson and Keerthi (1988): the closest point to the
 * origin of the body less the triangle. The closest point of each simplex is found among its faces.
 */
import { closestOnSegment, closestOnTriangle } from '../mesh/closestOnTriangle';
import type { Vector3 } from '../numeric/matrix3';
import { cross, dot, minus, times } from '../numeric/vectors';
import { farthest, type PlacedBody } from './bodies';

export type Triangle = readonly [Vector3, Vector3, Vector3];

const mostRounds = 64;
/** Good to this; a cylinder is met by its tangents, closer each round. */
const toleranceMm = 1e-5;
const origin: Vector3 = [0, 0, 0];

/** From the triangle to the body, at their closest; null where they meet. */
export function wayToBody(body: PlacedBody, triangle: Triangle): Vector3 | null {
  const support = (direction: Vector3): Vector3 =>
    minus(farthest(body, direction), farthestCorner(triangle, times(direction, -1)));
  let simplex: readonly Vector3[] = [minus(body.placeMm, triangle[0])];
  let closest = simplex[0]!;
  // The middle of the body is no point of its surface: the first support replaces it.
  simplex = [support(times(closest, -1))];
  closest = simplex[0]!;
  for (let round = 0; round < mostRounds; round++) {
    const square = dot(closest, closest);
    if (square < toleranceMm * toleranceMm) return null;
    const next = support(times(closest, -1));
    // No point of the difference lies nearer, along the way there, than by this much.
    if (square - dot(closest, next) <= toleranceMm * Math.sqrt(square)) return closest;
    const found = closestOf([...simplex, next]);
    if (found === null) return null;
    if (dot(found.closest, found.closest) >= square * (1 - 1e-14)) return closest;
    ({ closest, simplex } = found);
  }
  return closest;
}

function farthestCorner([a, b, c]: Triangle, direction: Vector3): Vector3 {
  const [da, db, dc] = [dot(a, direction), dot(b, direction), dot(c, direction)];
  return da >= db && da >= dc ? a : db >= dc ? b : c;
}

interface Closest {
  readonly closest: Vector3;
  readonly simplex: readonly Vector3[];
}

/** null where the simplex holds the origin. */
function closestOf(points: readonly Vector3[]): Closest | null {
  const [a, b, c, d] = points as [Vector3, Vector3, Vector3, Vector3];
  if (points.length === 2) return { closest: closestOnSegment(origin, a, b), simplex: points };
  if (points.length === 3) return { closest: closestOnTriangle(origin, a, b, c), simplex: points };
  if (holdsOrigin(a, b, c, d)) return null;
  return [
    [a, b, d],
    [a, c, d],
    [b, c, d],
    [a, b, c],
  ]
    .map((face) => ({ closest: closestOnTriangle(origin, face[0]!, face[1]!, face[2]!), simplex: face }))
    .reduce((best, one) => (dot(one.closest, one.closest) < dot(best.closest, best.closest) ? one : best));
}

const side = (p: Vector3, q: Vector3, r: Vector3, s: Vector3): number => {
  const normal = cross(minus(q, p), minus(r, p));
  const [toOther, toOrigin] = [dot(normal, minus(s, p)), -dot(normal, p)];
  return Math.abs(toOther) < 1e-12 ? -1 : toOther * toOrigin;
};

function holdsOrigin(a: Vector3, b: Vector3, c: Vector3, d: Vector3): boolean {
  return side(a, b, c, d) >= 0 && side(a, b, d, c) >= 0 && side(a, c, d, b) >= 0 && side(b, c, d, a) >= 0;
}
