/** Exact distance from points to the nearest of many triangles, found through cells of space. */
import { boxOf } from './boxOf';
import { squaredDistance } from './triangleDistance';

export class CloseFacets {
  private readonly low: readonly number[];
  private readonly count: readonly [number, number, number];
  /** Triangles of cell c are `members[starts[c]]` up to `members[starts[c + 1]]`. */
  private readonly starts: Uint32Array;
  private readonly members: Uint32Array;
  private readonly asked: Uint32Array;
  private nearestMember = -1;
  private question = 0;
  /** Number of the triangle that the last distance was to; -1 where none was near. */
  nearest = -1;

  /** @param corners 9 numbers per triangle; at least one */
  constructor(
    private readonly corners: Float64Array,
    private readonly cellMm: number,
  ) {
    const { low, high } = boxOf(corners);
    this.low = low;
    const cells = (axis: number) => Math.floor((high[axis]! - low[axis]!) / cellMm) + 1;
    this.count = [cells(0), cells(1), cells(2)];
    const triangles = corners.length / 9;
    this.starts = new Uint32Array(this.count[0] * this.count[1] * this.count[2] + 1);
    this.asked = new Uint32Array(triangles);
    for (let t = 0; t < triangles; t++) this.eachCell(t, (cell) => this.starts[cell + 1]!++);
    for (let cell = 1; cell < this.starts.length; cell++) this.starts[cell]! += this.starts[cell - 1]!;
    this.members = new Uint32Array(this.starts.at(-1)!);
    const filled = this.starts.slice();
    for (let t = 0; t < triangles; t++) this.eachCell(t, (cell) => (this.members[filled[cell]!++] = t));
  }

  private eachCell(t: number, visit: (cell: number) => void): void {
    const from = [0, 0, 0];
    const to = [0, 0, 0];
    for (let axis = 0; axis < 3; axis++) {
      const at = 9 * t + axis;
      const [a, b, c] = [this.corners[at]!, this.corners[at + 3]!, this.corners[at + 6]!];
      from[axis] = Math.floor((Math.min(a, b, c) - this.low[axis]!) / this.cellMm);
      to[axis] = Math.floor((Math.max(a, b, c) - this.low[axis]!) / this.cellMm);
    }
    for (let k = from[2]!; k <= to[2]!; k++)
      for (let j = from[1]!; j <= to[1]!; j++)
        for (let i = from[0]!; i <= to[0]!; i++) visit((k * this.count[1] + j) * this.count[0] + i);
  }

  /** Distance in mm to the nearest triangle; Infinity when it is more than `mostMm` away. */
  distanceMm(x: number, y: number, z: number, mostMm: number): number {
    let best = mostMm * mostMm;
    let found = false;
    this.question++;
    this.nearest = -1;
    const point = [x, y, z];
    const home = point.map((value, axis) => Math.floor((value - this.low[axis]!) / this.cellMm));
    const rings = Math.ceil(mostMm / this.cellMm) + 1;
    for (let ring = 0; ring <= rings && (ring - 1) * this.cellMm < Math.sqrt(best); ring++) {
      for (let dk = -ring; dk <= ring; dk++) {
        for (let dj = -ring; dj <= ring; dj++) {
          const isSide = Math.abs(dk) === ring || Math.abs(dj) === ring;
          for (let di = -ring; di <= ring; di += isSide || ring === 0 ? 1 : 2 * ring) {
            const nearer = this.nearestIn(home[0]! + di, home[1]! + dj, home[2]! + dk, x, y, z, best);
            if (nearer > best) continue;
            best = nearer;
            found = true;
            this.nearest = this.nearestMember;
          }
        }
      }
    }
    return found ? Math.sqrt(best) : Infinity;
  }

  // oxlint-disable-next-line max-params
  private nearestIn(i: number, j: number, k: number, x: number, y: number, z: number, most: number): number {
    const [nx, ny, nz] = this.count;
    if (i < 0 || j < 0 || k < 0 || i >= nx || j >= ny || k >= nz) return Infinity;
    const cell = (k * ny + j) * nx + i;
    let best = Infinity;
    for (let at = this.starts[cell]!; at < this.starts[cell + 1]!; at++) {
      const t = this.members[at]!;
      if (this.asked[t] === this.question) continue;
      this.asked[t] = this.question;
      const square = squaredDistance(this.corners, t, x, y, z);
      if (square <= most && square < best) {
        best = square;
        this.nearestMember = t;
      }
    }
    return best;
  }
}
