import { facetBox } from './integrals';
import type { IndexedMesh } from './types';

/**
 * Joins vertices that lie within `distance` of each other: every vertex takes the place of the first earlier one
 * that is near enough, found through a grid of cells of that size. Returns the vertex that stands for each vertex.
 */
export function joinNearVertices(mesh: IndexedMesh, distance: number): Uint32Array {
  const { positions } = mesh;
  const vertexCount = positions.length / 3;
  const stands = new Uint32Array(vertexCount);
  const origin = facetBox(mesh).min;
  let size = 1024;
  while (size < 2 * vertexCount) size *= 2;
  const mask = size - 1;
  const firstInSlot = new Int32Array(size).fill(-1);
  const nextInSlot = new Int32Array(vertexCount).fill(-1);
  // Cell numbers reach 1e6 along a diagonal divided by the smallest tolerance, so the 32-bit products may wrap; a
  // wrapped hash only makes two cells share a slot, and the distance decides.
  const slotOf = (i: number, j: number, k: number) =>
    (Math.imul(i, 0x8da6b343) ^ Math.imul(j, 0xd8163841) ^ Math.imul(k, 0xcb1ab31f)) & mask;
  const limit = distance * distance;

  const findNear = (vertex: number, i: number, j: number, k: number): number => {
    const x = positions[3 * vertex]!;
    const y = positions[3 * vertex + 1]!;
    const z = positions[3 * vertex + 2]!;
    for (let di = -1; di <= 1; di++)
      for (let dj = -1; dj <= 1; dj++)
        for (let dk = -1; dk <= 1; dk++)
          for (
            let other = firstInSlot[slotOf(i + di, j + dj, k + dk)]!;
            other !== -1;
            other = nextInSlot[other]!
          ) {
            const dx = positions[3 * other]! - x;
            const dy = positions[3 * other + 1]! - y;
            const dz = positions[3 * other + 2]! - z;
            if (dx * dx + dy * dy + dz * dz <= limit) return other;
          }
    return -1;
  };

  for (let vertex = 0; vertex < vertexCount; vertex++) {
    const i = Math.floor((positions[3 * vertex]! - origin[0]) / distance);
    const j = Math.floor((positions[3 * vertex + 1]! - origin[1]) / distance);
    const k = Math.floor((positions[3 * vertex + 2]! - origin[2]) / distance);
    const near = findNear(vertex, i, j, k);
    if (near !== -1) {
      stands[vertex] = near;
      continue;
    }
    stands[vertex] = vertex;
    const slot = slotOf(i, j, k);
    nextInSlot[vertex] = firstInSlot[slot]!;
    firstInSlot[slot] = vertex;
  }
  return stands;
}
