import { Problem } from '../problem';
import { buildAdjacency } from './adjacency';
import { facetBox } from './integrals';
import { joinNearVertices } from './nearVertices';
import type { FileMesh, IndexedMesh } from './types';
import { VertexTable } from './vertexTable';

export interface WeldResult {
  /** File units, relative to `FileMesh.origin`; no facet uses a vertex twice. Duplicate facets stay in. */
  readonly mesh: IndexedMesh;
  /** Facets without area that were left out. */
  readonly degenerateFacets: number;
  /** Distance within which corners were joined, file units; 0 when equal corners were enough. */
  readonly weldDistance: number;
  /** Plain sentences for the maker. */
  readonly notes: readonly string[];
}

/**
 * Distances, in diagonals of the box, that may be tried when equal corners leave edges open: far below what a
 * printer can draw, and above the rounding of single-precision files.
 */
const joinShares = [1e-6, 1e-5] as const;
/** A join is taken only when at most this share of the open edges stays open; else it hides nothing but detail. */
const mostLeftOpenShare = 0.1;
/** A facet is flat when twice its area is below this share of its longest edge squared (float64 rounding). */
const flatShare = 1e-13;

/** Facets that still use three different vertices once each vertex is replaced; others are counted. */
function keepThreeCornered(facets: Uint32Array): { facets: Uint32Array; dropped: number } {
  let kept = 0;
  for (let at = 0; at < facets.length; at += 3) {
    const a = facets[at]!;
    const b = facets[at + 1]!;
    const c = facets[at + 2]!;
    if (a === b || b === c || c === a) continue;
    facets[kept] = a;
    facets[kept + 1] = b;
    facets[kept + 2] = c;
    kept += 3;
  }
  return { facets: facets.slice(0, kept), dropped: (facets.length - kept) / 3 };
}

/** True when the three corners lie on one line. */
export function isFlat(mesh: IndexedMesh, facet: number): boolean {
  const { positions, facets } = mesh;
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
  const longest = Math.max(
    ux * ux + uy * uy + uz * uz,
    vx * vx + vy * vy + vz * vz,
    (vx - ux) ** 2 + (vy - uy) ** 2 + (vz - uz) ** 2,
  );
  return nx * nx + ny * ny + nz * nz <= (flatShare * longest) ** 2;
}

/**
 * Leaves out flat facets, except those whose edges all have exactly two facets: they close the surface (exporters
 * put them between a long edge and its split neighbor) and leaving them out would tear it open.
 */
function leaveOutFlat(mesh: IndexedMesh): { mesh: IndexedMesh; dropped: number } {
  const facetCount = mesh.facets.length / 3;
  const flat: number[] = [];
  for (let facet = 0; facet < facetCount; facet++) if (isFlat(mesh, facet)) flat.push(facet);
  if (flat.length === 0) return { mesh, dropped: 0 };
  const { neighbor } = buildAdjacency(mesh);
  const loose = new Set(
    flat.filter((f) => neighbor[3 * f]! < 0 || neighbor[3 * f + 1]! < 0 || neighbor[3 * f + 2]! < 0),
  );
  if (loose.size === 0) return { mesh, dropped: 0 };
  const facets = mesh.facets.filter((_, corner) => !loose.has((corner / 3) | 0));
  return { mesh: { positions: mesh.positions, facets }, dropped: loose.size };
}

/** Drops vertices that no facet uses. */
export function compactVertices(mesh: IndexedMesh): IndexedMesh {
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

/** Exactly equal corners become one vertex. */
function weldEqual(file: FileMesh): { mesh: IndexedMesh; dropped: number } {
  const { corners } = file;
  const cornerCount = corners.length / 3;
  const table = new VertexTable(Math.ceil(cornerCount / 5));
  const numbers = new Uint32Array(cornerCount);
  for (let corner = 0; corner < cornerCount; corner++) {
    numbers[corner] = table.add(corners[3 * corner]!, corners[3 * corner + 1]!, corners[3 * corner + 2]!);
  }
  const { facets, dropped } = keepThreeCornered(numbers);
  return { mesh: { positions: table.positions(), facets }, dropped };
}

/**
 * Joins the corners of a file's triangles into shared vertices. Equal corners first; only when that leaves edges open
 * are corners within a tiny distance joined too, and only when this closes (nearly) all of them.
 *
 * Throws `mesh.allDegenerate` when no facet has an area.
 */
export function weld(file: FileMesh): WeldResult {
  const notes: string[] = [];
  const equal = weldEqual(file);
  let { mesh } = equal;
  let dropped = equal.dropped;
  let weldDistance = 0;

  const openEdges = buildAdjacency(mesh).openEdges;
  if (openEdges > 0) {
    const box = facetBox(mesh);
    const diagonal = Math.hypot(box.max[0] - box.min[0], box.max[1] - box.min[1], box.max[2] - box.min[2]);
    for (const share of joinShares) {
      const stands = joinNearVertices(mesh, share * diagonal);
      const joined = keepThreeCornered(mesh.facets.map((vertex) => stands[vertex]!));
      const candidate = { positions: mesh.positions, facets: joined.facets };
      if (buildAdjacency(candidate).openEdges > mostLeftOpenShare * openEdges) continue;
      mesh = candidate;
      dropped += joined.dropped;
      weldDistance = share * diagonal;
      notes.push(
        `Corners that should meet lie slightly apart in the file; those within ${weldDistance.toPrecision(2)} file units were joined, which closed ${openEdges} edges.`,
      );
      break;
    }
  }

  const withoutFlat = leaveOutFlat(mesh);
  dropped += withoutFlat.dropped;
  mesh = compactVertices(withoutFlat.mesh);
  if (mesh.facets.length === 0) {
    throw new Problem(
      'mesh.allDegenerate',
      'Every triangle in this file is collapsed to a point or a line, so there is no surface to measure. Export the part again.',
    );
  }
  if (dropped > 0) {
    notes.push(
      dropped === 1
        ? 'One triangle without area was left out.'
        : `${dropped} triangles without area were left out.`,
    );
  }
  return { mesh, degenerateFacets: dropped, weldDistance, notes };
}
