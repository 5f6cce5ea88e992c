import type { IndexedMesh } from '../../src/core/mesh/types';

const corner = ({ positions }: IndexedMesh, vertex: number) =>
  Array.from(positions.subarray(3 * vertex, 3 * vertex + 3), String).join(' ');

/** Text STL with every digit of the coordinates. */
export function stlText(mesh: IndexedMesh, lineEnd = '\n'): string {
  const lines = ['solid part'];
  for (let at = 0; at < mesh.facets.length; at += 3) {
    lines.push('facet normal 0 0 0', ' outer loop');
    for (let k = at; k < at + 3; k++) lines.push(`  vertex ${corner(mesh, mesh.facets[k]!)}`);
    lines.push(' endloop', 'endfacet');
  }
  return [...lines, 'endsolid part', ''].join(lineEnd);
}

/** OBJ with every digit of the coordinates. */
export function objText(mesh: IndexedMesh): string {
  const lines: string[] = [];
  for (let vertex = 0; 3 * vertex < mesh.positions.length; vertex++) lines.push(`v ${corner(mesh, vertex)}`);
  for (let at = 0; at < mesh.facets.length; at += 3) {
    lines.push(`f ${Array.from(mesh.facets.subarray(at, at + 3), (vertex) => vertex + 1).join(' ')}`);
  }
  return `${lines.join('\n')}\n`;
}

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
