/** What the columns of the grid meet: the highest and the lowest place of the part over each, by z-buffer. */
import type { IndexedMesh } from '../mesh/types';

/** Columns of nodes, x running fastest. */
export interface ColumnGrid {
  readonly stepMm: number;
  readonly countX: number;
  readonly countY: number;
  readonly lowXMm: number;
  readonly lowYMm: number;
}

export interface ColumnHeights {
  /** -Infinity over columns that miss the part. */
  readonly topMm: Float64Array;
  /** Infinity over columns that miss the part. */
  readonly bottomMm: Float64Array;
}

/** @param mesh in the frame of the pattern, its facets wound either way */
export function columnHeights({ positions, facets }: IndexedMesh, columns: ColumnGrid): ColumnHeights {
  const { stepMm, countX, countY, lowXMm, lowYMm } = columns;
  const topMm = new Float64Array(countX * countY).fill(-Infinity);
  const bottomMm = new Float64Array(countX * countY).fill(Infinity);
  for (let at = 0; at < facets.length; at += 3) {
    const [a, b, c] = [3 * facets[at]!, 3 * facets[at + 1]!, 3 * facets[at + 2]!];
    const [ax, ay, az] = [
      (positions[a]! - lowXMm) / stepMm,
      (positions[a + 1]! - lowYMm) / stepMm,
      positions[a + 2]!,
    ];
    const [bx, by, bz] = [
      (positions[b]! - lowXMm) / stepMm,
      (positions[b + 1]! - lowYMm) / stepMm,
      positions[b + 2]!,
    ];
    const [cx, cy, cz] = [
      (positions[c]! - lowXMm) / stepMm,
      (positions[c + 1]! - lowYMm) / stepMm,
      positions[c + 2]!,
    ];
    const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
    if (area === 0) continue;
    const fromY = Math.ceil(Math.min(ay, by, cy));
    const toY = Math.floor(Math.max(ay, by, cy));
    const fromX = Math.ceil(Math.min(ax, bx, cx));
    const toX = Math.floor(Math.max(ax, bx, cx));
    for (let j = fromY; j <= toY; j++) {
      for (let i = fromX; i <= toX; i++) {
        const ofB = ((i - ax) * (cy - ay) - (cx - ax) * (j - ay)) / area;
        const ofC = ((bx - ax) * (j - ay) - (i - ax) * (by - ay)) / area;
        if (ofB < -1e-9 || ofC < -1e-9 || ofB + ofC > 1 + 1e-9) continue;
        const height = az + ofB * (bz - az) + ofC * (cz - az);
        const column = j * countX + i;
        if (height > topMm[column]!) topMm[column] = height;
        if (height < bottomMm[column]!) bottomMm[column] = height;
      }
    }
  }
  return { topMm, bottomMm };
}

/** Columns beside the part: those without it that hang together with the border of the grid; 1 marks them. */
export function columnsOutside({ countX, countY }: ColumnGrid, topMm: Float64Array): Uint8Array {
  const outside = new Uint8Array(countX * countY);
  const open: number[] = [0];
  outside[0] = 1;
  for (let column = open.pop(); column !== undefined; column = open.pop()) {
    const i = column % countX;
    for (const next of [
      i > 0 ? column - 1 : -1,
      i < countX - 1 ? column + 1 : -1,
      column - countX,
      column + countX,
    ]) {
      if (next < 0 || next >= outside.length || outside[next] === 1 || topMm[next]! > -Infinity) continue;
      outside[next] = 1;
      open.push(next);
    }
  }
  return outside;
}
