/** Triangles in a box tree, asked for what is nearest to a point or to a body, and for what a ray meets. */
import { closestOnTriangle } from '../mesh/closestOnTriangle';
import { buildBoxTree, leafSlots, type BoxTree } from '../mesh/boxTree';
import { facetBox } from '../mesh/integrals';
import { orderAlongCurve } from '../mesh/surfaceIndexOrder';
import type { IndexedMesh } from '../mesh/types';
import type { Vector3 } from '../numeric/matrix3';
import { cross, dot, lengthOf, minus } from '../numeric/vectors';
import { apartFrom, type PlacedBody } from './bodies';
import { wayToBody, type Triangle } from './convexDistance';

export interface TriangleTree {
  readonly points: Float64Array;
  readonly corners: Uint32Array;
  readonly tree: BoxTree;
}

export interface Nearest {
  readonly slot: number;
  readonly pointMm: Vector3;
  readonly distanceMm: number;
  /** The point lies outside of the material, as the triangle that faces it most tells. */
  readonly isOutside: boolean;
}

/** Triangles as near as this meet at the nearest place. */
const sameMm = 1e-7;

export function triangleTree(mesh: IndexedMesh): TriangleTree {
  const { min, max } = facetBox(mesh);
  const { points, corners } = orderAlongCurve(mesh, min, max);
  const largest = points.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
  return { points, corners, tree: buildBoxTree(points, corners, largest) };
}

export function triangleAt({ points, corners }: TriangleTree, slot: number): Triangle {
  const corner = (k: number): Vector3 => {
    const at = 3 * corners[3 * slot + k]!;
    return [points[at]!, points[at + 1]!, points[at + 2]!];
  };
  return [corner(0), corner(1), corner(2)];
}

/** Unit normal, outward; zero for a triangle without area. */
export function normalOfSlot(tree: TriangleTree, slot: number): Vector3 {
  const [a, b, c] = triangleAt(tree, slot);
  const normal = cross(minus(b, a), minus(c, a));
  const length = lengthOf(normal);
  return length > 0 ? [normal[0] / length, normal[1] / length, normal[2] / length] : [0, 0, 0];
}

/**
 * Walks the tree, nearer boxes first, as long as a box may hold something nearer than what `visit` has found.
 * @param bound least that anything in a box (center, half widths) can be away
 * @param visit gives the distance within which to go on
 */
function walk(
  { tree: { root, boxes, children }, corners }: TriangleTree,
  withinMm: number,
  bound: (x: number, y: number, z: number, hx: number, hy: number, hz: number) => number,
  visit: (slot: number) => number,
): void {
  if (root < 0) return;
  let within = withinMm;
  const slots = corners.length / 3;
  const nodes: { node: number; leastMm: number }[] = [{ node: root, leastMm: 0 }];
  while (nodes.length > 0) {
    const { node, leastMm } = nodes.pop()!;
    if (leastMm >= within) continue;
    if (node < 0) {
      const first = ~node;
      for (let slot = first; slot < Math.min(slots, first + leafSlots); slot++) within = visit(slot);
      continue;
    }
    const below: { node: number; leastMm: number }[] = [];
    for (let child = 0; child < 4; child++) {
      const at = 24 * node + child;
      const hx = boxes[at + 12]!;
      if (hx === Number.NEGATIVE_INFINITY) continue;
      const least = bound(boxes[at]!, boxes[at + 4]!, boxes[at + 8]!, hx, boxes[at + 16]!, boxes[at + 20]!);
      if (least < within) below.push({ node: children[4 * node + child]!, leastMm: least });
    }
    below.sort((a, b) => b.leastMm - a.leastMm);
    nodes.push(...below);
  }
}

/** The nearest place to a point; null when nothing lies within `withinMm`. */
export function nearestTo(
  tree: TriangleTree,
  point: Vector3,
  withinMm = Number.POSITIVE_INFINITY,
): Nearest | null {
  const [x, y, z] = point;
  let best: Nearest | null = null;
  let facing = 0;
  walk(
    tree,
    withinMm,
    (cx, cy, cz, hx, hy, hz) =>
      Math.hypot(
        Math.max(0, Math.abs(x - cx) - hx),
        Math.max(0, Math.abs(y - cy) - hy),
        Math.max(0, Math.abs(z - cz) - hz),
      ),
    (slot) => {
      const pointMm = closestOnTriangle(point, ...triangleAt(tree, slot));
      const way = minus(point, pointMm);
      const distanceMm = lengthOf(way);
      const bestMm = best?.distanceMm ?? withinMm;
      if (distanceMm < bestMm + sameMm) {
        const own = dot(way, normalOfSlot(tree, slot));
        if (distanceMm < bestMm - sameMm || Math.abs(own) > facing) {
          best = { slot, pointMm, distanceMm, isOutside: own >= 0 };
          facing = Math.abs(own);
        }
      }
      return (best?.distanceMm ?? withinMm) + sameMm;
    },
  );
  return best;
}

export interface NearestToBody {
  readonly slot: number;
  /** From the surface to the body; null where they meet. */
  readonly way: Vector3 | null;
  readonly distanceMm: number;
}

/**
 * The triangle nearest to a body; the first that meets it ends the search.
 * @param toleranceMm what is nearer by less is not looked for
 */
export function nearestToBody(tree: TriangleTree, body: PlacedBody, toleranceMm = 0): NearestToBody | null {
  let best: NearestToBody | null = null;
  walk(tree, Number.POSITIVE_INFINITY, apartFrom(body), (slot) => {
    const way = wayToBody(body, triangleAt(tree, slot));
    const distanceMm = way === null ? 0 : lengthOf(way);
    if (best === null || distanceMm < best.distanceMm) best = { slot, way, distanceMm };
    return best.distanceMm - toleranceMm;
  });
  return best;
}

export interface Met {
  readonly slot: number;
  readonly distanceMm: number;
}

/** The first triangle along a ray of unit direction (Möller and Trumbore, 1997); null for none. */
export function firstAlong(tree: TriangleTree, from: Vector3, direction: Vector3): Met | null {
  let best: Met | null = null;
  walk(
    tree,
    Number.POSITIVE_INFINITY,
    (cx, cy, cz, hx, hy, hz) => entry(from, direction, [cx, cy, cz], [hx, hy, hz]),
    (slot) => {
      const distanceMm = alongRay(from, direction, triangleAt(tree, slot));
      if (distanceMm !== null && (best === null || distanceMm < best.distanceMm)) best = { slot, distanceMm };
      return best?.distanceMm ?? Number.POSITIVE_INFINITY;
    },
  );
  return best;
}

function entry(from: Vector3, direction: Vector3, center: Vector3, half: Vector3): number {
  let [near, far] = [0, Number.POSITIVE_INFINITY];
  for (const axis of [0, 1, 2] as const) {
    const away = center[axis] - from[axis];
    if (Math.abs(direction[axis]) < 1e-12) {
      if (Math.abs(away) > half[axis]) return Number.POSITIVE_INFINITY;
      continue;
    }
    const [one, other] = [(away - half[axis]) / direction[axis], (away + half[axis]) / direction[axis]];
    [near, far] = [Math.max(near, Math.min(one, other)), Math.min(far, Math.max(one, other))];
  }
  return near <= far ? near : Number.POSITIVE_INFINITY;
}

function alongRay(from: Vector3, direction: Vector3, [a, b, c]: Triangle): number | null {
  const [ab, ac] = [minus(b, a), minus(c, a)];
  const across = cross(direction, ac);
  const whole = dot(ab, across);
  if (Math.abs(whole) < 1e-14) return null;
  const away = minus(from, a);
  const u = dot(away, across) / whole;
  if (u < 0 || u > 1) return null;
  const turned = cross(away, ab);
  const v = dot(direction, turned) / whole;
  if (v < 0 || u + v > 1) return null;
  const distance = dot(ac, turned) / whole;
  return distance > 1e-9 ? distance : null;
}
