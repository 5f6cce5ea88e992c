/**
 * An open face made ready for cloth: its holes covered, so that threads run on over them, and a strip past its rim, so that the net
 * has whole cells there. The strip goes on in the plane of the facets at the rim; what of it is cut is the allowance.
 */
import earcut from 'earcut';
import type { IndexedMesh } from '../mesh/types';
import { Problem } from '../problem';
import { drapeSurface, region, type DrapeSurface } from './drapeSurface';
import { borderLoops, loopNormal, type Loop } from './loops';

export interface StripWidths {
  /** Cut past the rim; 0 cuts at the rim. */
  readonly allowanceMm: number;
  /** Only for the net. */
  readonly beyondMm: number;
}

interface Parts {
  readonly positions: number[];
  readonly facets: number[];
  readonly regions: number[];
}

/** @throws Problem `drape.noRim` for a face without an end */
export function closeFace(face: IndexedMesh, { allowanceMm, beyondMm }: StripWidths): DrapeSurface {
  const [rim, ...holes] = borderLoops(face);
  if (rim === undefined)
    throw new Problem(
      'drape.noRim',
      'The face has no rim: it is closed all around, so no cloth can be laid on it. Make the pattern at Pattern first.',
    );
  const parts: Parts = {
    positions: Array.from(face.positions),
    facets: Array.from(face.facets),
    regions: Array.from({ length: face.facets.length / 3 }, () => region.face),
  };
  for (const { vertices } of holes) cover(parts, vertices);
  const ways = waysOut(face, rim);
  const cut =
    allowanceMm > 0 ? addStrip(parts, rim.vertices, ways, 0, allowanceMm, region.allowance) : rim.vertices;
  addStrip(parts, rim.vertices, ways, allowanceMm, beyondMm, region.beyond, cut);
  return drapeSurface(
    { positions: Float64Array.from(parts.positions), facets: Uint32Array.from(parts.facets) },
    { region: Uint8Array.from(parts.regions), rim: cut, holes: holes.map(({ vertices }) => vertices) },
  );
}

/** A fan about the middle where the whole loop is seen from there; else triangles in the plane of the loop. */
function cover({ positions, facets, regions }: Parts, loop: Int32Array): void {
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
    const center = positions.length / 3;
    for (let axis = 0; axis < 3; axis++)
      positions.push(loop.reduce((sum, vertex) => sum + positions[3 * vertex + axis]!, 0) / count);
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
  positions: readonly number[],
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

function addStrip(
  { positions, facets, regions }: Parts,
  rim: Int32Array,
  ways: Float64Array,
  fromMm: number,
  widthMm: number,
  kind: number,
  inner: Int32Array = rim,
): Int32Array {
  const count = rim.length;
  const outer = new Int32Array(count);
  rim.forEach((vertex, at) => {
    outer[at] = positions.length / 3;
    for (let k = 0; k < 3; k++)
      positions.push(positions[3 * vertex + k]! + ways[3 * at + k]! * (fromMm + widthMm));
  });
  for (let at = 0; at < count; at++) {
    const next = (at + 1) % count;
    facets.push(inner[next]!, inner[at]!, outer[at]!, inner[next]!, outer[at]!, outer[next]!);
    regions.push(kind, kind);
  }
  return outer;
}
