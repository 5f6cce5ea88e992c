import type { IndexedMesh } from './types';

/** Drops vertices that no facet uses; the mesh itself when there are none. */
export function compactVertices(mesh: IndexedMesh): IndexedMesh {
  const inUse = new Uint8Array(mesh.positions.length / 3);
  for (const vertex of mesh.facets) inUse[vertex] = 1;
  if (!inUse.includes(0)) return mesh;
  const newNumber = new Int32Array(mesh.positions.length / 3).fill(-1);
  const facets = new Uint32Array(mesh.facets.length);
  let used = 0;
  for (let corner = 0; corner < facets.length; corner++) {
    const vertex = mesh.facets[corner]!;
    if (newNumber[vertex] === -1) newNumber[vertex] = used++;
    facets[corner] = newNumber[vertex]!;
  }
  const positions = new Float64Array(3 * used);
  for (let vertex = 0; vertex < newNumber.length; vertex++) {
    const to = newNumber[vertex]!;
    if (to === -1) continue;
    positions[3 * to] = mesh.positions[3 * vertex]!;
    positions[3 * to + 1] = mesh.positions[3 * vertex + 1]!;
    positions[3 * to + 2] = mesh.positions[3 * vertex + 2]!;
  }
  return { positions, facets };
}
