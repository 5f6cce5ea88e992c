import { addFacetCells, type CellFrame } from './surfaceIndexCells';
import type { Vec3 } from './types';

/**
 * A uniform grid of cubic cells over the box of the surface; each cell lists the slots that pass through it. Most cells
 * are empty and cost one bit: a cell `c` = x + countX * (y + countY * z) is filled when bit `c & 31` of `filled[c >>> 5]`
 * is set, and its rank is `ranks[c >>> 5]` plus the count of set bits below it in that word.
 */
export interface CellGrid extends CellFrame {
  readonly filled: Uint32Array;
  /** Filled cells before each word of `filled`. */
  readonly ranks: Uint32Array;
  /** Slots of the filled cell of rank r are `slots[starts[r]]` up to `slots[starts[r + 1] - 1]`. */
  readonly starts: Uint32Array;
  readonly slots: Uint32Array;
}

/** Edge of a cell in mean facet sizes (square root of the mean area); measured best on even meshes. */
const cellPerFacetSize = 0.75;
/** Bounds that keep memory and building time modest on uneven or sparse meshes. */
const mostCellsPerFacet = 64;
const mostEntriesPerFacet = 10;

/** Number of set bits of a 32-bit word. */
export function bitCount(word: number): number {
  let count = word - ((word >>> 1) & 0x55555555);
  count = (count & 0x33333333) + ((count >>> 2) & 0x33333333);
  return Math.imul((count + (count >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

function meanFacetSize(points: Float64Array, corners: Uint32Array): number {
  let doubleArea = 0;
  for (let at = 0; at < corners.length; at += 3) {
    const a = 3 * corners[at]!;
    const b = 3 * corners[at + 1]!;
    const c = 3 * corners[at + 2]!;
    const ux = points[b]! - points[a]!;
    const uy = points[b + 1]! - points[a + 1]!;
    const uz = points[b + 2]! - points[a + 2]!;
    const vx = points[c]! - points[a]!;
    const vy = points[c + 1]! - points[a + 1]!;
    const vz = points[c + 2]! - points[a + 2]!;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    doubleArea += Math.sqrt(nx * nx + ny * ny + nz * nz);
  }
  return Math.sqrt((1.5 * doubleArea) / Math.max(1, corners.length));
}

function frameFor(cellMm: number, boxMin: Vec3, boxMax: Vec3): CellFrame {
  const count = (axis: 0 | 1 | 2) => Math.floor((boxMax[axis] - boxMin[axis]) / cellMm) + 1;
  return { countX: count(0), countY: count(1), countZ: count(2), cellMm, originMm: boxMin };
}

/** The cell of every entry in slot order, and how many entries each slot has; null when there would be too many. */
function listEntries(
  points: Float64Array,
  corners: Uint32Array,
  frame: CellFrame,
  mostEntries: number,
): { cells: Uint32Array; ends: Uint32Array } | null {
  const slotCount = corners.length / 3;
  const ends = new Uint32Array(slotCount);
  let cells = new Uint32Array(4 * slotCount + 1024);
  let count = 0;
  for (let slot = 0; slot < slotCount; slot++) {
    for (;;) {
      const next = addFacetCells(points, corners, slot, frame, cells, count);
      if (next >= 0) {
        count = next;
        break;
      }
      if (cells.length >= mostEntries) return null;
      const grown = new Uint32Array(Math.min(mostEntries, cells.length * 2));
      grown.set(cells);
      cells = grown;
    }
    ends[slot] = count;
  }
  return { cells: cells.subarray(0, count), ends };
}

function fileEntries(frame: CellFrame, cells: Uint32Array, ends: Uint32Array): CellGrid {
  const cellCount = frame.countX * frame.countY * frame.countZ;
  const filled = new Uint32Array(Math.ceil(cellCount / 32));
  for (let entry = 0; entry < cells.length; entry++) {
    const cell = cells[entry]!;
    filled[cell >>> 5]! |= 1 << (cell & 31);
  }
  const ranks = new Uint32Array(filled.length);
  let filledCount = 0;
  for (let word = 0; word < filled.length; word++) {
    ranks[word] = filledCount;
    filledCount += bitCount(filled[word]!);
  }
  const starts = new Uint32Array(filledCount + 1);
  for (let entry = 0; entry < cells.length; entry++) {
    const cell = cells[entry]!;
    const word = cell >>> 5;
    const rank = ranks[word]! + bitCount(filled[word]! & ((1 << (cell & 31)) - 1));
    cells[entry] = rank; // from here on the list speaks of ranks
    starts[rank]!++;
  }
  for (let rank = 0, total = 0; rank <= filledCount; rank++) {
    total += starts[rank]!;
    starts[rank] = total;
  }
  const slots = new Uint32Array(cells.length);
  for (let slot = ends.length - 1, entry = cells.length - 1; slot >= 0; slot--) {
    const first = slot === 0 ? 0 : ends[slot - 1]!;
    for (; entry >= first; entry--) slots[--starts[cells[entry]!]!] = slot;
  }
  return { ...frame, filled, ranks, starts, slots };
}

/** Builds the grid, with larger cells when the mesh is so sparse or uneven that small ones would cost too much. */
export function buildCellGrid(
  points: Float64Array,
  corners: Uint32Array,
  boxMin: Vec3,
  boxMax: Vec3,
): CellGrid {
  const slotCount = corners.length / 3;
  const mostCells = Math.max(4096, mostCellsPerFacet * slotCount);
  const mostEntries = Math.max(4096, mostEntriesPerFacet * slotCount);
  const widest = Math.max(boxMax[0] - boxMin[0], boxMax[1] - boxMin[1], boxMax[2] - boxMin[2]) || 1;
  let cellMm = Math.max(cellPerFacetSize * meanFacetSize(points, corners), widest / 4096);
  for (;;) {
    const frame = frameFor(cellMm, boxMin, boxMax);
    const cellCount = frame.countX * frame.countY * frame.countZ;
    if (cellCount > mostCells) {
      cellMm *= Math.max(1.02, Math.cbrt(cellCount / mostCells));
      continue;
    }
    const entries = listEntries(points, corners, frame, mostEntries);
    if (entries !== null) return fileEntries(frame, entries.cells, entries.ends);
    cellMm *= 1.2;
  }
}
