/**
 * Holes in the show face: columns that lie deep under the level at which water would spill from them. Left open, the core face
 * would run down around each of them as a sleeve that nobody can lay up; so each is covered with a membrane, flush with the face
 * around it, and cut after the cure.
 */
import type { ColumnGrid } from './heights';

/** Shallower places are shapes of the face. */
const leastDepthMm = 3;

export interface Hole {
  readonly areaMm2: number;
  /** Down to what lies under it, or to the rim; mm. */
  readonly depthMm: number;
  /** Center of the opening, mm. */
  readonly centerMm: readonly [number, number, number];
  readonly plugged: boolean;
  /** The opening row by row: x and y of the first point and length, mm in the frame of the pattern. */
  readonly runsMm: readonly (readonly [x: number, y: number, lengthMm: number])[];
}

export interface CoveredHoles {
  readonly holes: readonly Hole[];
  /** The membranes as triangles, 9 numbers each. */
  readonly corners: Float64Array;
  /** 1 marks the columns that a membrane covers. */
  readonly covered: Uint8Array;
}

/**
 * @param keepOverMm holes of the area of a circle of a larger diameter stay open; null covers all
 * @param rimMm level of the rim: no hole is deeper
 */
export function coverHoles(
  columns: ColumnGrid,
  topMm: Float64Array,
  rimMm: number,
  keepOverMm: number | null,
): CoveredHoles {
  const { countX, stepMm, lowXMm, lowYMm } = columns;
  const floor = topMm.map((top) => Math.max(top, rimMm));
  const spill = spillLevels(columns, floor);
  const covered = new Uint8Array(floor.length);
  const heights = Float64Array.from(floor);
  const holes: Hole[] = [];
  const seen = new Uint8Array(floor.length);
  for (let start = 0; start < floor.length; start++) {
    if (seen[start] === 1 || spill[start]! - floor[start]! <= leastDepthMm) continue;
    const region = regionFrom(columns, start, seen, (one) => spill[one]! - floor[one]! > leastDepthMm);
    const areaMm2 = region.length * stepMm * stepMm;
    const plugged = keepOverMm === null || 2 * Math.sqrt(areaMm2 / Math.PI) <= keepOverMm;
    const deepest = region.reduce((most, one) => Math.max(most, spill[one]! - floor[one]!), 0);
    stretch(columns, region, heights, spill);
    let [x, y, z] = [0, 0, 0];
    for (const one of region) {
      x += (lowXMm + (one % countX) * stepMm) / region.length;
      y += (lowYMm + Math.floor(one / countX) * stepMm) / region.length;
      z += heights[one]! / region.length;
    }
    holes.push({
      areaMm2,
      depthMm: deepest,
      centerMm: [x, y, z],
      plugged,
      runsMm: runsOf(columns, region),
    });
    for (const one of region) {
      if (plugged) covered[one] = 1;
      else heights[one] = floor[one]!;
    }
  }
  return { holes, covered, corners: membrane(columns, covered, heights, topMm) };
}

/** Columns next to each other in a row, as one run each. */
function runsOf({ countX, stepMm, lowXMm, lowYMm }: ColumnGrid, region: readonly number[]): Hole['runsMm'] {
  const sorted = region.toSorted((a, b) => a - b);
  const runs: [number, number, number][] = [];
  for (const [at, column] of sorted.entries()) {
    const last = runs.at(-1);
    if (last !== undefined && sorted[at - 1] === column - 1 && column % countX > 0) last[2] += stepMm;
    else
      runs.push([lowXMm + (column % countX) * stepMm, lowYMm + Math.floor(column / countX) * stepMm, stepMm]);
  }
  return runs;
}

/**
 * Level that each column can be filled to before it spills over the edge of the grid: lowest columns first, each passes on the
 * higher of its own level and the one it was reached at (priority flood; Barnes, Lehman and Mulla 2014).
 */
function spillLevels({ countX, countY }: ColumnGrid, floor: Float64Array): Float64Array {
  const spill = new Float64Array(floor.length).fill(Infinity);
  const heap = new ColumnHeap(spill);
  const reach = (column: number, level: number): void => {
    if (spill[column] !== Infinity) return;
    spill[column] = Math.max(floor[column]!, level);
    heap.push(column);
  };
  for (let i = 0; i < countX; i++) {
    reach(i, -Infinity);
    reach((countY - 1) * countX + i, -Infinity);
  }
  for (let j = 0; j < countY; j++) {
    reach(j * countX, -Infinity);
    reach((j + 1) * countX - 1, -Infinity);
  }
  for (let column = heap.pop(); column >= 0; column = heap.pop()) {
    const i = column % countX;
    if (i > 0) reach(column - 1, spill[column]!);
    if (i < countX - 1) reach(column + 1, spill[column]!);
    if (column >= countX) reach(column - countX, spill[column]!);
    if (column + countX < floor.length) reach(column + countX, spill[column]!);
  }
  return spill;
}

/** Columns by level, lowest first. */
class ColumnHeap {
  private readonly columns: number[] = [];

  constructor(private readonly level: Float64Array) {}

  push(column: number): void {
    const { columns, level } = this;
    let at = columns.length;
    columns.push(column);
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (level[columns[above]!]! <= level[column]!) break;
      columns[at] = columns[above]!;
      at = above;
    }
    columns[at] = column;
  }

  /** -1 when none is left. */
  pop(): number {
    const { columns, level } = this;
    const lowest = columns[0] ?? -1;
    const last = columns.pop();
    if (last === undefined || columns.length === 0) return lowest;
    let at = 0;
    for (;;) {
      let below = 2 * at + 1;
      if (below >= columns.length) break;
      if (below + 1 < columns.length && level[columns[below + 1]!]! < level[columns[below]!]!) below++;
      if (level[columns[below]!]! >= level[last]!) break;
      columns[at] = columns[below]!;
      at = below;
    }
    columns[at] = last;
    return lowest;
  }
}

function regionFrom(
  { countX }: ColumnGrid,
  start: number,
  seen: Uint8Array,
  belongs: (column: number) => boolean,
): number[] {
  const region = [start];
  seen[start] = 1;
  for (let at = 0; at < region.length; at++) {
    const column = region[at]!;
    // The border of the grid is beside the part, so no region reaches it.
    for (const next of [column - 1, column + 1, column - countX, column + countX]) {
      if (seen[next] !== 0 || !belongs(next)) continue;
      seen[next] = 1;
      region.push(next);
    }
  }
  return region;
}

/** Rounds of relaxation: a sheet need not be true, only even and flush at its edge. Our own judgement. */
const rounds = 60;

/** A sheet stretched over the region from the heights around it: each height becomes the mean of its neighbors. */
function stretch(
  { countX }: ColumnGrid,
  region: readonly number[],
  heights: Float64Array,
  spill: Float64Array,
): void {
  for (const column of region) heights[column] = spill[column]!;
  for (let round = 0; round < rounds; round++) {
    for (const column of round % 2 === 0 ? region : region.toReversed()) {
      const mean =
        (heights[column - 1]! +
          heights[column + 1]! +
          heights[column - countX]! +
          heights[column + countX]!) /
        4;
      heights[column] = heights[column]! + 1.7 * (mean - heights[column]!);
    }
  }
}

function membrane(
  { countX, stepMm, lowXMm, lowYMm }: ColumnGrid,
  covered: Uint8Array,
  heights: Float64Array,
  topMm: Float64Array,
): Float64Array {
  const corners: number[] = [];
  const place = (column: number): [number, number, number] => [
    lowXMm + (column % countX) * stepMm,
    lowYMm + Math.floor(column / countX) * stepMm,
    heights[column]!,
  ];
  for (let column = 0; column + countX + 1 < covered.length; column++) {
    const square = [column, column + 1, column + countX + 1, column + countX];
    if (!square.some((one) => covered[one] === 1)) continue;
    if (square.some((one) => covered[one] === 0 && topMm[one] === -Infinity)) continue;
    const [a, b, c, d] = square.map(place);
    corners.push(...a!, ...b!, ...c!, ...a!, ...c!, ...d!);
  }
  return Float64Array.from(corners);
}
