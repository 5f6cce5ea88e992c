/**
 * An open face made ready for cloth: its holes covered, so that threads run on over them, and a strip past its rim, so that the net
 * has whole cells there. The strip goes on in the plane of the facets at the rim; what of it is cut is the allowance.
 */
import earcut from 'earcut';
import type { IndexedMesh } from '../mesh/types';
import { Problem } from '../problem';
import { drapeSurface, region, twinsOf, type DrapeSurface } from './drapeSurface';
import { borderLoops, loopNormal, type Loop } from './loops';

export interface StripWidths {
  /** Cut past the rim; 0 cuts at the rim. */
  readonly allowanceMm: number;
  /** Only for the net. */
  readonly beyondMm: number;
}

/**
 * What is the same at every depth to which a face is moved: the facets of face, covers and strips, what each is, and what lies next to
 * what. Only the points differ from ply to ply.
 */
export interface ClosableFace {
  readonly widths: StripWidths;
  readonly facets: Uint32Array;
  readonly regions: Uint8Array;
  readonly twin: Int32Array;
  /** Of the face itself. */
  readonly rim: Loop;
  readonly holes: readonly Int32Array[];
  /** Holes that are covered by a fan: their middles follow the points of the face. */
  readonly fans: readonly Int32Array[];
  /** Where the cloth is cut. */
  readonly cut: Int32Array;
}

interface Parts {
  readonly facets: number[];
  readonly regions: number[];
  readonly fans: Int32Array[];
}

/** @throws Problem `drape.noRim` for a face without an end */
export function closableFace(face: IndexedMesh, widths: StripWidths): ClosableFace {
  const [rim, ...holes] = borderLoops(face);
  if (rim === undefined)
    throw new Problem(
      'drape.noRim',
      'The face has no rim: it is closed all around, so no cloth can be laid on it. Make the pattern at Pattern first.',
    );
  const vertices = face.positions.length / 3;
  const parts: Parts = {
    facets: Array.from(face.facets),
    regions: Array.from({ length: face.facets.length / 3 }, () => region.face),
    fans: [],
  };
  for (const hole of holes) cover(parts, face.positions, hole.vertices);
  const afterFans = vertices + parts.fans.length;
  const hasAllowance = widths.allowanceMm > 0;
  const cut = hasAllowance ? addStrip(parts, rim.vertices, afterFans, region.allowance) : rim.vertices;
  addStrip(parts, cut, hasAllowance ? afterFans + cut.length : afterFans, region.beyond);
  const facets = Uint32Array.from(parts.facets);
  const regions = Uint8Array.from(parts.regions);
  const own = {
    widths,
    facets,
    regions,
    rim,
    holes: holes.map((hole) => hole.vertices),
    fans: parts.fans,
    cut,
  };
  return { ...own, twin: twinsOf({ positions: pointsOf(own, face), facets }) };
}

/** @param face the one that was made closable, moved or not */
export function closeFace(closable: ClosableFace, face: IndexedMesh): DrapeSurface {
  const { facets, regions, cut, holes, twin } = closable;
  const mesh = { positions: pointsOf(closable, face), facets };
  return drapeSurface(mesh, { region: regions, rim: cut, holes }, twin);
}

/** Of the face, of the middles of fans, of the strips. */
function pointsOf(
  { widths: { allowanceMm, beyondMm }, rim, fans }: Omit<ClosableFace, 'twin'>,
  face: IndexedMesh,
): Float64Array {
  const strips = (allowanceMm > 0 ? [allowanceMm] : []).concat(allowanceMm + beyondMm);
  const points = new Float64Array(
    face.positions.length + 3 * (fans.length + strips.length * rim.vertices.length),
  );
  points.set(face.positions);
  let at = face.positions.length;
  for (const loop of fans)
    for (let axis = 0; axis < 3; axis++)
      points[at++] = loop.reduce((sum, vertex) => sum + face.positions[3 * vertex + axis]!, 0) / loop.length;
  const ways = waysOut(face, rim);
  for (const outMm of strips)
    rim.vertices.forEach((vertex, index) => {
      for (let axis = 0; axis < 3; axis++)
        points[at++] = face.positions[3 * vertex + axis]! + ways[3 * index + axis]! * outMm;
    });
  return points;
}

/** A fan about the middle where the whole loop is seen from there; else triangles in the plane of the loop. */
function cover({ facets, regions, fans }: Parts, positions: Float64Array, loop: Int32Array): void {
  const normal = loopNormal({ positions }, loop);
  const size = Math.hypot(...normal);
  if (size === 0) return;
  const plane = flattened(positions, loop, [normal[0] / size, normal[1] / size, normal[2] / size]);
  const count = loop.length;
  const middle = [0, 1].map((k) => loop.reduce((sum, _, at) => sum + plane[2 * at + k]!, 0) / count);
  const isSeen = loop.every((_, at) => {
    const next = (at + 1) % count;
    const [ax, ay] = [plane[2 * at]! - middle[0]!, plane[2 * at + 1]! - middle[1]!];
    const [bx, by] = [plane[2 * next]! - middle[0]!, plane[2 * next + 1]! - middle[1]!];
    return ax * by - ay * bx > 0;
  });
  // The mesh lies to the left of the loop, so the cover runs the other way around.
  if (isSeen) {
    const center = positions.length / 3 + fans.length;
    fans.push(loop);
    loop.forEach((vertex, at) => {
      facets.push(loop[(at + 1) % count]!, vertex, center);
      regions.push(region.hole);
    });
    return;
  }
  const corners = earcut(plane);
  for (let at = 0; at < corners.length; at += 3) {
    const [a, b, c] = [corners[at]!, corners[at + 1]!, corners[at + 2]!];
    const turn =
      (plane[2 * b]! - plane[2 * a]!) * (plane[2 * c + 1]! - plane[2 * a + 1]!) -
      (plane[2 * b + 1]! - plane[2 * a + 1]!) * (plane[2 * c]! - plane[2 * a]!);
    const [second, third] = turn > 0 ? [c, b] : [b, c];
    facets.push(loop[a]!, loop[second]!, loop[third]!);
    regions.push(region.hole);
  }
}

/** Coordinates in the plane across `normal`, counter-clockwise seen against it. */
function flattened(
  positions: Float64Array,
  loop: Int32Array,
  [nx, ny, nz]: readonly [number, number, number],
): number[] {
  const [ax, ay, az] = Math.abs(nx) < 0.7 ? [1, 0, 0] : [0, 1, 0];
  const u = [ay * nz - az * ny, az * nx - ax * nz, ax * ny - ay * nx];
  const size = Math.hypot(...u);
  const [ux, uy, uz] = [u[0]! / size, u[1]! / size, u[2]! / size];
  const [vx, vy, vz] = [ny * uz - nz * uy, nz * ux - nx * uz, nx * uy - ny * ux];
  return Array.from(loop).flatMap((vertex) => {
    const [x, y, z] = [positions[3 * vertex]!, positions[3 * vertex + 1]!, positions[3 * vertex + 2]!];
    return [ux * x + uy * y + uz * z, vx * x + vy * y + vz * z];
  });
}

/** Sharp corners of the rim reach no further than that many widths. */
const longestMiter = 2;

/** 3 per vertex of the rim: the way out in the planes of the facets at both of its edges, longer at corners so that the strip keeps its width. */
function waysOut({ positions, facets }: IndexedMesh, { vertices: rim, halfEdges }: Loop): Float64Array {
  const count = rim.length;
  const outOfEdge = new Float64Array(3 * count);
  const point = (v: number) => [0, 1, 2].map((k) => positions[3 * v + k]!) as [number, number, number];
  rim.forEach((from, at) => {
    const to = rim[(at + 1) % count]!;
    const half = halfEdges[at]!;
    const apex = facets[3 * Math.floor(half / 3) + ((half + 2) % 3)]!;
    const [p, q, r] = [point(from), point(to), point(apex)];
    const e = [q[0] - p[0], q[1] - p[1], q[2] - p[2]] as const;
    const g = [r[0] - p[0], r[1] - p[1], r[2] - p[2]] as const;
    const along = (e[0] * g[0] + e[1] * g[1] + e[2] * g[2]) / (e[0] ** 2 + e[1] ** 2 + e[2] ** 2);
    const inward = [g[0] - along * e[0], g[1] - along * e[1], g[2] - along * e[2]] as const;
    const size = Math.hypot(...inward) || 1;
    for (let k = 0; k < 3; k++) outOfEdge[3 * at + k] = -inward[k]! / size;
  });
  const ways = new Float64Array(3 * count);
  for (let at = 0; at < count; at++) {
    const before = (at + count - 1) % count;
    const sum = [0, 1, 2].map((k) => outOfEdge[3 * at + k]! + outOfEdge[3 * before + k]!);
    const size = Math.hypot(...sum);
    // Half of the sum of two unit vectors is the cosine of half their angle.
    const reach = size > 0 ? Math.min(longestMiter, 2 / size) / size : 0;
    for (let k = 0; k < 3; k++) ways[3 * at + k] = sum[k]! * reach;
  }
  return ways;
}

/** @param first number of the first of its outer vertices */
function addStrip({ facets, regions }: Parts, inner: Int32Array, first: number, kind: number): Int32Array {
  const outer = inner.map((_, at) => first + at);
  for (let at = 0; at < inner.length; at++) {
    const next = (at + 1) % inner.length;
    facets.push(inner[next]!, inner[at]!, outer[at]!, inner[next]!, outer[at]!, outer[next]!);
    regions.push(kind, kind);
  }
  return outer;
}
