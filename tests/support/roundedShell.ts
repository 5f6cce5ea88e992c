import type { IndexedMesh, Vec3 } from '../../src/core/mesh/types';

/** Outside of the shell, mm, and the radius of its edges. */
const outside: Vec3 = [100, 60, 25];
const edgeRadiusMm = 5;
export const roundedShellWallMm = 2;

/**
 * A closed hollow box of enclosure size with rounded edges and an even wall of `roundedShellWallMm`, both skins of
 * close to even facets: about `targetTriangles` in all.
 */
export function roundedShell(targetTriangles: number): IndexedMesh {
  const [x, y, z] = outside;
  // Both skins together, each square of side `stepMm` two facets.
  const stepMm = Math.sqrt((8 * (x * y + y * z + z * x)) / targetTriangles);
  const positions: number[] = [];
  const facets: number[] = [];
  addSkin(positions, facets, 0, stepMm);
  addSkin(positions, facets, roundedShellWallMm, stepMm);
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}

/** One skin of the shell, set in by `insetMm`; the inset one faces inward. */
function addSkin(positions: number[], facets: number[], insetMm: number, stepMm: number): void {
  const half = outside.map((side) => side / 2 - insetMm);
  const radiusMm = edgeRadiusMm - insetMm;
  const counts = half.map((value) => Math.max(2, Math.round((2 * value) / stepMm)));
  const known = new Map<number, number>();
  const vertexAt = (place: readonly number[]): number => {
    const key = (place[0]! * 4096 + place[1]!) * 4096 + place[2]!;
    const old = known.get(key);
    if (old !== undefined) return old;
    const point = place.map((count, axis) => half[axis]! * ((2 * count) / counts[axis]! - 1));
    const core = point.map((value, axis) => {
      const most = half[axis]! - radiusMm;
      return Math.max(-most, Math.min(most, value));
    });
    const away = point.map((value, axis) => value - core[axis]!);
    const length = Math.hypot(...away);
    positions.push(...core.map((value, axis) => value + (away[axis]! * radiusMm) / length));
    known.set(key, positions.length / 3 - 1);
    return positions.length / 3 - 1;
  };
  for (let axis = 0; axis < 3; axis++) {
    const [u, v] = [(axis + 1) % 3, (axis + 2) % 3] as const;
    for (const side of [0, 1]) {
      const corner = (alongU: number, alongV: number) => {
        const place = [0, 0, 0];
        place[axis] = side * counts[axis]!;
        place[u] = alongU;
        place[v] = alongV;
        return vertexAt(place);
      };
      const facesOut = (side === 1) === (insetMm === 0);
      const put = (a: number, b: number, c: number) => facets.push(a, ...(facesOut ? [b, c] : [c, b]));
      for (let i = 0; i < counts[u]!; i++) {
        for (let j = 0; j < counts[v]!; j++) {
          put(corner(i, j), corner(i + 1, j), corner(i + 1, j + 1));
          put(corner(i, j), corner(i + 1, j + 1), corner(i, j + 1));
        }
      }
    }
  }
}
