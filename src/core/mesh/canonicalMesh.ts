/**
 * The form in which a mesh is saved and measured. Everything after import works on this form, so the figures are the
 * same before and after a reload and in the headless command.
 */
import { curveOrder } from './curveOrder';
import { gridPosition, quantize } from './quantize';
import type { Grid } from './quantize';
import type { IndexedMesh } from './types';

export interface CanonicalMesh {
  /** Vertices on a grid, facets along a space-filling curve, vertices numbered by first use. */
  readonly mesh: IndexedMesh;
  readonly grid: Grid;
  /** Bits that the longest side of the box takes on the grid. */
  readonly bits: number;
  /** Largest distance that a vertex was moved, file units. */
  readonly errorFileUnits: number;
}

/**
 * Puts the mesh in its saved form. No facet is dropped or added and none changes its winding; vertices that no facet
 * uses are left out. Two vertices that fall on one grid point stay two, so what hangs together does not change.
 *
 * @throws Problem as `quantize`
 */
export function canonicalMesh(mesh: IndexedMesh): CanonicalMesh {
  const { grid, steps, bits, errorFileUnits } = quantize(mesh);
  const order = curveOrder(steps, mesh.facets, 2 ** bits - 1);
  const { facets, oldVertices } = renumber(mesh.facets, order, mesh.positions.length / 3);
  const positions = new Float64Array(3 * oldVertices.length);
  for (let v = 0; v < oldVertices.length; v++) {
    const old = 3 * (oldVertices[v] as number);
    for (let axis = 0; axis < 3; axis++) {
      positions[3 * v + axis] = gridPosition(grid, axis, steps[old + axis] as number);
    }
  }
  return { mesh: { positions, facets }, grid, bits, errorFileUnits };
}

/** Turns every facet's corners so that the smallest vertex number stands first; the winding stays. Changes `facets`. */
export function turnToSmallestFirst(facets: Uint32Array): void {
  for (let f = 0; f < facets.length; f += 3) {
    const a = facets[f] as number;
    const b = facets[f + 1] as number;
    const c = facets[f + 2] as number;
    if (a <= b && a < c) continue;
    const fromB = b <= c && b < a;
    facets[f] = fromB ? b : c;
    facets[f + 1] = fromB ? c : a;
    facets[f + 2] = fromB ? a : b;
  }
}

const unseen = 0xffffffff;

function renumber(facets: Uint32Array, order: Uint32Array, vertexCount: number) {
  const newNumber = new Uint32Array(vertexCount).fill(unseen);
  const oldVertices = new Uint32Array(vertexCount);
  const ordered = new Uint32Array(facets.length);
  let used = 0;
  for (let i = 0; i < order.length; i++) {
    const f = 3 * (order[i] as number);
    // Corners that were met before come first, so that new numbers stand in counting order after the final turn.
    const first = firstKnownCorner(newNumber, facets, f);
    for (let corner = 0; corner < 3; corner++) {
      const old = facets[f + ((first + corner) % 3)] as number;
      if (newNumber[old] === unseen) {
        oldVertices[used] = old;
        newNumber[old] = used++;
      }
      ordered[3 * i + corner] = newNumber[old] as number;
    }
  }
  turnToSmallestFirst(ordered);
  return { facets: ordered, oldVertices: oldVertices.slice(0, used) };
}

/** The corner to start with: the first met one of a run of met corners, or corner 0 when none or all were met. */
function firstKnownCorner(newNumber: Uint32Array, facets: Uint32Array, f: number): number {
  for (let corner = 0; corner < 3; corner++) {
    const before = facets[f + ((corner + 2) % 3)] as number;
    const here = facets[f + corner] as number;
    if (newNumber[before] === unseen && newNumber[here] !== unseen) return corner;
  }
  return 0;
}
