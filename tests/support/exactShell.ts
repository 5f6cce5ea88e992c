/**
 * A shell measured from its triangles alone, by formulas that the pattern maker does not share: every facet looks up along the pull
 * (show face), down (core face) or lies in the lowest plane (land); walls by exact distance to every facet of the other face.
 */
import type { IndexedMesh, Vec3 } from '../../src/core/mesh/types';

type Point = readonly [number, number, number];
const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export interface ShellFacet {
  readonly corners: readonly [Point, Point, Point];
  readonly center: Point;
  readonly areaMm2: number;
  /** asin of the facet's lean away from the mold half that leaves it. */
  readonly draftDeg: number;
}

export interface ShellFaces {
  readonly show: readonly ShellFacet[];
  readonly core: readonly ShellFacet[];
  readonly land: readonly ShellFacet[];
}

/** Facets of no more than a ten-thousandth of a square millimeter have no direction. */
const noAreaMm2 = 1e-4;

/** A facet of the core face hangs together with the land's inner border, the show face with its outer one; here by their look alone. */
export function facesOf({ positions, facets }: IndexedMesh, pull: Vec3): ShellFaces {
  const at = (vertex: number): Point => [
    positions[3 * vertex]!,
    positions[3 * vertex + 1]!,
    positions[3 * vertex + 2]!,
  ];
  let lowest = Infinity;
  for (let v = 0; v < positions.length / 3; v++) lowest = Math.min(lowest, dot(at(v), pull));
  const faces = { show: [] as ShellFacet[], core: [] as ShellFacet[], land: [] as ShellFacet[] };
  for (let f = 0; f < facets.length; f += 3) {
    const corners = [at(facets[f]!), at(facets[f + 1]!), at(facets[f + 2]!)] as const;
    const normal = cross(minus(corners[1], corners[0]), minus(corners[2], corners[0]));
    const length = Math.sqrt(dot(normal, normal));
    if (length / 2 < noAreaMm2) continue;
    const lean = dot(normal, pull) / length;
    const center: Point = [
      (corners[0][0] + corners[1][0] + corners[2][0]) / 3,
      (corners[0][1] + corners[1][1] + corners[2][1]) / 3,
      (corners[0][2] + corners[1][2] + corners[2][2]) / 3,
    ];
    const facet = {
      corners,
      center,
      areaMm2: length / 2,
      draftDeg: (Math.asin(Math.min(1, Math.abs(lean))) * 180) / Math.PI,
    };
    if (corners.every((corner) => dot(corner, pull) < lowest + 1e-4)) faces.land.push(facet);
    else faces[lean >= 0 ? 'show' : 'core'].push(facet);
  }
  return faces;
}

/** Nearest point of a triangle: over its plane where that falls inside, else on one of its edges. */
export function nearestOn([a, b, c]: ShellFacet['corners'], p: Point): Point {
  const normal = cross(minus(b, a), minus(c, a));
  const square = dot(normal, normal);
  const ap = minus(p, a);
  const u = dot(cross(ap, minus(c, a)), normal) / square;
  const v = dot(cross(minus(b, a), ap), normal) / square;
  if (u >= 0 && v >= 0 && u + v <= 1)
    return [0, 1, 2].map(
      (axis) => a[axis]! + u * (b[axis]! - a[axis]!) + v * (c[axis]! - a[axis]!),
    ) as unknown as Point;
  let best: Point = a;
  let bestSquare = Infinity;
  for (const [from, to] of [
    [a, b],
    [b, c],
    [c, a],
  ] as const) {
    const along = minus(to, from);
    const share = Math.max(0, Math.min(1, dot(minus(p, from), along) / dot(along, along)));
    const point: Point = [from[0] + share * along[0], from[1] + share * along[1], from[2] + share * along[2]];
    const off = minus(p, point);
    if (dot(off, off) >= bestSquare) continue;
    bestSquare = dot(off, off);
    best = point;
  }
  return best;
}

const distance = (a: Point, b: Point) => Math.sqrt(dot(minus(a, b), minus(a, b)));

/** Nearest point over many facets; those whose ball stays clear are not asked. */
export function nearestOf(facets: readonly ShellFacet[], p: Point): Point {
  let best: Point = facets[0]!.corners[0];
  let least = distance(best, p);
  for (const facet of facets) {
    const reach = radiusOf(facet);
    const dx = facet.center[0] - p[0];
    const dy = facet.center[1] - p[1];
    const dz = facet.center[2] - p[2];
    if (dx * dx + dy * dy + dz * dz > (least + reach) ** 2) continue;
    const point = nearestOn(facet.corners, p);
    const off = distance(point, p);
    if (off >= least) continue;
    least = off;
    best = point;
  }
  return best;
}

const radii = new WeakMap<ShellFacet, number>();
function radiusOf(facet: ShellFacet): number {
  const known = radii.get(facet);
  if (known !== undefined) return known;
  const radius = Math.max(...facet.corners.map((corner) => distance(corner, facet.center)));
  radii.set(facet, radius);
  return radius;
}

export interface ExactWalls {
  readonly p1: number;
  readonly median: number;
  readonly p99: number;
}

/** From the centers of show facets to the core face, over their area; evenly chosen when there are more than `most`. */
export function exactWalls({ show, core }: ShellFaces, most = 800): ExactWalls {
  const every = Math.max(1, Math.floor(show.length / most));
  const walls = show
    .filter((_, at) => at % every === 0)
    .map(({ center, areaMm2 }) => ({ areaMm2, mm: distance(nearestOf(core, center), center) }))
    .sort((a, b) => a.mm - b.mm);
  const whole = walls.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  const at = (share: number): number => {
    let running = 0;
    return (walls.find(({ areaMm2 }) => (running += areaMm2) >= share * whole) ?? walls.at(-1)!).mm;
  };
  return { p1: at(0.01), median: at(0.5), p99: at(0.99) };
}

export const leastDraftDeg = ({ show, core }: ShellFaces): number =>
  [...show, ...core].reduce((least, { draftDeg }) => Math.min(least, draftDeg), 90);

const areaOf = (some: readonly ShellFacet[]) => some.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);

/** Share of the area of show and core face under a draft. */
export function shareUnder({ show, core }: ShellFaces, deg: number): number {
  const both = [...show, ...core];
  return areaOf(both.filter(({ draftDeg }) => draftDeg < deg)) / areaOf(both);
}

/**
 * How far a ball of `radiusMm` that lies in the hollow stays from a point of the core face: 0 where it touches. Its center is pushed
 * off its closest surface point to the radius and pulled back to the radius from the point, again and again.
 * @param outward from the point into the hollow
 */
export function ballGap(core: readonly ShellFacet[], point: Point, outward: Point, radiusMm: number): number {
  let center: Point = [
    point[0] + radiusMm * outward[0],
    point[1] + radiusMm * outward[1],
    point[2] + radiusMm * outward[2],
  ];
  const toRadius = (from: Point): Point => {
    const off = minus(center, from);
    const by = radiusMm / Math.sqrt(dot(off, off));
    return [from[0] + by * off[0], from[1] + by * off[1], from[2] + by * off[2]];
  };
  for (let round = 0; round < 25; round++) {
    const nearest = nearestOf(core, center);
    if (distance(nearest, center) < radiusMm) center = toRadius(nearest);
    center = toRadius(point);
  }
  return radiusMm - distance(nearestOf(core, center), center);
}
