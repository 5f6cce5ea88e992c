import { buildBoxTree, leafSlots } from './boxTree';
import { facetCutTest } from './facetsCut';
import type { SurfaceIndex } from './surfaceIndex';
import type { IndexedMesh } from './types';

/** Facets that come nearer than this share of the box diagonal touch; overlaps shallower than it don't count. */
const touchShare = 1e-7;

/**
 * Facets of the mesh that cut another facet, stand on its inside or overlap it in one plane without sharing a corner
 * with it (same place counts as same corner). Contact along edges only is not counted. Ascending facet numbers.
 * `index` must be built from `mesh`. Tolerance: 1e-7 box diagonals.
 */
export function findSelfTouching(index: SurfaceIndex, mesh: IndexedMesh): Uint32Array {
  const { points, corners, facetOfSlot } = index;
  const largestCoordinate = Math.max(...index.boxMinMm.map(Math.abs), ...index.boxMaxMm.map(Math.abs));
  const { root, boxes, children } = buildBoxTree(points, corners, largestCoordinate);
  const slotCount = mesh.facets.length / 3;
  const toleranceMm = touchShare * index.diagonalMm;
  const facetsCut = facetCutTest(toleranceMm);
  const touches = new Uint8Array(slotCount);
  const leafFacets = Array.from({ length: leafSlots }, () => new Float64Array(9));
  const otherFacets = Array.from({ length: leafSlots }, () => new Float64Array(9));

  const loadCorners = (firstSlot: number, into: Float64Array[]): number => {
    const count = Math.min(leafSlots, slotCount - firstSlot);
    for (let member = 0; member < count; member++) {
      const target = into[member]!;
      for (let corner = 0; corner < 3; corner++) {
        const point = 3 * corners[3 * (firstSlot + member) + corner]!;
        target[3 * corner] = points[point]!;
        target[3 * corner + 1] = points[point + 1]!;
        target[3 * corner + 2] = points[point + 2]!;
      }
    }
    return count;
  };

  const waiting = new Int32Array(64);
  for (let firstSlot = 0; firstSlot < slotCount; firstSlot += leafSlots) {
    const count = loadCorners(firstSlot, leafFacets);
    let minX = Infinity;
    let minY = Infinity;
    let minZ = Infinity;
    let maxX = -Infinity;
    let maxY = -Infinity;
    let maxZ = -Infinity;
    for (let member = 0; member < count; member++) {
      const facet = leafFacets[member]!;
      for (let at = 0; at < 9; at += 3) {
        minX = Math.min(minX, facet[at]!);
        minY = Math.min(minY, facet[at + 1]!);
        minZ = Math.min(minZ, facet[at + 2]!);
        maxX = Math.max(maxX, facet[at]!);
        maxY = Math.max(maxY, facet[at + 1]!);
        maxZ = Math.max(maxZ, facet[at + 2]!);
      }
    }
    const centerX = (minX + maxX) / 2;
    const centerY = (minY + maxY) / 2;
    const centerZ = (minZ + maxZ) / 2;
    const halfX = (maxX - minX) / 2 + toleranceMm;
    const halfY = (maxY - minY) / 2 + toleranceMm;
    const halfZ = (maxZ - minZ) / 2 + toleranceMm;
    let waitingCount = 1;
    waiting[0] = root;
    while (waitingCount > 0) {
      const node = waiting[--waitingCount]!;
      if (node >= 0) {
        for (let child = 4 * node, at = 24 * node; child < 4 * node + 4; child++, at++) {
          const apart =
            Math.abs(centerX - boxes[at]!) - boxes[at + 12]! > halfX ||
            Math.abs(centerY - boxes[at + 4]!) - boxes[at + 16]! > halfY ||
            Math.abs(centerZ - boxes[at + 8]!) - boxes[at + 20]! > halfZ;
          if (!apart) waiting[waitingCount++] = children[child]!;
        }
        continue;
      }
      const otherFirst = ~node;
      if (otherFirst < firstSlot) continue; // paired when that leaf had its turn
      const otherCount = loadCorners(otherFirst, otherFacets);
      for (let member = 0; member < count; member++) {
        for (let other = otherFirst === firstSlot ? member + 1 : 0; other < otherCount; other++) {
          const first = leafFacets[member]!;
          const second = otherFacets[other]!;
          if (boxesApart(first, second, toleranceMm) || shareCorner(first, second)) continue;
          if (!facetsCut(first, second)) continue;
          touches[firstSlot + member] = 1;
          touches[otherFirst + other] = 1;
        }
      }
    }
  }
  const found: number[] = [];
  for (let slot = 0; slot < slotCount; slot++) {
    if (touches[slot] === 1) found.push(facetOfSlot[slot]!);
  }
  return Uint32Array.from(found).sort();
}

function boxesApart(first: Float64Array, second: Float64Array, toleranceMm: number): boolean {
  for (let axis = 0; axis < 3; axis++) {
    const a = first[axis]!;
    const b = first[axis + 3]!;
    const c = first[axis + 6]!;
    const p = second[axis]!;
    const q = second[axis + 3]!;
    const r = second[axis + 6]!;
    if (Math.min(a, b, c) > Math.max(p, q, r) + toleranceMm) return true;
    if (Math.max(a, b, c) < Math.min(p, q, r) - toleranceMm) return true;
  }
  return false;
}

function shareCorner(first: Float64Array, second: Float64Array): boolean {
  for (let a = 0; a < 9; a += 3) {
    for (let b = 0; b < 9; b += 3) {
      if (first[a] === second[b] && first[a + 1] === second[b + 1] && first[a + 2] === second[b + 2])
        return true;
    }
  }
  return false;
}
