/** The inside of a half: the facets that its contents stand opposite. */
import type { IndexedMesh, Vec3 } from '../mesh/types';
import { lengthOf, minus } from '../numeric/vectors';
import { cornerAt } from './planePatches';
import type { RimSearch } from './rim';
import type { Placing } from './compareRims';

/** Steps of the way over the surface that are told apart. */
const stepMm = 0.25;

/**
 * The core face with its ribs and bosses: every facet that the inner border of the rim reaches over the surface on a shorter way than
 * the outer border does. Where a window joins both sides, they part within its land. The rim itself belongs to neither.
 */
export function cavityFacets(mesh: IndexedMesh, { rim, neighbor }: RimSearch): Uint8Array {
  const count = mesh.facets.length / 3;
  // 0 not reached, 1 outer side, 2 inner side, 3 rim.
  const side = new Uint8Array(count);
  for (const facet of rim.facets) side[facet] = 3;
  const center = (facet: number): Vec3 => {
    const [a, b, c] = [
      cornerAt(mesh, 3 * facet),
      cornerAt(mesh, 3 * facet + 1),
      cornerAt(mesh, 3 * facet + 2),
    ];
    return [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3];
  };
  // Buckets by the way so far; a facet is settled from the first bucket that holds it.
  // An entry is the facet, doubled, and 1 where it was reached from the inner border.
  const buckets: number[][] = [];
  const put = (wayMm: number, facet: number, from: number): void => {
    const at = Math.min(100_000, Math.floor(wayMm / stepMm));
    (buckets[at] ??= []).push(2 * facet + from - 1);
  };
  for (const facet of rim.besideOuter) put(0, facet, 1);
  for (const facet of rim.besideInner) put(0, facet, 2);
  for (let at = 0; at < buckets.length; at++) {
    const bucket = buckets[at];
    if (bucket === undefined) continue;
    for (let next = 0; next < bucket.length; next++) {
      const facet: number = bucket[next]! >> 1;
      const from: number = (bucket[next]! & 1) + 1;
      if (side[facet] !== 0) continue;
      side[facet] = from;
      const here = center(facet);
      for (let halfEdge: number = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
        const other: number = neighbor[halfEdge]!;
        if (other < 0 || side[other] !== 0) continue;
        put(at * stepMm + lengthOf(minus(center(other), here)), other, from);
      }
    }
    buckets[at] = [];
  }
  return side.map((one) => (one === 2 ? 1 : 0));
}

/** Some facets of a mesh, placed. */
export function someFacets(mesh: IndexedMesh, chosen: Uint8Array, at: Placing | null): IndexedMesh {
  const facets = mesh.facets.filter((_, corner) => chosen[(corner / 3) | 0] === 1);
  if (at === null) return { positions: mesh.positions, facets };
  const positions = new Float64Array(mesh.positions.length);
  const [x, y, z] = at.turn;
  for (let k = 0; k < positions.length; k += 3) {
    const [px, py, pz] = [mesh.positions[k]!, mesh.positions[k + 1]!, mesh.positions[k + 2]!];
    positions[k] = x[0] * px + x[1] * py + x[2] * pz + at.shiftMm[0];
    positions[k + 1] = y[0] * px + y[1] * py + y[2] * pz + at.shiftMm[1];
    positions[k + 2] = z[0] * px + z[1] * py + z[2] * pz + at.shiftMm[2];
  }
  return { positions, facets };
}

export function joined(one: IndexedMesh, other: IndexedMesh): IndexedMesh {
  const first = one.positions.length / 3;
  const positions = new Float64Array(one.positions.length + other.positions.length);
  positions.set(one.positions);
  positions.set(other.positions, one.positions.length);
  const facets = new Uint32Array(one.facets.length + other.facets.length);
  facets.set(one.facets);
  facets.set(
    other.facets.map((vertex) => vertex + first),
    one.facets.length,
  );
  return { positions, facets };
}
