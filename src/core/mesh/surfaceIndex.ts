import { buildCellGrid, type CellGrid } from './surfaceIndexGrid';
import { orderAlongCurve } from './surfaceIndexOrder';
import { buildBoxTree, type BoxTree } from './surfaceIndexTree';
import type { IndexedMesh, Vec3 } from './types';

/**
 * What makes rays and balls fast: the facets along a space-filling curve, a uniform grid for rays and a box tree for
 * balls, all flat typed arrays. A *slot* is a place in curve order; results always speak of facets of the mesh.
 */
export interface SurfaceIndex {
  readonly facetCount: number;
  readonly boxMinMm: Vec3;
  readonly boxMaxMm: Vec3;
  /** Length of the box diagonal: every tolerance is scaled to it. */
  readonly diagonalMm: number;
  /** 3 numbers per point, mm. */
  readonly points: Float64Array;
  /** 3 point numbers per slot. */
  readonly corners: Uint32Array;
  /** Facet of the mesh in each slot. */
  readonly facetOfSlot: Uint32Array;
  readonly grid: CellGrid;
  readonly tree: BoxTree;
}

/** Builds the index, on copies of the arrays in curve order. */
export function buildSurfaceIndex(mesh: IndexedMesh): SurfaceIndex {
  const { positions } = mesh;
  const boxMin: [number, number, number] = [Infinity, Infinity, Infinity];
  const boxMax: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let at = 0; at < positions.length; at += 3) {
    for (let axis = 0; axis < 3; axis++) {
      const value = positions[at + axis]!;
      if (value < boxMin[axis]!) boxMin[axis] = value;
      if (value > boxMax[axis]!) boxMax[axis] = value;
    }
  }
  if (positions.length === 0) {
    boxMin.fill(0);
    boxMax.fill(0);
  }
  const { points, corners, facetOfSlot } = orderAlongCurve(mesh, boxMin, boxMax);
  const largestCoordinate = Math.max(...boxMin.map(Math.abs), ...boxMax.map(Math.abs));
  return {
    facetCount: mesh.facets.length / 3,
    boxMinMm: boxMin,
    boxMaxMm: boxMax,
    diagonalMm: Math.hypot(boxMax[0] - boxMin[0], boxMax[1] - boxMin[1], boxMax[2] - boxMin[2]),
    points,
    corners,
    facetOfSlot,
    grid: buildCellGrid(points, corners, boxMin, boxMax),
    tree: buildBoxTree(points, corners, largestCoordinate),
  };
}

/** Facet of the mesh that stands in a slot. */
export function facetOf(index: SurfaceIndex, slot: number): number {
  return index.facetOfSlot[slot]!;
}

/** The slots of the facets `from` to `to - 1`, in curve order. */
export function slotsOf(index: SurfaceIndex, from: number, to: number): Uint32Array {
  const slots = new Uint32Array(Math.max(0, to - from));
  let place = 0;
  for (let slot = 0; slot < index.facetCount; slot++) {
    const facet = index.facetOfSlot[slot]!;
    if (facet >= from && facet < to) slots[place++] = slot;
  }
  return slots;
}
