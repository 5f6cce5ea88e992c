/**
 * Middles of edges, each made once however many facets ask for it: facets that share an edge share its middle, so what
 * was closed stays closed.
 */
export class Midpoints {
  /** 3 numbers per vertex: the given ones first, the middles after them; room for all that may come. */
  private readonly positions: Float64Array;
  private readonly firstNew: number;
  private count: number;
  /** First and next middle in a bucket, -1 at the end. */
  private readonly first: Int32Array;
  private readonly next: Int32Array;
  private readonly lowEnd: Uint32Array;
  private readonly highEnd: Uint32Array;
  private readonly shift: number;

  /** @param most so many middles are made at most */
  constructor(positions: Float64Array, most: number) {
    this.positions = new Float64Array(positions.length + 3 * most);
    this.positions.set(positions);
    this.firstNew = positions.length / 3;
    this.count = this.firstNew;
    const bits = Math.max(4, Math.ceil(Math.log2(most + 1)));
    this.first = new Int32Array(2 ** bits).fill(-1);
    this.shift = 32 - bits;
    this.next = new Int32Array(most);
    this.lowEnd = new Uint32Array(most);
    this.highEnd = new Uint32Array(most);
  }

  /** Vertex number of the middle between two vertices. */
  between(one: number, other: number): number {
    const low = Math.min(one, other);
    const high = Math.max(one, other);
    const bucket = (Math.imul(low, 0x9e3779b1) ^ Math.imul(high, 0x85ebca6b)) >>> this.shift;
    for (let entry = this.first[bucket]!; entry >= 0; entry = this.next[entry]!) {
      if (this.lowEnd[entry] === low && this.highEnd[entry] === high) return this.firstNew + entry;
    }
    const vertex = this.count++;
    const entry = vertex - this.firstNew;
    this.lowEnd[entry] = low;
    this.highEnd[entry] = high;
    this.next[entry] = this.first[bucket]!;
    this.first[bucket] = entry;
    for (let axis = 0; axis < 3; axis++) {
      this.positions[3 * vertex + axis] =
        (this.positions[3 * low + axis]! + this.positions[3 * high + axis]!) / 2;
    }
    return vertex;
  }

  /**
   * The vertices along an edge that is halved until it lies in `pieces` (a power of two), ends included, written to
   * `into`.
   */
  along(from: number, to: number, pieces: number, into: Uint32Array): void {
    into[0] = from;
    into[pieces] = to;
    for (let step = pieces; step > 1; step /= 2) {
      for (let at = 0; at < pieces; at += step) {
        into[at + step / 2] = this.between(into[at]!, into[at + step]!);
      }
    }
  }

  /** All positions there are now. */
  all(): Float64Array {
    return this.positions.slice(0, 3 * this.count);
  }
}
