/**
 * The form in which a mesh is saved and measured. Everything after import works on this form, so the figures are the
 * same before and after a reload and in the headless command.
 */
import { MeshoptEncoder } from 'meshoptimizer/encoder';
import { gridPosition, quantize } from './quantize';
import type { Grid } from './quantize';
import type { IndexedMesh } from './types';

export interface CanonicalMesh {
  /** Vertices on a grid, numbered by first use; each facet lies next to one before it wherever that is possible. */
  readonly mesh: IndexedMesh;
  readonly grid: Grid;
  /** Bits that the longest side of the box takes on the grid. */
  readonly bits: number;
  /** Largest distance that a vertex was moved, file units. */
  readonly errorFileUnits: number;
}

/**
 * Puts the mesh in its saved form; `preparePack` has been awaited before. No facet is dropped or added and none changes
 * its winding; vertices that no facet uses are left out. Two vertices that fall on one grid point stay two, so what
 * hangs together does not change.
 *
 * @throws Problem as `quantize`
 */
export function canonicalMesh(mesh: IndexedMesh): CanonicalMesh {
  const { grid, steps, bits, errorFileUnits } = quantize(mesh);
  const facets = mesh.facets.slice();
  // A walk from facet to neighboring facet packs to a quarter of what an order along a space-filling curve takes.
  const [newNumber, usedCount] = MeshoptEncoder.reorderMesh(facets, true, true);
  turnToSmallestFirst(facets);
  const positions = new Float64Array(3 * usedCount);
  for (let old = 0; old < newNumber.length; old++) {
    const vertex = newNumber[old] as number;
    if (vertex === unused) continue;
    for (let axis = 0; axis < 3; axis++) {
      positions[3 * vertex + axis] = gridPosition(grid, axis, steps[3 * old + axis] as number);
    }
  }
  return { mesh: { positions, facets }, grid, bits, errorFileUnits };
}

/** The new number that meshoptimizer gives a vertex without facets. */
const unused = 0xffffffff;

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
