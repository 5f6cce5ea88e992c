/** The frame that plies are laid by: the part's length, across it, and the pull. */
import type { IndexedMesh, Vec3 } from '../mesh/types';
import { leastRectangle } from '../mesh/leastRectangle';
import { unitVector } from '../mesh/measure';
import { Problem } from '../problem';
import { region, type DrapeSurface, type Place } from './drapeSurface';

export interface PartDatum {
  /** Middle of the plan, mm of the part's own axes. */
  readonly middleMm: Vec3;
  /** Along the longer side of the least rectangle around the plan. */
  readonly length: Vec3;
  /** To the left of the length, seen against the pull. */
  readonly across: Vec3;
  readonly pull: Vec3;
  readonly lengthMm: number;
  readonly acrossMm: number;
}

const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const mix = (a: Vec3, x: number, b: Vec3, y: number): Vec3 => [
  a[0] * x + b[0] * y,
  a[1] * x + b[1] * y,
  a[2] * x + b[2] * y,
];

/** @throws Problem `pull.zero` */
export function partDatum({ positions }: Pick<IndexedMesh, 'positions'>, direction: Vec3): PartDatum {
  const pull = unitVector(direction);
  const least = Math.min(...pull.map(Math.abs));
  const axis = pull.findIndex((share) => Math.abs(share) === least);
  const second = unitVector(cross(pull, [axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0]));
  const first = cross(second, pull);
  const count = positions.length / 3;
  const plan = new Float64Array(2 * count);
  const pointAt = (at: number): Vec3 => [positions[3 * at]!, positions[3 * at + 1]!, positions[3 * at + 2]!];
  for (let at = 0; at < count; at++) {
    plan[2 * at] = dot(first, pointAt(at));
    plan[2 * at + 1] = dot(second, pointAt(at));
  }
  const { turnDeg, firstMm, secondMm } = leastRectangle(plan);
  const turn = (turnDeg * Math.PI) / 180;
  const along = mix(first, Math.cos(turn), second, Math.sin(turn));
  const longer = firstMm >= secondMm ? along : cross(pull, along);
  // One way of the two: that of the part's own axes.
  const strongest = longer.reduce(
    (most, share) => (Math.abs(share) > Math.abs(most) + 1e-9 ? share : most),
    0,
  );
  const length: Vec3 = strongest < 0 ? [-longer[0], -longer[1], -longer[2]] : longer;
  const across = cross(pull, length);
  const range = (way: Vec3): readonly [number, number] => {
    let [low, high] = [Infinity, -Infinity];
    for (let at = 0; at < count; at++) {
      const on = dot(way, pointAt(at));
      low = Math.min(low, on);
      high = Math.max(high, on);
    }
    return [low, high];
  };
  const [u, v, w] = [range(length), range(across), range(pull)];
  const middle = mix(mix(length, (u[0] + u[1]) / 2, across, (v[0] + v[1]) / 2), 1, pull, w[0]);
  return { middleMm: middle, length, across, pull, lengthMm: u[1] - u[0], acrossMm: v[1] - v[0] };
}

/** A point of the plan, from its middle. */
export interface PlanPoint {
  readonly alongMm: number;
  readonly acrossMm: number;
}

/**
 * The uppermost place of the surface over a point of the plan.
 * @returns null where the surface does not reach
 */
export function placeOver(
  surface: DrapeSurface,
  { middleMm, length, across, pull }: PartDatum,
  { alongMm, acrossMm }: PlanPoint,
): Place | null {
  const { positions, facets, frame } = surface;
  let best: Place | null = null;
  let bestHeight = -Infinity;
  const from = mix(mix(length, alongMm, across, acrossMm), 1, middleMm, 1);
  // Each corner seen from the point, along the length and across: the point lies within where all three turn the same way.
  const seen = (vertex: number, way: Vec3) =>
    way[0] * (positions[vertex]! - from[0]) +
    way[1] * (positions[vertex + 1]! - from[1]) +
    way[2] * (positions[vertex + 2]! - from[2]);
  for (let facet = 0; facet < frame.length / 3; facet++) {
    if (surface.region[facet] !== region.face && surface.region[facet] !== region.hole) continue;
    const a = 3 * facets[3 * facet]!;
    const b = 3 * facets[3 * facet + 1]!;
    const c = 3 * facets[3 * facet + 2]!;
    const ax = seen(a, length);
    const bx = seen(b, length);
    const cx = seen(c, length);
    if ((ax > 0 && bx > 0 && cx > 0) || (ax < 0 && bx < 0 && cx < 0)) continue;
    const ay = seen(a, across);
    const by = seen(b, across);
    const cy = seen(c, across);
    const [atC, atA, atB] = [ax * by - ay * bx, bx * cy - by * cx, cx * ay - cy * ax];
    const twice = atA + atB + atC;
    const slack = -1e-12 * twice;
    if (twice <= 0 || atA < slack || atB < slack || atC < slack) continue;
    const height = (atA * seen(a, pull) + atB * seen(b, pull) + atC * seen(c, pull)) / twice;
    if (height <= bestHeight) continue;
    const [size, x, y] = [frame[3 * facet]!, frame[3 * facet + 1]!, frame[3 * facet + 2]!];
    best = { facet, x: (atB * size + atC * x) / twice, y: (atC * y) / twice };
    bestHeight = height;
  }
  return best;
}

/**
 * @param fiberDeg from the length, counterclockwise seen against the pull
 * @returns angle in the frame of the facet, of the direction on the surface that is seen at that angle
 */
export function warpAngleAt(
  { axes }: DrapeSurface,
  { length, across, pull }: PartDatum,
  { facet }: Place,
  fiberDeg: number,
): number {
  const turn = (fiberDeg * Math.PI) / 180;
  const seen = mix(length, Math.cos(turn), across, Math.sin(turn));
  const x: Vec3 = [axes[6 * facet]!, axes[6 * facet + 1]!, axes[6 * facet + 2]!];
  const y: Vec3 = [axes[6 * facet + 3]!, axes[6 * facet + 4]!, axes[6 * facet + 5]!];
  const normal = cross(x, y);
  const along = mix(seen, 1, pull, -dot(normal, seen) / dot(normal, pull));
  return Math.atan2(dot(along, y), dot(along, x));
}

/** @throws Problem `drape.startOff` */
export function startPlace(surface: DrapeSurface, datum: PartDatum, start: PlanPoint): Place {
  const place = placeOver(surface, datum, start);
  if (place === null)
    throw new Problem(
      'drape.startOff',
      `The start of the cloth lies off the part: ${start.alongMm.toFixed(1)} mm along and ${start.acrossMm.toFixed(1)} mm across from its middle. The part reaches ${(datum.lengthMm / 2).toFixed(1)} mm along and ${(datum.acrossMm / 2).toFixed(1)} mm across. Enter a start on the face, or leave both empty.`,
    );
  return place;
}
