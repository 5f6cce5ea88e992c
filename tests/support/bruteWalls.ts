/**
 * Ray walls, ball walls and reach by trying every facet, written apart from the kernel and by other formulas, as the
 * measure that it is held against. Slow on purpose.
 */
import { reachBit, type IndexedMesh } from '../../src/core/mesh/types';

type Point = [number, number, number];

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const plus = (a: Point, b: Point, share: number): Point => [
  a[0] + share * b[0],
  a[1] + share * b[1],
  a[2] + share * b[2],
];
const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export function facetCorners({ positions, facets }: IndexedMesh, facet: number): [Point, Point, Point] {
  const corner = (place: number): Point => {
    const at = 3 * facets[3 * facet + place]!;
    return [positions[at]!, positions[at + 1]!, positions[at + 2]!];
  };
  return [corner(0), corner(1), corner(2)];
}

/** Center and unit outward normal; null for a facet without area. */
export function facetStand(mesh: IndexedMesh, facet: number): { center: Point; normal: Point } | null {
  const [a, b, c] = facetCorners(mesh, facet);
  const normal = cross(minus(b, a), minus(c, a));
  const length = Math.sqrt(dot(normal, normal));
  if (!(length > 0)) return null;
  return {
    center: [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3],
    normal: [normal[0] / length, normal[1] / length, normal[2] / length],
  };
}

/** First hit by plane and edge sides, of all facets but `skipped`, further than `nearestMm`; with `leaving` out of the material alone. */
export function bruteRay(
  mesh: IndexedMesh,
  origin: Point,
  direction: Point,
  skipped: number,
  nearestMm: number,
  leaving = false,
): number | null {
  let best: number | null = null;
  for (let facet = 0; facet < mesh.facets.length / 3; facet++) {
    if (facet === skipped) continue;
    const [a, b, c] = facetCorners(mesh, facet);
    const normal = cross(minus(b, a), minus(c, a));
    const along = dot(normal, direction);
    if (along === 0 || (leaving && along < 0)) continue;
    const distance = dot(normal, minus(a, origin)) / along;
    if (!(distance > nearestMm) || (best !== null && distance >= best)) continue;
    const point = plus(origin, direction, distance);
    const sides = [
      [a, b],
      [b, c],
      [c, a],
    ].map(([from, to]) => dot(normal, cross(minus(to!, from!), minus(point, from!))) / dot(normal, normal));
    if (Math.min(...sides) >= -1e-10) best = distance;
  }
  return best;
}

/**
 * Diameter of the largest ball through `point` with its center along the unit vector `inward` that no facet cuts, by
 * the least of |q - p|^2 / (inward . (q - p)) over each facet, found by nested ternary search: the quotient is convex
 * where it is positive. Facets turned by no more than `ownSkinDeg` from `own` are left out.
 * @param mostMm the ball is no larger than this; facets that stay clear of it are not searched
 */
export function bruteBall(
  mesh: IndexedMesh,
  own: number,
  point: Point,
  inward: Point,
  ownSkinDeg: number,
  mostMm = Infinity,
): number {
  const leastRise = 1e-12;
  const allowed = (q: Point): number => {
    const away = minus(q, point);
    const rise = dot(away, inward);
    return rise > leastRise ? dot(away, away) / rise : Infinity;
  };
  const least = (from: Point, to: Point, value: (q: Point) => number): number => {
    let low = 0;
    let high = 1;
    const at = (share: number) => plus(from, minus(to, from), share);
    // Infinity on one side only: step off it first.
    for (let round = 0; round < 90; round++) {
      const [first, second] = [low + (high - low) / 3, high - (high - low) / 3];
      const [valueFirst, valueSecond] = [value(at(first)), value(at(second))];
      if (valueFirst === Infinity && valueSecond === Infinity) {
        if (dot(minus(to, from), inward) > 0) low = first;
        else high = second;
      } else if (valueFirst <= valueSecond) high = second;
      else low = first;
    }
    return Math.min(value(at(low)), value(at(high)), value(from), value(to));
  };
  let diameter = mostMm;
  for (let facet = 0; facet < mesh.facets.length / 3; facet++) {
    if (facet === own || isClear(mesh, facet, point, inward, diameter)) continue;
    const stand = facetStand(mesh, facet);
    if (stand === null) continue;
    if (-dot(stand.normal, inward) > Math.cos((ownSkinDeg * Math.PI) / 180)) continue;
    const [a, b, c] = facetCorners(mesh, facet);
    const edges = Math.min(least(a, b, allowed), least(b, c, allowed), least(c, a, allowed));
    // Inside: the point where a ball through p with center along `inward` touches the plane.
    const height = dot(stand.normal, minus(a, point));
    const lean = dot(stand.normal, inward);
    let inside = Infinity;
    for (const side of [1, -1]) {
      const radius = height / (lean + side);
      if (!(radius > 0) || !Number.isFinite(radius)) continue;
      const touch = plus(plus(point, inward, radius), stand.normal, height - radius * lean);
      const normal = cross(minus(b, a), minus(c, a));
      const isInside = [
        [a, b],
        [b, c],
        [c, a],
      ].every(([from, to]) => dot(normal, cross(minus(to!, from!), minus(touch, from!))) >= 0);
      if (isInside) inside = Math.min(inside, 2 * radius);
    }
    diameter = Math.min(diameter, edges, inside);
  }
  return diameter;
}

/** Whether the box of a facet lies off the box of a ball. */
function isClear(mesh: IndexedMesh, facet: number, point: Point, inward: Point, diameterMm: number): boolean {
  if (diameterMm === Infinity) return false;
  const { positions, facets } = mesh;
  return point.some((start, axis) => {
    const [a, b, c] = [0, 1, 2].map((corner) => positions[3 * facets[3 * facet + corner]! + axis]!);
    const middle = start + (diameterMm / 2) * inward[axis]!;
    return Math.min(a!, b!, c!) > middle + diameterMm / 2 || Math.max(a!, b!, c!) < middle - diameterMm / 2;
  });
}

/** What the kernel is to say of one facet. */
export interface BruteFacet {
  /** NaN where nothing is met. */
  readonly rayMm: number;
  readonly ballMm: number;
  readonly reach: number;
}

/** @returns null for a facet without area */
export function bruteFacet(
  mesh: IndexedMesh,
  facet: number,
  diagonalMm: number,
  pull: Point,
): BruteFacet | null {
  const stand = facetStand(mesh, facet);
  if (stand === null) return null;
  const { center, normal } = stand;
  const inward: Point = [-normal[0], -normal[1], -normal[2]];
  const rayMm = bruteRay(mesh, center, inward, facet, 1e-6 * diagonalMm, true);
  const mostMm = rayMm ?? 2 * diagonalMm;
  const ballMm = bruteBall(mesh, facet, center, inward, 30.1, mostMm);
  const lifted = plus(center, normal, 1e-5 * diagonalMm);
  const isOpen = (direction: Point) =>
    dot(normal, direction) > -Math.sin((0.1 * Math.PI) / 180) &&
    bruteRay(mesh, lifted, direction, -1, 0) === null;
  return {
    rayMm: rayMm ?? NaN,
    ballMm: ballMm < 2 * diagonalMm ? ballMm : NaN,
    reach:
      (isOpen(pull) ? reachBit.fromShowSide : 0) |
      (isOpen([-pull[0], -pull[1], -pull[2]]) ? reachBit.fromCoreSide : 0),
  };
}
