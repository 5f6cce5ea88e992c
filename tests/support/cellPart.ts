/** Parts put together from box cells: small shells with bosses, ribs, windows and undercuts, upright to the axes. */
import { facetGeometry } from '../../src/core/mesh/facetGeometry';
import type { IndexedMesh, Vec3 } from '../../src/core/mesh/types';

type Range = readonly [from: number, to: number];
export type CellBox = readonly [x: Range, y: Range, z: Range];

/** A box of material or of air, in mm. */
export interface CellPiece {
  readonly is: 'solid' | 'air';
  readonly box: CellBox;
}

/**
 * The surface of what stays when the pieces are put down one after the other, on a grid of `cellMm` (per axis); closed as long
 * as cells don't touch along an edge only.
 */
export function cellPart(sizeMm: Vec3, cellMm: Vec3, pieces: readonly CellPiece[]): IndexedMesh {
  const counts = sizeMm.map((size, axis) => Math.round(size / cellMm[axis]!)) as [number, number, number];
  const [nx, ny, nz] = counts;
  const filled = new Uint8Array(nx * ny * nz);
  const cellAt = (x: number, y: number, z: number) => x + nx * (y + ny * z);
  for (const { is, box } of pieces) {
    const [xs, ys, zs] = box.map((range, axis) => range.map((edge) => Math.round(edge / cellMm[axis]!))) as [
      [number, number],
      [number, number],
      [number, number],
    ];
    for (let z = zs[0]; z < zs[1]; z++) {
      for (let y = ys[0]; y < ys[1]; y++) {
        for (let x = xs[0]; x < xs[1]; x++) filled[cellAt(x, y, z)] = is === 'solid' ? 1 : 0;
      }
    }
  }
  const isFilled = (cell: readonly number[]) =>
    cell.every((index, axis) => index >= 0 && index < counts[axis]!) &&
    filled[cellAt(cell[0]!, cell[1]!, cell[2]!)] === 1;

  const vertexNumbers = new Map<number, number>();
  const positions: number[] = [];
  const facets: number[] = [];
  const vertex = (corner: readonly number[]): number => {
    const key = corner[0]! + (nx + 1) * (corner[1]! + (ny + 1) * corner[2]!);
    const known = vertexNumbers.get(key);
    if (known !== undefined) return known;
    vertexNumbers.set(key, positions.length / 3);
    positions.push(corner[0]! * cellMm[0], corner[1]! * cellMm[1], corner[2]! * cellMm[2]);
    return positions.length / 3 - 1;
  };
  for (let z = 0; z < nz; z++) {
    for (let y = 0; y < ny; y++) {
      for (let x = 0; x < nx; x++) {
        const cell = [x, y, z];
        if (!isFilled(cell)) continue;
        for (let axis = 0; axis < 3; axis++) {
          for (const direction of [1, -1]) {
            if (isFilled(cell.map((index, at) => (at === axis ? index + direction : index)))) continue;
            const [u, v] =
              direction === 1 ? [(axis + 1) % 3, (axis + 2) % 3] : [(axis + 2) % 3, (axis + 1) % 3];
            const corners = [
              [0, 0],
              [1, 0],
              [1, 1],
              [0, 1],
            ].map(([du, dv]) => {
              const corner = [...cell];
              if (direction === 1) corner[axis]! += 1;
              corner[u]! += du!;
              corner[v]! += dv!;
              return vertex(corner);
            });
            facets.push(corners[0]!, corners[1]!, corners[2]!, corners[0]!, corners[2]!, corners[3]!);
          }
        }
      }
    }
  }
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}

export const solid = (x: Range, y: Range, z: Range): CellPiece => ({ is: 'solid', box: [x, y, z] });
export const air = (x: Range, y: Range, z: Range): CellPiece => ({ is: 'air', box: [x, y, z] });

/** The facet that looks along `normal` and whose center is nearest to a point. */
export function facetNear(mesh: IndexedMesh, pointMm: Vec3, normal: Vec3): number {
  const geometry = facetGeometry(mesh);
  let nearest = -1;
  let best = Infinity;
  for (let facet = 0; facet < geometry.areaMm2.length; facet++) {
    let cosine = 0;
    let square = 0;
    for (let axis = 0; axis < 3; axis++) {
      cosine += geometry.normal[3 * facet + axis]! * normal[axis]!;
      square += (geometry.centerMm[3 * facet + axis]! - pointMm[axis]!) ** 2;
    }
    if (cosine > 0.9 && square < best) {
      best = square;
      nearest = facet;
    }
  }
  return nearest;
}

/**
 * Case half of 60 x 40 x 12 mm, wall 1 mm, open below, pulled along +z, with one of everything: a boss and a rib inside, a
 * window, a mark raised by 0.5 mm, a region of 2 mm wall and a lip inside the rim that traps the wall above it.
 */
export function caseHalf(): IndexedMesh {
  return cellPart(
    [60, 40, 12.5],
    [1, 1, 0.5],
    [
      solid([0, 60], [0, 40], [0, 12]),
      air([1, 59], [1, 39], [0, 11]),
      solid([20, 24], [20, 24], [3, 11]),
      solid([38, 39], [1, 39], [5, 11]),
      air([8, 14], [8, 14], [11, 12]),
      solid([28, 34], [28, 34], [12, 12.5]),
      solid([46, 57], [8, 20], [10, 11]),
      solid([1, 2], [10, 30], [0, 1]),
    ],
  );
}
