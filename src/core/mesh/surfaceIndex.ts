import {
  createEmptyWallKernel,
  createWallKernel,
  type KernelSize,
  type KernelSurface,
  type WallKernel,
} from './kernel/wallKernel';
import { facetBox } from './integrals';
import { buildCellGrid, type CellGrid } from './surfaceIndexGrid';
import { orderAlongCurve } from './surfaceIndexOrder';
import { buildBoxTree, type BoxTree } from './surfaceIndexTree';
import type { IndexedMesh, Vec3 } from './types';

/**
 * What makes rays and balls fast: the facets along a space-filling curve and, on large surfaces where the platform has
 * it, a kernel that searches them; else a uniform grid for rays and a box tree for balls, flat typed arrays built when first asked
 * for. A *slot* is a place in curve order; results always speak of facets of the mesh.
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
  /** Null where rays and balls go by grid and tree; the figures are the same. */
  readonly kernel: WallKernel | null;
  readonly grid: CellGrid;
  readonly tree: BoxTree;
}

/** Below this a kernel takes longer to set up than it saves. */
const facetsWorthKernel = 2000;

/**
 * Builds the index, on copies of the arrays in curve order.
 * @param kernelFromFacets least size of a surface that gets a kernel; Infinity for none
 */
export function buildSurfaceIndex(mesh: IndexedMesh, kernelFromFacets = facetsWorthKernel): SurfaceIndex {
  const { min: boxMin, max: boxMax } = facetBox(mesh);
  const ordered = orderAlongCurve(mesh, boxMin, boxMax);
  const facetCount = mesh.facets.length / 3;
  const place = {
    boxMinMm: boxMin,
    boxMaxMm: boxMax,
    diagonalMm: Math.hypot(boxMax[0] - boxMin[0], boxMax[1] - boxMin[1], boxMax[2] - boxMin[2]),
  };
  const kernel = facetCount < kernelFromFacets ? null : createWallKernel(place, ordered);
  return indexOf({ facetCount, ...place, facetOfSlot: ordered.facetOfSlot }, kernel ?? ordered, kernel);
}

/** An index for another thread, as plain data of its own: there nothing has to be ordered and built again. */
export interface SurfaceData {
  readonly place: Pick<SurfaceIndex, 'facetCount' | 'boxMinMm' | 'boxMaxMm' | 'diagonalMm' | 'facetOfSlot'>;
  /** Where the index has a kernel its size alone: what is in it follows in pieces. */
  readonly surface: KernelSurface | KernelSize;
}

export function surfaceData(index: SurfaceIndex): SurfaceData {
  const { facetCount, boxMinMm, boxMaxMm, diagonalMm, points, corners, kernel } = index;
  return {
    place: { facetCount, boxMinMm, boxMaxMm, diagonalMm, facetOfSlot: index.facetOfSlot.slice() },
    surface: kernel === null ? { points: points.slice(), corners: corners.slice() } : kernel.size,
  };
}

/** The index that `data` was taken from, once its kernel has taken all pieces of that one's; null without room for it. */
export function surfaceFromData({ place, surface }: SurfaceData): SurfaceIndex | null {
  if ('points' in surface) return indexOf(place, surface, null);
  const kernel = createEmptyWallKernel(place, surface);
  return kernel && indexOf(place, kernel, kernel);
}

function indexOf(
  place: SurfaceData['place'],
  { points, corners }: Pick<SurfaceIndex, 'points' | 'corners'>,
  kernel: WallKernel | null,
): SurfaceIndex {
  const { boxMinMm, boxMaxMm } = place;
  const largestCoordinate = Math.max(...boxMinMm.map(Math.abs), ...boxMaxMm.map(Math.abs));
  let grid: CellGrid | null = null;
  let tree: BoxTree | null = null;
  return {
    ...place,
    points,
    corners,
    kernel,
    get grid() {
      return (grid ??= buildCellGrid(points, corners, boxMinMm, boxMaxMm));
    },
    get tree() {
      return (tree ??= buildBoxTree(points, corners, largestCoordinate));
    },
  };
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
