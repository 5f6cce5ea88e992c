import { createWallKernel, type WallKernel } from './kernel/wallKernel';
import { facetBox } from './integrals';
import { orderAlongCurve } from './surfaceIndexOrder';
import type { IndexedMesh, Vec3 } from './types';

/**
 * What makes rays and balls fast: the facets along a space-filling curve, and a kernel that searches them. A *slot* is a
 * place in curve order; results always speak of facets of the mesh.
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
  readonly kernel: WallKernel;
}

/**
 * Builds the index, on copies of the arrays in curve order.
 * @throws Problem `platform.vectors`; RangeError where there is no memory for it
 */
export function buildSurfaceIndex(mesh: IndexedMesh): SurfaceIndex {
  const { min: boxMinMm, max: boxMaxMm } = facetBox(mesh);
  const ordered = orderAlongCurve(mesh, boxMinMm, boxMaxMm);
  const place = {
    facetCount: mesh.facets.length / 3,
    boxMinMm,
    boxMaxMm,
    diagonalMm: Math.hypot(boxMaxMm[0] - boxMinMm[0], boxMaxMm[1] - boxMinMm[1], boxMaxMm[2] - boxMinMm[2]),
    facetOfSlot: ordered.facetOfSlot,
  };
  const kernel = createWallKernel(place, ordered);
  return { ...place, points: kernel.points, corners: kernel.corners, kernel };
}

/** Facet of the mesh that stands in a slot. */
export function facetOf(index: SurfaceIndex, slot: number): number {
  return index.facetOfSlot[slot]!;
}

/** The slots `from` to `to - 1`: neighbors in space. */
export function slotsFrom(from: number, to: number): Uint32Array {
  const slots = new Uint32Array(Math.max(0, to - from));
  for (let at = 0; at < slots.length; at++) slots[at] = from + at;
  return slots;
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

/** The slot of each facet of the mesh. */
export function slotOfFacet(index: SurfaceIndex): Uint32Array {
  const slots = new Uint32Array(index.facetCount);
  for (let slot = 0; slot < slots.length; slot++) slots[facetOf(index, slot)] = slot;
  return slots;
}

/** Runs a kernel's work over a list of slots, as many at a time as it takes. */
export function inBatches(kernel: WallKernel, slots: Uint32Array, work: (batch: Uint32Array) => void): void {
  for (let from = 0; from < slots.length; from += kernel.mostSlots) {
    work(slots.subarray(from, from + kernel.mostSlots));
  }
}
