/**
 * The closed mold around a real part, as columns along the pull: the pattern's own material is where the laminate lies,
 * over it stands the negative's stone, under it the positive's. Keys, pry slots and the draft of the box walls are left out.
 */
import type { IndexedMesh, Vec3 } from '../mesh/types';
import { forEachCrossing, type ColumnGrid } from '../stone/pours/columnGrid';
import { partPattern, type Parted } from '../stone/pours/parting';
import { checkPourChoices, type PourChoices } from '../stone/pours/pourChoices';
import { intoFrame, pullFrame } from '../stone/pours/pullFrame';
import { wallRoom } from '../stone/pours/registration';
import type { MoldVoxels } from './moldVoxels';
import { columnFill, voxelsFromColumns, type MoldColumns } from './voxelsFromColumns';

/** 257 columns along the longer side: a mold of 150 mm is read every 0.6 mm. */
const levels = 8;
/** Voxels under this edge need columns twice as close, mm. */
const fineVoxelMm = 1.5;

/**
 * @param mesh the part in mm
 * @throws Problem `pull.zero`, `pours.*` for choices that make no box, and `cure.voxels`
 */
export function closedMoldVoxels(mesh: IndexedMesh, choices: PourChoices, voxelMm: number): MoldVoxels {
  checkPourChoices(choices);
  const frame = pullFrame(mesh, choices.pull);
  const pattern: IndexedMesh = { positions: intoFrame(frame, mesh.positions), facets: mesh.facets };
  const parted = partPattern(pattern, choices, voxelMm < fineVoxelMm ? levels + 1 : levels);
  return voxelsFromColumns(columnsOf(parted), voxelMm);
}

/** Columns of the grid that stand in the box along one axis, first and count. */
function inBox(grid: ColumnGrid, lowMm: number, middleMm: number, halfMm: number): [number, number] {
  const first = Math.ceil((middleMm - halfMm - lowMm) / grid.pitchMm);
  const last = Math.floor((middleMm + halfMm - lowMm) / grid.pitchMm);
  return [first, last - first + 1];
}

function columnsOf({ pattern, box, grid, columns: heights, heights: parting }: Parted): MoldColumns {
  const { innerMm, cornerRadiusMm } = box.box;
  const [halfX, halfY] = [innerMm[0] / 2, innerMm[1] / 2];
  const [firstX, countX] = inBox(grid, grid.x0Mm, box.centerMm[0], halfX);
  const [firstY, countY] = inBox(grid, grid.y0Mm, box.centerMm[1], halfY);
  const walls = wallsOf(pattern, grid);
  const start = new Uint32Array(countX * countY + 1);
  const from: number[] = [];
  const until: number[] = [];
  const fill: number[] = [];
  const put = (low: number, high: number, what: number) => {
    if (high <= low) return;
    from.push(low);
    until.push(high);
    fill.push(what);
  };
  for (let j = 0; j < countY; j++)
    for (let i = 0; i < countX; i++) {
      const at = firstX + i + grid.side * (firstY + j);
      const x = grid.x0Mm + (firstX + i) * grid.pitchMm - box.centerMm[0];
      const y = grid.y0Mm + (firstY + j) * grid.pitchMm - box.centerMm[1];
      if (wallRoom(x, y, halfX, halfY, cornerRadiusMm) >= 0) {
        const top = heights.topMm[at]!;
        const parted = Math.min(
          Math.max(top > -Infinity ? top : parting.heightMm[at]!, box.floorMm),
          box.ceilingMm,
        );
        put(parted, box.ceilingMm, columnFill.negativeStone);
        let stoneUntil = parted;
        for (const [high, low] of walls[at] ?? []) {
          put(high, stoneUntil, columnFill.positiveStone);
          put(Math.max(low, box.floorMm), Math.min(high, stoneUntil), columnFill.laminate);
          stoneUntil = Math.min(stoneUntil, low);
        }
        put(box.floorMm, stoneUntil, columnFill.positiveStone);
      }
      start[i + countX * j + 1] = from.length;
    }
  return {
    columns: [countX, countY],
    // Stretched by less than one column, so that the outside is met exactly.
    pitchMm: [innerMm[0] / countX, innerMm[1] / countY],
    originMm: [box.centerMm[0] - halfX, box.centerMm[1] - halfY, box.floorMm],
    heightMm: box.ceilingMm - box.floorMm,
    start,
    fromMm: Float32Array.from(from),
    untilMm: Float32Array.from(until),
    fill: Uint8Array.from(fill),
    faceAreaFactor: roundness(innerMm, cornerRadiusMm),
  };
}

/** Real perimeter over that of the steps: rounded corners are shorter than their stairs. */
function roundness([length, width]: Vec3, cornerRadiusMm: number): Vec3 {
  const stairs = 2 * (length + width);
  const share = (stairs - (8 - 2 * Math.PI) * cornerRadiusMm) / stairs;
  return [share, share, 1];
}

/** Walls of each column from the top down, [high, low]; bodies that overlap count once. Sparse: most columns have few. */
function wallsOf(pattern: IndexedMesh, grid: ColumnGrid): [number, number][][] {
  const crossings: [heightMm: number, up: boolean][][] = [];
  forEachCrossing(pattern, grid, (column, heightMm, up) => {
    (crossings[column] ??= []).push([heightMm, up]);
  });
  return crossings.map((inColumn) => {
    inColumn.sort((a, b) => b[0] - a[0]);
    const walls: [number, number][] = [];
    let [depth, entered, before] = [0, 0, Number.NaN];
    let beforeUp = false;
    for (const [height, up] of inColumn) {
      // A shared edge is met twice.
      const again = up === beforeUp && Math.abs(before - height) < 1e-5;
      [before, beforeUp] = [height, up];
      if (again) continue;
      if (up) {
        if (depth++ === 0) entered = height;
      } else if (depth > 0 && --depth === 0) walls.push([entered, height]);
    }
    return walls;
  });
}
