/** Where the rim of a part lies: the plane that the two halves of an enclosure meet in. */
import { columnsOutside, type ColumnGrid, type ColumnHeights } from './heights';

/** Heights this close count as one level. */
const levelMm = 0.1;
/** A level that so much of the outline ends on is the rim. Our own judgement. */
const leastShare = 0.25;

export interface RimPlane {
  readonly heightMm: number;
  /** Share of the outline that ends there, 0 to 1. */
  readonly share: number;
}

/**
 * The lowest level that a good part of the outer outline ends on: a tongue or a lip that stands inside of the outline does not
 * move it, nor does a notch. Without such a level, the lowest place of the outline.
 */
export function findRimPlane(columns: ColumnGrid, heights: ColumnHeights): RimPlane {
  const { countX } = columns;
  const outside = columnsOutside(columns, heights.topMm);
  const ends: number[] = [];
  for (let column = countX + 1; column < outside.length - countX - 1; column++) {
    if (heights.topMm[column] === -Infinity) continue;
    const isBorder =
      outside[column - 1] === 1 ||
      outside[column + 1] === 1 ||
      outside[column - countX] === 1 ||
      outside[column + countX] === 1;
    if (isBorder) ends.push(heights.bottomMm[column]!);
  }
  ends.sort((a, b) => a - b);
  for (let from = 0, to = 0; from < ends.length; from++) {
    while (to < ends.length && ends[to]! <= ends[from]! + levelMm) to++;
    const share = (to - from) / ends.length;
    if (share >= leastShare) return { heightMm: ends[from]!, share };
  }
  return { heightMm: ends[0] ?? 0, share: 0 };
}
