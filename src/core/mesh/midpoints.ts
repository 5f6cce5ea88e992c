import { EdgeNumbers } from './edgeNumbers';

/**
 * Middles of edges, each made once however many facets ask for it: facets that share an edge share its middle, so what
 * was closed stays closed.
 */
export class Midpoints {
  /** 3 numbers per vertex: the given ones first, then the middles, with room for all that may come. */
  private readonly positions: Float64Array;
  private readonly firstNew: number;
  private readonly edges: EdgeNumbers;

  /** @param most so many middles are made at most */
  constructor(positions: Float64Array, most: number) {
    this.positions = new Float64Array(positions.length + 3 * most);
    this.positions.set(positions);
    this.firstNew = positions.length / 3;
    this.edges = new EdgeNumbers(most);
  }

  /** Vertex number of the middle between two vertices. */
  between(one: number, other: number): number {
    const known = this.edges.count;
    const edge = this.edges.numberOf(one, other);
    const vertex = this.firstNew + edge;
    if (edge === known) {
      for (let axis = 0; axis < 3; axis++) {
        this.positions[3 * vertex + axis] =
          (this.positions[3 * one + axis]! + this.positions[3 * other + axis]!) / 2;
      }
    }
    return vertex;
  }

  /** The vertices along an edge that is halved until it lies in `pieces` (a power of two), ends included. */
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
    return this.positions.slice(0, 3 * (this.firstNew + this.edges.count));
  }
}
