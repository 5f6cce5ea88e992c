/** The net of threads: its nodes by index along warp (i) and weft (j), and the links between them, each one step long. */
import type { DrapeSurface, Place } from './drapeSurface';
import { writePoint } from './drapeSurface';

/** Ways along the threads, in counter-clockwise order: +i, +j, -i, -j. */
export const stepI = [1, 0, -1, 0] as const;
export const stepJ = [0, 1, 0, -1] as const;
export type Way = 0 | 1 | 2 | 3;

export class Net {
  readonly surface: DrapeSurface;
  readonly stepMm: number;
  count = 0;
  readonly i: Int16Array;
  readonly j: Int16Array;
  readonly facet: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** 3 per node. */
  readonly pointMm: Float64Array;
  /** 4 per node: angle in the facet's frame at which a link leaves; NaN where there is none. */
  readonly out: Float64Array;
  private readonly reach: number;
  private readonly byIndex: Int32Array;
  private readonly inBucket: Int32Array;
  private readonly nextInBucket: Int32Array;

  constructor(surface: DrapeSurface, stepMm: number, mostNodes: number, reach: number) {
    this.surface = surface;
    this.stepMm = stepMm;
    this.reach = reach;
    this.i = new Int16Array(mostNodes);
    this.j = new Int16Array(mostNodes);
    this.facet = new Int32Array(mostNodes);
    this.x = new Float64Array(mostNodes);
    this.y = new Float64Array(mostNodes);
    this.pointMm = new Float64Array(3 * mostNodes);
    this.out = new Float64Array(4 * mostNodes).fill(NaN);
    this.byIndex = new Int32Array((2 * reach + 1) ** 2).fill(-1);
    this.inBucket = new Int32Array(1 << 15).fill(-1);
    this.nextInBucket = new Int32Array(mostNodes);
  }

  get isFull(): boolean {
    return this.count === this.facet.length;
  }

  /** Node number, -1 where there is none. */
  at(i: number, j: number): number {
    const { reach } = this;
    if (i < -reach || i > reach || j < -reach || j > reach) return -1;
    return this.byIndex[(j + reach) * (2 * reach + 1) + i + reach]!;
  }

  canHold(i: number, j: number): boolean {
    return Math.abs(i) <= this.reach && Math.abs(j) <= this.reach && !this.isFull;
  }

  add(i: number, j: number, place: Place): number {
    const node = this.count++;
    this.i[node] = i;
    this.j[node] = j;
    this.facet[node] = place.facet;
    this.x[node] = place.x;
    this.y[node] = place.y;
    writePoint(this.surface, place, this.pointMm, 3 * node);
    this.byIndex[(j + this.reach) * (2 * this.reach + 1) + i + this.reach] = node;
    const [x, y, z] = [0, 1, 2].map((k) => Math.floor(this.pointMm[3 * node + k]! / this.stepMm));
    const bucket = this.bucketOf(x!, y!, z!);
    this.nextInBucket[node] = this.inBucket[bucket]!;
    this.inBucket[bucket] = node;
    return node;
  }

  placeOf(node: number): Place {
    return { facet: this.facet[node]!, x: this.x[node]!, y: this.y[node]! };
  }

  /** Whether a link leaves the node that way. */
  hasLink(node: number, way: Way): boolean {
    return !Number.isNaN(this.out[4 * node + way]!);
  }

  /** Calls `see` with the nodes within about a step of a point; stops at the first that it answers true for, and says so. */
  someNear(points: Float64Array, at: number, see: (node: number, squareMm2: number) => boolean): boolean {
    const step = this.stepMm;
    const cx = Math.floor(points[at]! / step);
    const cy = Math.floor(points[at + 1]! / step);
    const cz = Math.floor(points[at + 2]! / step);
    for (let dz = -1; dz <= 1; dz++)
      for (let dy = -1; dy <= 1; dy++)
        for (let dx = -1; dx <= 1; dx++) {
          let node = this.inBucket[this.bucketOf(cx + dx, cy + dy, cz + dz)]!;
          for (; node >= 0; node = this.nextInBucket[node]!) {
            const x = this.pointMm[3 * node]! - points[at]!;
            const y = this.pointMm[3 * node + 1]! - points[at + 1]!;
            const z = this.pointMm[3 * node + 2]! - points[at + 2]!;
            if (see(node, x * x + y * y + z * z)) return true;
          }
        }
    return false;
  }

  private bucketOf(x: number, y: number, z: number): number {
    return (Math.imul(x, 73856093) ^ Math.imul(y, 19349663) ^ Math.imul(z, 83492791)) & ((1 << 15) - 1);
  }
}

const turn = 2 * Math.PI;

/** Angle from one way to another, over 0 to a full turn. */
export const angleBetween = (fromRad: number, toRad: number): number =>
  (((toRad - fromRad) % turn) + turn) % turn;

/** Four nodes in counter-clockwise order from the one of lowest index. */
export type CellNodes = readonly [number, number, number, number];

/** The cell whose corner of lowest index is that node; null unless all four links are there. */
export function cellAt(net: Net, node: number): CellNodes | null {
  if (!net.hasLink(node, 0) || !net.hasLink(node, 1)) return null;
  const [i, j] = [net.i[node]!, net.j[node]!];
  const [along, across, far] = [net.at(i + 1, j), net.at(i, j + 1), net.at(i + 1, j + 1)];
  if (far < 0 || !net.hasLink(along, 1) || !net.hasLink(across, 0)) return null;
  return [node, along, far, across];
}

/**
 * Shear of a cell: how far the threads are from square, as the mean over its corners, radians. What its own curvature adds to the
 * sum of its angles cancels out, so it is right to second order in the step.
 */
export function cellShear(net: Net, [first, along, far, across]: CellNodes): number {
  const corner = (node: number, way: number) =>
    angleBetween(net.out[4 * node + way]!, net.out[4 * node + ((way + 1) % 4)]!);
  return (corner(along, 1) + corner(across, 3) - corner(first, 0) - corner(far, 2)) / 4;
}
