/** The borders of an open mesh. */
import type { IndexedMesh } from '../mesh/types';
import { twinsOf } from './drapeSurface';

export interface Loop {
  /** Vertices with the mesh on their left; closed, the first is not repeated. */
  readonly vertices: Int32Array;
  /** The half-edge that leaves each of them along the border. */
  readonly halfEdges: Int32Array;
  /** Area that it goes around, as a vector's length. */
  readonly areaMm2: number;
}

/** Largest first. Where two borders touch in a vertex, each goes on with the edge that was not taken yet. */
export function borderLoops(mesh: IndexedMesh): readonly Loop[] {
  const { facets } = mesh;
  const twin = twinsOf(mesh);
  const leaving = new Map<number, number[]>();
  for (let h = 0; h < facets.length; h++) {
    if (twin[h]! >= 0) continue;
    const from = facets[h]!;
    const list = leaving.get(from);
    if (list === undefined) leaving.set(from, [h]);
    else list.push(h);
  }
  const loops: Loop[] = [];
  for (const [begin, list] of leaving) {
    while (list.length > 0) {
      const vertices: number[] = [];
      const halfEdges: number[] = [];
      let at = begin;
      for (;;) {
        const half = leaving.get(at)?.pop();
        if (half === undefined) break;
        vertices.push(at);
        halfEdges.push(half);
        at = facets[half % 3 === 2 ? half - 2 : half + 1]!;
        if (at === begin) break;
      }
      if (vertices.length >= 3 && at === begin)
        loops.push({
          vertices: Int32Array.from(vertices),
          halfEdges: Int32Array.from(halfEdges),
          areaMm2: Math.hypot(...loopNormal(mesh, vertices)),
        });
    }
  }
  return loops.toSorted((a, b) => b.areaMm2 - a.areaMm2);
}

/** Half the sum of cross products: as long as the area of a plane loop, and across it. */
export function loopNormal(
  { positions }: { readonly positions: ArrayLike<number> },
  vertices: ArrayLike<number>,
): [number, number, number] {
  const sum: [number, number, number] = [0, 0, 0];
  const first = 3 * vertices[0]!;
  for (let k = 1; k + 1 < vertices.length; k++) {
    const [a, b] = [3 * vertices[k]!, 3 * vertices[k + 1]!];
    const u = [0, 1, 2].map((axis) => positions[a + axis]! - positions[first + axis]!) as typeof sum;
    const v = [0, 1, 2].map((axis) => positions[b + axis]! - positions[first + axis]!) as typeof sum;
    sum[0] += (u[1] * v[2] - u[2] * v[1]) / 2;
    sum[1] += (u[2] * v[0] - u[0] * v[2]) / 2;
    sum[2] += (u[0] * v[1] - u[1] * v[0]) / 2;
  }
  return sum;
}
