import type { Vec3 } from './types';

/** A uniform grid of cubic cells over the box of the surface; each cell lists the slots that may pass through it. */
export interface CellGrid {
  readonly countX: number;
  readonly countY: number;
  readonly countZ: number;
  readonly cellMm: number;
  /** Lower corner of cell (0, 0, 0), mm. */
  readonly originMm: Vec3;
  /** Slots of cell `c` are `slots[starts[c]]` up to `slots[starts[c + 1]]`, c = x + countX * (y + countY * z). */
  readonly starts: Uint32Array;
  readonly slots: Uint32Array;
}

/** Edge of a cell in mean facet sizes (square root of the mean area); measured best on even meshes. */
const cellPerFacetSize = 1.5;
/** Bounds that keep memory modest on uneven or sparse meshes. */
const mostCellsPerFacet = 8;
const mostSlotsPerFacet = 8;
/** Cells overlap by this share of a cell, so that a ray along a cell wall misses nothing. */
const overlapShare = 1e-6;

interface CellFrame {
  readonly counts: Vec3;
  readonly cellMm: number;
  readonly originMm: Vec3;
}

function frameFor(cellMm: number, boxMin: Vec3, boxMax: Vec3): CellFrame {
  const count = (axis: 0 | 1 | 2) =>
    Math.max(1, Math.ceil(((boxMax[axis] - boxMin[axis]) / cellMm) * (1 + 1e-9)));
  const counts: Vec3 = [count(0), count(1), count(2)];
  return { counts, cellMm, originMm: boxMin };
}

/**
 * Calls nothing, allocates nothing: walks the cells of every slot and either counts (`slots` null) or files them.
 * A cell is taken when it meets the box of the facet and, for facets over several cells, also its plane.
 */
function rasterize(
  points: Float64Array,
  corners: Uint32Array,
  { counts, cellMm, originMm }: CellFrame,
  tally: Uint32Array,
  slots: Uint32Array | null,
): void {
  const [countX, countY, countZ] = counts;
  const perMm = 1 / cellMm;
  const slotCount = corners.length / 3;
  for (let slot = 0, at = 0; slot < slotCount; slot++, at += 3) {
    const a = 3 * corners[at]!;
    const b = 3 * corners[at + 1]!;
    const c = 3 * corners[at + 2]!;
    // Corners in cell units.
    const ax = (points[a]! - originMm[0]) * perMm;
    const ay = (points[a + 1]! - originMm[1]) * perMm;
    const az = (points[a + 2]! - originMm[2]) * perMm;
    const bx = (points[b]! - originMm[0]) * perMm;
    const by = (points[b + 1]! - originMm[1]) * perMm;
    const bz = (points[b + 2]! - originMm[2]) * perMm;
    const cx = (points[c]! - originMm[0]) * perMm;
    const cy = (points[c + 1]! - originMm[1]) * perMm;
    const cz = (points[c + 2]! - originMm[2]) * perMm;
    const fromX = Math.max(0, Math.floor(Math.min(ax, bx, cx) - overlapShare));
    const fromY = Math.max(0, Math.floor(Math.min(ay, by, cy) - overlapShare));
    const fromZ = Math.max(0, Math.floor(Math.min(az, bz, cz) - overlapShare));
    const toX = Math.min(countX - 1, Math.floor(Math.max(ax, bx, cx) + overlapShare));
    const toY = Math.min(countY - 1, Math.floor(Math.max(ay, by, cy) + overlapShare));
    const toZ = Math.min(countZ - 1, Math.floor(Math.max(az, bz, cz) + overlapShare));
    const alongX = toX - fromX;
    const alongY = toY - fromY;
    const alongZ = toZ - fromZ;
    // With two or more axes crossed, the plane rules out the cells beside the facet.
    const usePlane = (alongX > 0 ? 1 : 0) + (alongY > 0 ? 1 : 0) + (alongZ > 0 ? 1 : 0) > 1;
    let nx = 0;
    let ny = 0;
    let nz = 0;
    let offset = 0;
    let reach = Infinity;
    if (usePlane) {
      nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
      ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
      nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
      offset = nx * (ax - 0.5) + ny * (ay - 0.5) + nz * (az - 0.5);
      reach = (Math.abs(nx) + Math.abs(ny) + Math.abs(nz)) * (0.5 + 2 * overlapShare);
    }
    for (let z = fromZ; z <= toZ; z++) {
      for (let y = fromY; y <= toY; y++) {
        let cell = fromX + countX * (y + countY * z);
        for (let x = fromX; x <= toX; x++, cell++) {
          if (usePlane && Math.abs(nx * x + ny * y + nz * z - offset) > reach) continue;
          if (slots === null) tally[cell]!++;
          else slots[--tally[cell]!] = slot;
        }
      }
    }
  }
}

/** Builds the grid: counts, running sums, files. */
export function buildCellGrid(
  points: Float64Array,
  corners: Uint32Array,
  boxMin: Vec3,
  boxMax: Vec3,
): CellGrid {
  const slotCount = corners.length / 3;
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
  const widest = Math.max(boxMax[0] - boxMin[0], boxMax[1] - boxMin[1], boxMax[2] - boxMin[2]) || 1;
  let cellMm = Math.max(cellPerFacetSize * Math.sqrt(doubleArea / 2 / Math.max(1, slotCount)), widest / 1024);
  const cellLimit = Math.max(64, mostCellsPerFacet * slotCount);
  const slotLimit = Math.max(1024, mostSlotsPerFacet * slotCount);
  for (;;) {
    const frame = frameFor(cellMm, boxMin, boxMax);
    const [countX, countY, countZ] = frame.counts;
    const cellCount = countX * countY * countZ;
    if (cellCount > cellLimit) {
      cellMm *= Math.max(1.05, Math.cbrt(cellCount / cellLimit));
      continue;
    }
    const starts = new Uint32Array(cellCount + 1);
    rasterize(points, corners, frame, starts, null);
    let total = 0;
    for (let cell = 0; cell <= cellCount; cell++) {
      total += starts[cell]!;
      starts[cell] = total;
    }
    if (total > slotLimit && cellCount > 64) {
      cellMm *= 1.4;
      continue;
    }
    const slots = new Uint32Array(total);
    rasterize(points, corners, frame, starts, slots);
    return { countX, countY, countZ, cellMm, originMm: frame.originMm, starts, slots };
  }
}
