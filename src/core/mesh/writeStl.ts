import type { IndexedMesh } from './types';

const headerBytes = 80;
const bytesPerFacet = 50;

/**
 * Binary STL of a mesh, in the units of the mesh: 80-byte header, facet count, then per facet a normal, three corners
 * (single precision, little-endian) and two unused bytes. The normal of a facet without area is zero.
 */
export function writeStlBinary(mesh: IndexedMesh): Uint8Array {
  const { positions, facets } = mesh;
  const facetCount = facets.length / 3;
  const bytes = new Uint8Array(headerBytes + 4 + bytesPerFacet * facetCount);
  // The header must not begin with "solid", which marks the text form.
  bytes.set(new TextEncoder().encode('binary STL, triangles with outward normals'));
  const view = new DataView(bytes.buffer);
  view.setUint32(headerBytes, facetCount, true);
  for (let facet = 0; facet < facetCount; facet++) {
    const start = headerBytes + 4 + bytesPerFacet * facet;
    const a = 3 * facets[3 * facet]!;
    const b = 3 * facets[3 * facet + 1]!;
    const c = 3 * facets[3 * facet + 2]!;
    const ux = positions[b]! - positions[a]!;
    const uy = positions[b + 1]! - positions[a + 1]!;
    const uz = positions[b + 2]! - positions[a + 2]!;
    const vx = positions[c]! - positions[a]!;
    const vy = positions[c + 1]! - positions[a + 1]!;
    const vz = positions[c + 2]! - positions[a + 2]!;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    const perLength = length === 0 ? 0 : 1 / length;
    view.setFloat32(start, nx * perLength, true);
    view.setFloat32(start + 4, ny * perLength, true);
    view.setFloat32(start + 8, nz * perLength, true);
    [a, b, c].forEach((at, corner) => {
      const to = start + 12 + 12 * corner;
      view.setFloat32(to, positions[at]!, true);
      view.setFloat32(to + 4, positions[at + 1]!, true);
      view.setFloat32(to + 8, positions[at + 2]!, true);
    });
  }
  return bytes;
}
