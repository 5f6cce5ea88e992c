/** Where a point of the surface lies in the net. */
import { cellAt, type CellNodes, type Net } from './net';
import { placeInCell } from './outline';

export interface NetPlace {
  /** Net coordinates, mm. */
  readonly xMm: number;
  readonly yMm: number;
  readonly cell: CellNodes;
}

/** @returns null where no cell of the net lies there */
export function locate(net: Net, points: Float64Array, at: number): NetPlace | null {
  let found: NetPlace | null = null;
  const tried = new Set<number>();
  net.someNear(points, at, (near) => {
    for (const back of [0, 1, 2, 3]) {
      const corner = net.at(net.i[near]! - (back & 1), net.j[near]! - (back >> 1));
      if (corner < 0 || tried.has(corner)) continue;
      tried.add(corner);
      const cell = cellAt(net, corner);
      const place = cell === null ? null : placeInCell(net, cell, points, at);
      if (cell === null || place === null || offCell(net, cell, place, points, at) > 0.5 * net.stepMm)
        continue;
      found = {
        xMm: (net.i[corner]! + place[0]) * net.stepMm,
        yMm: (net.j[corner]! + place[1]) * net.stepMm,
        cell,
      };
      return true;
    }
    return false;
  });
  return found;
}

/** How far a point is off the cell at shares u and v of it. */
function offCell(
  { pointMm }: Net,
  [a, b, c, d]: CellNodes,
  [u, v]: readonly [number, number],
  points: Float64Array,
  at: number,
): number {
  let square = 0;
  for (let k = 0; k < 3; k++) {
    const on =
      (1 - u) * (1 - v) * pointMm[3 * a + k]! +
      u * (1 - v) * pointMm[3 * b + k]! +
      u * v * pointMm[3 * c + k]! +
      (1 - u) * v * pointMm[3 * d + k]!;
    square += (points[at + k]! - on) ** 2;
  }
  return Math.sqrt(square);
}
