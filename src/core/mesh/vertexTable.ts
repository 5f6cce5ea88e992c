/**
 * Gives equal corners one vertex number: an open-addressing hash on the raw bits of the coordinates. Equal means
 * equal numbers (-0 equals 0); non-finite numbers must not be added.
 */
export class VertexTable {
  private coordinates: Float64Array;
  private slots: Int32Array;
  private used = 0;
  private readonly number3 = new Float64Array(3);
  private readonly words6 = new Uint32Array(this.number3.buffer);

  constructor(expectedVertices: number) {
    let size = 1024;
    while (size < 2 * expectedVertices) size *= 2;
    this.slots = new Int32Array(size).fill(-1);
    this.coordinates = new Float64Array(3 * (size / 2));
  }

  /** Number of the vertex at (x, y, z), which is added when it is new. */
  add(x: number, y: number, z: number): number {
    // Adding 0 turns -0 into 0, whose bits differ.
    const slots = this.slots;
    const coordinates = this.coordinates;
    const mask = slots.length - 1;
    let slot = this.hash(x + 0, y + 0, z + 0) & mask;
    for (let vertex = slots[slot]!; vertex !== -1; vertex = slots[slot]!) {
      const at = 3 * vertex;
      if (coordinates[at] === x && coordinates[at + 1] === y && coordinates[at + 2] === z) return vertex;
      slot = (slot + 1) & mask;
    }
    const vertex = this.used++;
    slots[slot] = vertex;
    const at = 3 * vertex;
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

  private hash(x: number, y: number, z: number): number {
    const numbers = this.number3;
    const words = this.words6;
    numbers[0] = x;
    numbers[1] = y;
    numbers[2] = z;
    let h = Math.imul(words[0]! ^ Math.imul(words[1]!, 0x9e3779b1), 0x85ebca6b);
    h = Math.imul((h ^ (h >>> 15)) + words[2]!, 0xc2b2ae35) ^ Math.imul(words[3]!, 0x27d4eb2f);
    h = Math.imul((h ^ (h >>> 13)) + words[4]!, 0x165667b1) ^ Math.imul(words[5]!, 0x9e3779b1);
    h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
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
