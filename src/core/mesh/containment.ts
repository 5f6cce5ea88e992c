import type { IndexedMesh, Vec3 } from './types';

/**
 * A point on a facet that lies on no line of symmetry, so that a ray from it does not run along an edge of a
 * neatly drawn part.
 */
export function unevenPointOn(mesh: IndexedMesh, facet: number): Vec3 {
  const { positions, facets } = mesh;
  const [weightA, weightB, weightC] = [0.4142135624, 0.3178372452, 0.2679491924];
  const a = 3 * facets[3 * facet]!;
  const b = 3 * facets[3 * facet + 1]!;
  const c = 3 * facets[3 * facet + 2]!;
  const mix = (axis: number) =>
    weightA * positions[a + axis]! + weightB * positions[b + axis]! + weightC * positions[c + axis]!;
  return [mix(0), mix(1), mix(2)];
}

/**
 * Which of the points lie inside the closed surface made of `surfaceFacets`: a ray along +z crosses it an odd number
 * of times. All points are tested in one pass over the facets; winding does not matter.
 */
export function pointsInside(
  mesh: IndexedMesh,
  surfaceFacets: Uint32Array,
  points: readonly Vec3[],
): boolean[] {
  const { positions, facets } = mesh;
  const byX = points.map((_, i) => i).sort((i, j) => points[i]![0] - points[j]![0]);
  const sortedX = Float64Array.from(byX, (i) => points[i]![0]);
  const inside = points.map(() => false);
  for (const facet of surfaceFacets) {
    const a = 3 * facets[3 * facet]!;
    const b = 3 * facets[3 * facet + 1]!;
    const c = 3 * facets[3 * facet + 2]!;
    const ax = positions[a]!;
    const bx = positions[b]!;
    const cx = positions[c]!;
    const lowX = Math.min(ax, bx, cx);
    const highX = Math.max(ax, bx, cx);
    for (let at = firstAtLeast(sortedX, lowX); at < sortedX.length && sortedX[at]! <= highX; at++) {
      const index = byX[at]!;
      const [x, y, z] = points[index]!;
      const sideA = (bx - x) * (positions[c + 1]! - y) - (cx - x) * (positions[b + 1]! - y);
      const sideB = (cx - x) * (positions[a + 1]! - y) - (ax - x) * (positions[c + 1]! - y);
      const sideC = (ax - x) * (positions[b + 1]! - y) - (bx - x) * (positions[a + 1]! - y);
      const sameSide = (sideA > 0 && sideB > 0 && sideC > 0) || (sideA < 0 && sideB < 0 && sideC < 0);
      if (!sameSide) continue;
      const hitZ =
        (sideA * positions[a + 2]! + sideB * positions[b + 2]! + sideC * positions[c + 2]!) /
        (sideA + sideB + sideC);
      if (hitZ > z) inside[index] = !inside[index];
    }
  }
  return inside;
}

function firstAtLeast(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
