import type { IndexedMesh } from '../../src/core/mesh/types';

/** Every facet in four, corners kept. */
export function quartered({ positions, facets }: IndexedMesh): IndexedMesh {
  const points = [...positions];
  const middles = new Map<string, number>();
  const middle = (a: number, b: number) => {
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    const known = middles.get(key);
    if (known !== undefined) return known;
    const index = points.length / 3;
    for (let axis = 0; axis < 3; axis++) points.push((points[3 * a + axis]! + points[3 * b + axis]!) / 2);
    middles.set(key, index);
    return index;
  };
  const split: number[] = [];
  for (let at = 0; at < facets.length; at += 3) {
    const [a, b, c] = [facets[at]!, facets[at + 1]!, facets[at + 2]!];
    const [ab, bc, ca] = [middle(a, b), middle(b, c), middle(c, a)];
    split.push(a, ab, ca, ab, b, bc, ca, bc, c, ab, bc, ca);
  }
  return { positions: Float64Array.from(points), facets: Uint32Array.from(split) };
}
