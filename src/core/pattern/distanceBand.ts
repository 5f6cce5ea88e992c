/** Distance from the nodes of the grid to a set of triangles, without asking what is inside. */
import type { PatternGrid } from './grid';
import { squaredDistance } from '../mesh/triangleDistance';

/** Of nodes that the band does not reach. */
const farMm = 1e6;

/** Buckets of the queue per step of the grid. */
const bucketsPerStep = 4;
/** Larger triangles are split before nodes are looked for near them. */
const mostSteps = 6;

/**
 * Nodes beside each triangle know it first; from there on each node hands its closest triangle on to its 26 neighbors, nearest
 * first. Exact but where the closest triangle of a node is that of none of its neighbors; `farMm` where the band does not reach.
 * @param corners 9 numbers per triangle
 * @param reachMm how far the band reaches from the triangles in each layer
 * @param shut 1 marks nodes that are left out; null leaves none out. Nodes on the border of the grid always are.
 */
export function distanceBand(
  grid: PatternGrid,
  corners: Float64Array,
  reachMm: (layer: number) => number,
  shut: Uint8Array | null,
): Float32Array {
  const { countX, countY, countZ } = grid;
  const count = countX * countY * countZ;
  const distanceMm = new Float32Array(count).fill(farMm);
  const nearest = new Int32Array(count).fill(-1);
  const done = shut === null ? new Uint8Array(count) : shut.slice();
  shutBorder(grid, done);
  const seeder = new Seeder(grid, corners, distanceMm, nearest, done);
  for (let t = 0; 9 * t < corners.length; t++) seeder.seed(t);
  const reach = Float64Array.from({ length: countZ }, (_, layer) => reachMm(layer));
  handOn(grid, corners, reach, distanceMm, nearest, done);
  return distanceMm;
}

function shutBorder({ countX, countY, countZ }: PatternGrid, done: Uint8Array): void {
  const plane = countX * countY;
  done.fill(1, 0, plane);
  done.fill(1, plane * (countZ - 1));
  for (let k = 0; k < countZ; k++) {
    done.fill(1, k * plane, k * plane + countX);
    done.fill(1, (k + 1) * plane - countX, (k + 1) * plane);
    for (let j = 0; j < countY; j++) {
      done[k * plane + j * countX] = 1;
      done[k * plane + (j + 1) * countX - 1] = 1;
    }
  }
}

/** Finds the nodes within a step of a triangle. */
class Seeder {
  private readonly plane: number;

  constructor(
    private readonly grid: PatternGrid,
    private readonly corners: Float64Array,
    private readonly distanceMm: Float32Array,
    private readonly nearest: Int32Array,
    private readonly done: Uint8Array,
  ) {
    this.plane = grid.countX * grid.countY;
  }

  seed(t: number): void {
    const c = this.corners;
    const o = 9 * t;
    this.part(
      t,
      c[o]!,
      c[o + 1]!,
      c[o + 2]!,
      c[o + 3]!,
      c[o + 4]!,
      c[o + 5]!,
      c[o + 6]!,
      c[o + 7]!,
      c[o + 8]!,
    );
  }

  /** A part of triangle `t`; a large one is halved across its longest edge. */
  // oxlint-disable-next-line max-params
  private part(
    t: number,
    ax: number,
    ay: number,
    az: number,
    bx: number,
    by: number,
    bz: number,
    cx: number,
    cy: number,
    cz: number,
  ): void {
    const step = this.grid.stepMm;
    const ab = (ax - bx) ** 2 + (ay - by) ** 2 + (az - bz) ** 2;
    const bc = (bx - cx) ** 2 + (by - cy) ** 2 + (bz - cz) ** 2;
    const ca = (cx - ax) ** 2 + (cy - ay) ** 2 + (cz - az) ** 2;
    if (Math.max(ab, bc, ca) <= (mostSteps * step) ** 2) {
      this.near(
        t,
        Math.min(ax, bx, cx) - step,
        Math.min(ay, by, cy) - step,
        Math.min(az, bz, cz) - step,
        Math.max(ax, bx, cx) + step,
        Math.max(ay, by, cy) + step,
        Math.max(az, bz, cz) + step,
      );
    } else if (ab >= bc && ab >= ca) {
      const [mx, my, mz] = [(ax + bx) / 2, (ay + by) / 2, (az + bz) / 2];
      this.part(t, ax, ay, az, mx, my, mz, cx, cy, cz);
      this.part(t, mx, my, mz, bx, by, bz, cx, cy, cz);
    } else if (bc >= ca) {
      const [mx, my, mz] = [(bx + cx) / 2, (by + cy) / 2, (bz + cz) / 2];
      this.part(t, ax, ay, az, bx, by, bz, mx, my, mz);
      this.part(t, ax, ay, az, mx, my, mz, cx, cy, cz);
    } else {
      const [mx, my, mz] = [(cx + ax) / 2, (cy + ay) / 2, (cz + az) / 2];
      this.part(t, ax, ay, az, bx, by, bz, mx, my, mz);
      this.part(t, mx, my, mz, bx, by, bz, cx, cy, cz);
    }
  }

  // oxlint-disable-next-line max-params
  private near(t: number, x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): void {
    const { countX, countY, countZ, stepMm, layerMm, lowXMm, lowYMm, lowZMm } = this.grid;
    const fromI = Math.max(0, Math.ceil((x0 - lowXMm) / stepMm));
    const toI = Math.min(countX - 1, Math.floor((x1 - lowXMm) / stepMm));
    const fromJ = Math.max(0, Math.ceil((y0 - lowYMm) / stepMm));
    const toJ = Math.min(countY - 1, Math.floor((y1 - lowYMm) / stepMm));
    const fromK = Math.max(0, Math.ceil((z0 - lowZMm) / layerMm));
    const toK = Math.min(countZ - 1, Math.floor((z1 - lowZMm) / layerMm));
    const most = stepMm * stepMm * 1.1;
    for (let k = fromK; k <= toK; k++) {
      for (let j = fromJ; j <= toJ; j++) {
        for (let i = fromI; i <= toI; i++) {
          const node = k * this.plane + j * countX + i;
          if (this.done[node] === 1 || this.nearest[node] === t) continue;
          const square = squaredDistance(
            this.corners,
            t,
            lowXMm + i * stepMm,
            lowYMm + j * stepMm,
            lowZMm + k * layerMm,
          );
          if (square > most) continue;
          const distance = Math.sqrt(square);
          if (distance >= this.distanceMm[node]!) continue;
          this.distanceMm[node] = distance;
          this.nearest[node] = t;
        }
      }
    }
  }
}

function handOn(
  grid: PatternGrid,
  corners: Float64Array,
  reachMm: Float64Array,
  distanceMm: Float32Array,
  nearest: Int32Array,
  done: Uint8Array,
): void {
  const { countX, countY, stepMm, layerMm, lowXMm, lowYMm, lowZMm } = grid;
  const plane = countX * countY;
  const perMm = bucketsPerStep / stepMm;
  const most = Math.max(...reachMm);
  const queue: number[][] = Array.from({ length: Math.ceil(most * perMm) + 2 }, () => []);
  for (let node = 0; node < nearest.length; node++)
    if (nearest[node] !== -1)
      queue[Math.min(queue.length - 1, Math.floor(distanceMm[node]! * perMm))]!.push(node);
  for (let bucket = 0; bucket < queue.length; bucket++) {
    const here = queue[bucket]!;
    for (let at = 0; at < here.length; at++) {
      const node = here[at]!;
      if (done[node] === 1) continue;
      done[node] = 1;
      const t = nearest[node]!;
      const i = node % countX;
      const row = (node - i) / countX;
      const j = row % countY;
      const k = (row - j) / countY;
      for (let dk = -1; dk <= 1; dk++) {
        const z = lowZMm + (k + dk) * layerMm;
        const reach = reachMm[k + dk]!;
        for (let dj = -1; dj <= 1; dj++) {
          const y = lowYMm + (j + dj) * stepMm;
          const line = node + dk * plane + dj * countX;
          for (let di = -1; di <= 1; di++) {
            const next = line + di;
            if (done[next] === 1 || nearest[next] === t) continue;
            const before = distanceMm[next]!;
            const square = squaredDistance(corners, t, lowXMm + (i + di) * stepMm, y, z);
            if (square >= before * before) continue;
            const distance = Math.sqrt(square);
            if (distance > reach) continue;
            distanceMm[next] = distance;
            nearest[next] = t;
            queue[Math.max(bucket, Math.floor(distance * perMm))]!.push(next);
          }
        }
      }
    }
    queue[bucket] = [];
  }
}
