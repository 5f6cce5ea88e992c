/**
 * Closest point of a triangle to a point, by the region of the plane that the point lies over (Ericson, Real-Time Collision
 * Detection, 2005, section 5.1.5). A triangle without area is taken for its longest side.
 */
import type { Vector3 } from '../numeric/matrix3';
import { cross, dot, minus, plus, times } from '../numeric/vectors';

export function closestOnTriangle(p: Vector3, a: Vector3, b: Vector3, c: Vector3): Vector3 {
  const [ab, ac, ap] = [minus(b, a), minus(c, a), minus(p, a)];
  const normal = cross(ab, ac);
  if (dot(normal, normal) <= 1e-24 * dot(ab, ab) * dot(ac, ac)) return closestOnSides(p, a, b, c);
  const [d1, d2] = [dot(ab, ap), dot(ac, ap)];
  if (d1 <= 0 && d2 <= 0) return a;
  const bp = minus(p, b);
  const [d3, d4] = [dot(ab, bp), dot(ac, bp)];
  if (d3 >= 0 && d4 <= d3) return b;
  const vc = d1 * d4 - d3 * d2;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) return plus(a, times(ab, d1 / (d1 - d3)));
  const cp = minus(p, c);
  const [d5, d6] = [dot(ab, cp), dot(ac, cp)];
  if (d6 >= 0 && d5 <= d6) return c;
  const vb = d5 * d2 - d1 * d6;
  if (vb <= 0 && d2 >= 0 && d6 <= 0) return plus(a, times(ac, d2 / (d2 - d6)));
  const va = d3 * d6 - d5 * d4;
  if (va <= 0 && d4 >= d3 && d5 >= d6) return plus(b, times(minus(c, b), (d4 - d3) / (d4 - d3 + (d5 - d6))));
  const whole = va + vb + vc;
  return plus(a, plus(times(ab, vb / whole), times(ac, vc / whole)));
}

/** Closest point of a line between two ends; the first end where they fall together. */
export function closestOnSegment(p: Vector3, a: Vector3, b: Vector3): Vector3 {
  const ab = minus(b, a);
  const square = dot(ab, ab);
  return square > 0 ? plus(a, times(ab, Math.min(1, Math.max(0, dot(minus(p, a), ab) / square)))) : a;
}

function closestOnSides(p: Vector3, a: Vector3, b: Vector3, c: Vector3): Vector3 {
  const square = (q: Vector3) => dot(minus(p, q), minus(p, q));
  return [closestOnSegment(p, a, b), closestOnSegment(p, b, c), closestOnSegment(p, c, a)].reduce(
    (best, one) => (square(one) < square(best) ? one : best),
  );
}
