/**
 * Gives equal corners one vertex number: an open-addressing hash on the bits of the coordinates. Equal means
 * equal numbers (-0 equals 0); non-finite numbers must not be added.
 */
export class VertexTable {
  private coordinates: Float64Array;
  private slots: Int32Array;
  private used = 0;
  private readonly mixed = new Float64Array(1);
  private readonly mixedWords = new Int32Array(this.mixed.buffer);

  constructor(expectedVertices: number) {
    let size = 1024;
    while (size < 2 * expectedVertices) size *= 2;
    this.slots = new Int32Array(size).fill(-1);
    this.coordinates = new Float64Array(3 * (size / 2));
  }

  /** Number of the vertex at (x, y, z), which is added when it is new. */
  add(x: number, y: number, z: number): number {
    const slots = this.slots;
    const coordinates = this.coordinates;
    const mask = slots.length - 1;
    let slot = this.hash(x, y, z) & mask;
    for (let vertex = slots[slot]!; vertex !== -1; vertex = slots[slot]!) {
      const at = 3 * vertex;
      if (coordinates[at] === x && coordinates[at + 1] === y && coordinates[at + 2] === z) return vertex;
      slot = (slot + 1) & mask;
    }
    const vertex = this.used++;
    slots[slot] = vertex;
    const at = 3 * vertex;
    // Adding 0 turns -0 into 0.
    coordinates[at] = x + 0;
    coordinates[at + 1] = y + 0;
    coordinates[at + 2] = z + 0;
    if (this.used * 2 >= slots.length) this.grow();
    return vertex;
  }

  /** Coordinates of all vertices so far, 3 per vertex. */
  positions(): Float64Array {
    return this.coordinates.slice(0, 3 * this.used);
  }

  /**
   * The three numbers are mixed into one by factors without a common multiple and its bits are stirred; hashing the
   * bits of each number took twice as long. Adding 0 turns -0 into 0, whose bits differ.
   */
  private hash(x: number, y: number, z: number): number {
    this.mixed[0] = x * 0.7548776662466927 + y * 0.5698402909980532 + z * 0.8191725133961645 + 0;
    const words = this.mixedWords;
    let h = Math.imul(words[0]! ^ Math.imul(words[1]!, 0x9e3779b1), 0x85ebca6b);
    h = Math.imul(h ^ (h >>> 15), 0xc2b2ae35);
    return h ^ (h >>> 13);
  }

  private grow(): void {
    const size = this.slots.length * 2;
    const mask = size - 1;
    const slots = new Int32Array(size).fill(-1);
    const coordinates = new Float64Array(3 * (size / 2));
    coordinates.set(this.coordinates);
    for (let vertex = 0; vertex < this.used; vertex++) {
      const at = 3 * vertex;
      let slot = this.hash(coordinates[at]!, coordinates[at + 1]!, coordinates[at + 2]!) & mask;
      while (slots[slot] !== -1) slot = (slot + 1) & mask;
      slots[slot] = vertex;
    }
    this.slots = slots;
    this.coordinates = coordinates;
  }
}
