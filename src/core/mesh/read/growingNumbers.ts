import { Problem } from '../../problem';
import { limits } from '../limits';

/** A list of numbers of unknown length without a boxed number per entry. */
export class GrowingNumbers {
  private numbers = new Float64Array(9 * 1024);
  length = 0;

  push3(x: number, y: number, z: number): void {
    if (this.length + 3 > this.numbers.length) {
      const larger = new Float64Array(2 * this.numbers.length);
      larger.set(this.numbers);
      this.numbers = larger;
    }
    this.numbers[this.length] = x;
    this.numbers[this.length + 1] = y;
    this.numbers[this.length + 2] = z;
    this.length += 3;
  }

  at(index: number): number {
    return this.numbers[index]!;
  }

  /** Takes back the last entries. */
  shorten(length: number): void {
    this.length = length;
  }

  /** The numbers so far, without copying; the list must not grow afterwards. */
  all(): Float64Array {
    return this.numbers.subarray(0, this.length);
  }
}

/** Throws `mesh.tooManyTriangles` when a list of corners (9 numbers per triangle) is over the limit. */
export function refuseTooMany(cornerNumbers: number): void {
  if (cornerNumbers <= 9 * limits.triangles) return;
  throw new Problem(
    'mesh.tooManyTriangles',
    `The file holds more than ${limits.triangles} triangles, the most that can be worked with here. Export it with a coarser mesh.`,
  );
}
