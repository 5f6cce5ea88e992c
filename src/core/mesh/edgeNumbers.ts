/** Numbers edges by their two vertices, from 0 in the order in which they are first asked for. */
export class EdgeNumbers {
  count = 0;
  readonly lowEnd: Uint32Array;
  readonly highEnd: Uint32Array;
  /** First and next edge in a bucket, -1 at the end. */
  private readonly first: Int32Array;
  private readonly next: Int32Array;
  private readonly shift: number;

  /** @param most so many edges there are at most */
  constructor(most: number) {
    this.lowEnd = new Uint32Array(most);
    this.highEnd = new Uint32Array(most);
    const bits = Math.max(4, Math.ceil(Math.log2(most + 1)));
    this.first = new Int32Array(2 ** bits).fill(-1);
    this.next = new Int32Array(most);
    this.shift = 32 - bits;
  }

  numberOf(one: number, other: number): number {
    const low = Math.min(one, other);
    const high = Math.max(one, other);
    const bucket = (Math.imul(low, 0x9e3779b1) ^ Math.imul(high, 0x85ebca6b)) >>> this.shift;
    for (let edge = this.first[bucket]!; edge >= 0; edge = this.next[edge]!) {
      if (this.lowEnd[edge] === low && this.highEnd[edge] === high) return edge;
    }
    const edge = this.count++;
    this.lowEnd[edge] = low;
    this.highEnd[edge] = high;
    this.next[edge] = this.first[bucket]!;
    this.first[bucket] = edge;
    return edge;
  }
}
