import { Problem } from '../problem';
import { compactVertices } from './compactVertices';
import { leaveOutFlat } from './flatFacets';
import { joinMisses } from './joinMisses';
import { keepThreeCornered } from './threeCornered';
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
 * are corners within a tiny distance joined too, and only when this makes the surface sound or mends a file whose corners
 * miss each other throughout: a single gap is reported as it stands.
 *
 * Throws `mesh.allDegenerate` when no facet has an area.
 */
export function weld(file: FileMesh): WeldResult {
  const notes: string[] = [];
  const equal = weldEqual(file);
  const joined = joinMisses(equal.mesh);
  notes.push(...joined.notes);
  const withoutFlat = leaveOutFlat(joined.mesh);
  const mesh = compactVertices(withoutFlat.mesh);
  const degenerateFacets = equal.dropped + joined.dropped + withoutFlat.dropped;
  if (mesh.facets.length === 0) {
    throw new Problem(
      'mesh.allDegenerate',
      'Every triangle in this file is collapsed to a point or a line, so there is no surface to measure. Export the part again.',
    );
  }
  if (degenerateFacets > 0) {
    notes.push(
      degenerateFacets === 1
        ? 'One triangle without area was left out.'
        : `${degenerateFacets} triangles without area were left out.`,
    );
  }
  return { mesh, degenerateFacets, weldDistance: joined.weldDistance, notes };
}
