/** How much of all that is seen from a point is the face of a surface: solid angles. */
import type { Vector3 } from '../numeric/matrix3';
import { cross, dot, lengthOf, minus } from '../numeric/vectors';
import { triangleAt, type TriangleTree } from './triangleTree';

/**
 * Share of the sphere round a point that the surface covers with faces that look at it, those that look away taken off: 1 inside of a
 * closed cavity, 0 outside of it, in between before an opening. Solid angle of a triangle: Van Oosterom and Strackee, 1983.
 */
export function coveredShare(tree: TriangleTree, point: Vector3): number {
  let sum = 0;
  for (let slot = 0; slot < tree.corners.length / 3; slot++) {
    const [a, b, c] = triangleAt(tree, slot).map((corner) => minus(corner, point)) as [
      Vector3,
      Vector3,
      Vector3,
    ];
    const [la, lb, lc] = [lengthOf(a), lengthOf(b), lengthOf(c)];
    const below = la * lb * lc + dot(a, b) * lc + dot(b, c) * la + dot(c, a) * lb;
    sum -= 2 * Math.atan2(dot(a, cross(b, c)), below);
  }
  return sum / (4 * Math.PI);
}
