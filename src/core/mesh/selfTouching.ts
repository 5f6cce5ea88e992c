import { facetsCut } from './facetsCut';
import type { SurfaceIndex } from './surfaceIndex';
import { leafSlots } from './surfaceIndexTree';
import type { IndexedMesh } from './types';

/** Facets that come nearer than this share of the box diagonal touch; overlaps shallower than it don't count. */
const touchShare = 1e-7;

/**
 * Facets of the mesh that cut another facet, stand on its inside or overlap it in one plane without sharing a corner
 * with it (same place counts as same corner). Contact along edges only is not counted. Ascending facet numbers.
 * `index` must be built from `mesh`. Tolerance: 1e-7 box diagonals.
 */
export function findSelfTouching(index: SurfaceIndex, mesh: IndexedMesh): Uint32Array {
  const { boxes, links, nodeCount } = index.tree;
  const { points, corners, facetOfSlot } = index;
  const slotCount = mesh.facets.length / 3;
  const toleranceMm = touchShare * index.diagonalMm;
  const touches = new Uint8Array(slotCount);
  const leafFacets = Array.from({ length: leafSlots }, () => new Float64Array(9));
  const otherFacets = Array.from({ length: leafSlots }, () => new Float64Array(9));

  const fetch = (firstSlot: number, into: Float64Array[]): number => {
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

  for (let leaf = 0; leaf < nodeCount; leaf++) {
    const firstSlot = links[8 * leaf + 7]!;
    if (firstSlot < 0) continue;
    const count = fetch(firstSlot, leafFacets);
    const at = 8 * leaf;
    const minX = boxes[at]! - toleranceMm;
    const minY = boxes[at + 1]! - toleranceMm;
    const minZ = boxes[at + 2]! - toleranceMm;
    const maxX = boxes[at + 3]! + toleranceMm;
    const maxY = boxes[at + 4]! + toleranceMm;
    const maxZ = boxes[at + 5]! + toleranceMm;
    // Depth-first order is slot order: what stands before this leaf has been paired with it already.
    for (let node = leaf; node < nodeCount;) {
      const there = 8 * node;
      if (
        boxes[there]! > maxX ||
        boxes[there + 1]! > maxY ||
        boxes[there + 2]! > maxZ ||
        boxes[there + 3]! < minX ||
        boxes[there + 4]! < minY ||
        boxes[there + 5]! < minZ
      ) {
        node = links[there + 6]!;
        continue;
      }
      node++;
      const otherFirst = links[there + 7]!;
      if (otherFirst < 0) continue;
      const otherCount = fetch(otherFirst, otherFacets);
      for (let member = 0; member < count; member++) {
        for (let other = otherFirst === firstSlot ? member + 1 : 0; other < otherCount; other++) {
          const first = leafFacets[member]!;
          const second = otherFacets[other]!;
          if (boxesApart(first, second, toleranceMm) || shareCorner(first, second)) continue;
          if (!facetsCut(first, second, toleranceMm)) continue;
          touches[firstSlot + member] = 1;
          touches[otherFirst + other] = 1;
        }
      }
    }
  }
  const found: number[] = [];
  for (let slot = 0; slot < slotCount; slot++) {
    if (touches[slot] === 1) found.push(facetOfSlot === null ? slot : facetOfSlot[slot]!);
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
