/**
 * The closed mold around a real part, as columns along the pull: the pattern's own material is where the laminate lies,
 * over it stands the negative's stone, under it the positive's. It is the body that the pours cast, leaning box walls, keys
 * and pry slots included. A key is stone in a dimple of stone: no heat sees it, it only moves some stone (and its water)
 * from one half to the other.
 */
import type { IndexedMesh, Vec3 } from '../mesh/types';
import type { ColumnGrid } from '../stone/pours/columnGrid';
import type { BoxSolid } from '../stone/pours/boxSolid';
import { partPattern, type Parted } from '../stone/pours/parting';
import { checkPourChoices, type PourChoices } from '../stone/pours/pourChoices';
import { intoFrame, pullFrame } from '../stone/pours/pullFrame';
import { keyPlaces, keySolid, prySlotSolids, wallRoom } from '../stone/pours/registration';
import { bodyIntervals, intervalsWithout, type Intervals } from './bodyIntervals';
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
  return voxelsFromColumns(columnsOf(parted, choices), voxelMm);
}

/** Columns of the grid that stand in the box along one axis, first and count. */
function inBox(grid: ColumnGrid, lowMm: number, middleMm: number, halfMm: number): [number, number] {
  const first = Math.ceil((middleMm - halfMm - lowMm) / grid.pitchMm);
  const last = Math.floor((middleMm + halfMm - lowMm) / grid.pitchMm);
  return [first, last - first + 1];
}

function columnsOf(parted: Parted, choices: PourChoices): MoldColumns {
  const { pattern, box, grid, columns: heights } = parted;
  const [reachX, reachY] = box.reachMm;
  const [firstX, countX] = inBox(grid, grid.x0Mm, box.centerMm[0], reachX);
  const [firstY, countY] = inBox(grid, grid.y0Mm, box.centerMm[1], reachY);
  const walls = bodyIntervals(pattern, grid);
  const slots = prySlotSolids(box, grid, parted.heights.landMm, choices).map((slot) =>
    bodyIntervals(slot, grid),
  );
  const inBlock = blockIntervals(box);
  const studs = studTops(parted, choices);
  const start = new Uint32Array(countX * countY + 1);
  const from: number[] = [];
  const until: number[] = [];
  const fill: number[] = [];
  const put = (within: Intervals, low: number, high: number, what: number) => {
    for (const [top, bottom] of within) {
      const [lowest, highest] = [Math.max(low, bottom), Math.min(high, top)];
      if (highest <= lowest) continue;
      from.push(lowest);
      until.push(highest);
      fill.push(what);
    }
  };
  for (let j = 0; j < countY; j++)
    for (let i = 0; i < countX; i++) {
      const at = firstX + i + grid.side * (firstY + j);
      const x = grid.x0Mm + (firstX + i) * grid.pitchMm - box.centerMm[0];
      const y = grid.y0Mm + (firstY + j) * grid.pitchMm - box.centerMm[1];
      const within = slots.reduce<Intervals>(
        (left, slot) => (slot[at] === undefined ? left : intervalsWithout(left, slot[at])),
        inBlock(x, y),
      );
      if (within.length > 0) {
        const top = heights.topMm[at]!;
        const parting = Math.max(
          top > -Infinity ? top : parted.heights.heightMm[at]!,
          studs.get(at) ?? -Infinity,
        );
        put(within, parting, Infinity, columnFill.negativeStone);
        let stoneUntil = parting;
        for (const [high, low] of walls[at] ?? []) {
          put(within, high, stoneUntil, columnFill.positiveStone);
          put(within, low, Math.min(high, stoneUntil), columnFill.laminate);
          stoneUntil = Math.min(stoneUntil, low);
        }
        put(within, -Infinity, stoneUntil, columnFill.positiveStone);
      }
      start[i + countX * j + 1] = from.length;
    }
  return {
    columns: [countX, countY],
    // Stretched by less than one column, so that the outside is met exactly.
    pitchMm: [(2 * reachX) / countX, (2 * reachY) / countY],
    originMm: [box.centerMm[0] - reachX, box.centerMm[1] - reachY, box.floorMm],
    heightMm: box.ceilingMm - box.floorMm,
    start,
    fromMm: Float32Array.from(from),
    untilMm: Float32Array.from(until),
    fill: Uint8Array.from(fill),
    faceAreaFactor: smoothness(box.box),
  };
}

/** Where a column at a place counted from the middle of the box is inside the box: walls lean outward from the parting. */
function blockIntervals({
  box,
  partingMm,
  floorMm,
  ceilingMm,
}: BoxSolid): (x: number, y: number) => Intervals {
  const [halfX, halfY] = [box.innerMm[0] / 2, box.innerMm[1] / 2];
  const lean = Math.tan((box.wallDraftDeg * Math.PI) / 180);
  const whole: Intervals = [[ceilingMm, floorMm]];
  return (x, y) => {
    const outMm = -wallRoom(x, y, halfX, halfY, box.cornerRadiusMm);
    if (outMm <= 0) return whole;
    const offMm = lean === 0 ? Infinity : outMm / lean;
    const ends: Intervals = [
      [ceilingMm, partingMm + offMm],
      [partingMm - offMm, floorMm],
    ];
    return ends.filter(([high, low]) => high > low);
  };
}

/** Height of the positive's stud in each column that one stands in. */
function studTops({ box, grid, open, heights }: Parted, choices: PourChoices): ReadonlyMap<number, number> {
  const tops = new Map<number, number>();
  for (const key of keyPlaces(box, grid, open.region, heights.landMm, choices))
    bodyIntervals(keySolid(key, choices, 0), grid).forEach((inside, at) => {
      const top = inside?.[0]?.[0];
      if (top !== undefined) tops.set(at, top);
    });
  return tops;
}

/**
 * Real outside area over that of the voxels' steps: rounded corners are shorter than their stairs, and a wall that leans by
 * a is V / cos a where its steps are V (1 + tan a).
 */
function smoothness({ innerMm: [length, width], cornerRadiusMm, wallDraftDeg }: Parted['box']['box']): Vec3 {
  const stairs = 2 * (length + width);
  const round = (stairs - (8 - 2 * Math.PI) * cornerRadiusMm) / stairs;
  const lean = (wallDraftDeg * Math.PI) / 180;
  const sides = round * (1 / Math.cos(lean) - Math.tan(lean));
  return [sides, sides, 1];
}
