import type { IndexedMesh } from '../../mesh/types';
import type { ColumnGrid } from './columnGrid';
import type { PartingHeights } from './partingHeights';

/**
 * Everything above the parting as one closed solid, up to `ceilingMm`. The sheet is a right-triangulated irregular
 * network over the grid (Evans, Kirkpatrick & Townsend, Algorithmica 30 (2001) 264-286): triangles are halved where
 * one of their columns would leave its room, and together with them whatever would tear open.
 * @param grid its side is a power of two plus one
 */
export function solidAboveParting(grid: ColumnGrid, parting: PartingHeights, ceilingMm: number): IndexedMesh {
  const { side, x0Mm, y0Mm, pitchMm } = grid;
  const { heightMm } = parting;
  const halved = markHalved(side, parting);
  const vertexOf = new Int32Array(side * side).fill(-1);
  const positions: number[] = [];
  const facets: number[] = [];
  const vertex = (i: number, j: number): number => {
    const column = j * side + i;
    if (vertexOf[column]! < 0) {
      vertexOf[column] = positions.length / 3;
      positions.push(x0Mm + i * pitchMm, y0Mm + j * pitchMm, heightMm[column]!);
    }
    return vertexOf[column]!;
  };
  const lay = (ai: number, aj: number, bi: number, bj: number, ci: number, cj: number): void => {
    const mi = (ai + bi) / 2;
    const mj = (aj + bj) / 2;
    if (Math.abs(ai - ci) + Math.abs(aj - cj) > 1 && halved[mj * side + mi] === 1) {
      lay(ci, cj, ai, aj, mi, mj);
      lay(bi, bj, ci, cj, mi, mj);
    } else {
      // Clockwise from above: the sheet is the underside of the solid, seen from below.
      facets.push(vertex(ai, aj), vertex(bi, bj), vertex(ci, cj));
    }
  };
  const end = side - 1;
  lay(0, 0, end, end, end, 0);
  lay(end, end, 0, 0, 0, end);

  // Border of the sheet, counter-clockwise seen from above, then walls and a lid over it.
  const border: number[] = [];
  for (let i = 0; i < end; i++) if (vertexOf[i]! >= 0) border.push(vertexOf[i]!);
  for (let j = 0; j < end; j++) if (vertexOf[j * side + end]! >= 0) border.push(vertexOf[j * side + end]!);
  for (let i = end; i > 0; i--) if (vertexOf[end * side + i]! >= 0) border.push(vertexOf[end * side + i]!);
  for (let j = end; j > 0; j--) if (vertexOf[j * side]! >= 0) border.push(vertexOf[j * side]!);
  const lid = positions.length / 3;
  for (const low of border) positions.push(positions[3 * low]!, positions[3 * low + 1]!, ceilingMm);
  const middle = positions.length / 3;
  positions.push(x0Mm + (end / 2) * pitchMm, y0Mm + (end / 2) * pitchMm, ceilingMm);
  border.forEach((low, k) => {
    const next = (k + 1) % border.length;
    facets.push(low, border[next]!, lid + next, low, lid + next, lid + k, middle, lid + k, lid + next);
  });
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}

/** 1 at the middle of each long side that has to be halved. */
function markHalved(side: number, { heightMm, lowMm, highMm }: PartingHeights): Uint8Array {
  const end = side - 1;
  const halved = new Uint8Array(side * side);
  const triangleCount = 2 * end * end - 2;
  const parentCount = triangleCount - end * end;
  // Triangles are numbered like a binary heap, the smallest last; going backward, halves come before their wholes.
  for (let number = triangleCount - 1; number >= 0; number--) {
    let id = number + 2;
    const first = (id & 1) === 1;
    let ax = first ? 0 : end;
    let ay = ax;
    let bx = first ? end : 0;
    let by = bx;
    let cx = first ? end : 0;
    let cy = first ? 0 : end;
    while ((id >>= 1) > 1) {
      const mx = (ax + bx) >> 1;
      const my = (ay + by) >> 1;
      if ((id & 1) === 1) {
        bx = ax;
        by = ay;
        ax = cx;
        ay = cy;
      } else {
        ax = bx;
        ay = by;
        bx = cx;
        by = cy;
      }
      cx = mx;
      cy = my;
    }
    const middle = ((ay + by) >> 1) * side + ((ax + bx) >> 1);
    if (halved[middle] === 1) continue;
    if (number < parentCount) {
      const left = ((ay + cy) >> 1) * side + ((ax + cx) >> 1);
      const right = ((by + cy) >> 1) * side + ((bx + cx) >> 1);
      if (halved[left] === 1 || halved[right] === 1) {
        halved[middle] = 1;
        continue;
      }
    }
    if (leavesRoom(ax, ay, bx, by, cx, cy)) halved[middle] = 1;
  }
  return halved;

  /** Whether a column under the triangle lies off its room when the triangle is laid flat over its corners. */
  function leavesRoom(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): boolean {
    const a = heightMm[ay * side + ax]!;
    const b = heightMm[by * side + bx]!;
    const c = heightMm[cy * side + cx]!;
    const twice = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
    const slopeX = ((b - a) * (cy - ay) - (c - a) * (by - ay)) / twice;
    const slopeY = ((bx - ax) * (c - a) - (cx - ax) * (b - a)) / twice;
    const fromY = Math.min(ay, by, cy);
    const toY = Math.max(ay, by, cy);
    const fromX = Math.min(ax, bx, cx);
    const toX = Math.max(ax, bx, cx);
    const sign = twice > 0 ? 1 : -1;
    for (let y = fromY; y <= toY; y++) {
      for (let x = fromX; x <= toX; x++) {
        if (
          sign * ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) < 0 ||
          sign * ((cx - bx) * (y - by) - (cy - by) * (x - bx)) < 0 ||
          sign * ((ax - cx) * (y - cy) - (ay - cy) * (x - cx)) < 0
        )
          continue;
        const column = y * side + x;
        const laid = a + slopeX * (x - ax) + slopeY * (y - ay);
        if (laid < lowMm[column]! - 1e-6 || laid > highMm[column]! + 1e-6) return true;
      }
    }
    return false;
  }
}
