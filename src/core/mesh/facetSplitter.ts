import type { Midpoints } from './midpoints';

/** How one facet is to be split. Corners are called A, B, C with AB the longest edge. */
export interface FacetPlan {
  /** Powers of two: so many pieces each edge is cut into. AB has several if any has. */
  readonly piecesAB: number;
  readonly piecesBC: number;
  readonly piecesCA: number;
  /** So many times the facet is split into four before the rest is cut across in strips. */
  readonly quarterings: number;
  /** Where C stands along AB, 0 at A to 1 at B. */
  readonly shareOfC: number;
}

/** Splits facets by their plans and writes the children one after the other. */
export class FacetSplitter {
  /** 3 vertex numbers per child. */
  readonly facets: Uint32Array;
  /** Per half-edge of the children: the half-edge that it lies on, -1 for an edge inside the facet that was split. */
  readonly drawnHalfEdge: Int32Array;
  private readonly midpoints: Midpoints;
  private written = 0;
  private lower = new Uint32Array(2);
  private upper = new Uint32Array(3);

  constructor(children: number, midpoints: Midpoints) {
    this.facets = new Uint32Array(3 * children);
    this.drawnHalfEdge = new Int32Array(3 * children);
    this.midpoints = midpoints;
  }

  /** Children written so far. */
  get count(): number {
    return this.written / 3;
  }

  /** One child with the half-edges that its edges ab, bc and ca lie on. */
  write(a: number, b: number, c: number, onAB: number, onBC: number, onCA: number): void {
    const at = this.written;
    this.facets[at] = a;
    this.facets[at + 1] = b;
    this.facets[at + 2] = c;
    this.drawnHalfEdge[at] = onAB;
    this.drawnHalfEdge[at + 1] = onBC;
    this.drawnHalfEdge[at + 2] = onCA;
    this.written = at + 3;
  }

  /** Corners and half-edges in the order of the plan: AB is the longest edge. */
  split(
    plan: FacetPlan,
    a: number,
    b: number,
    c: number,
    onAB: number,
    onBC: number,
    onCA: number,
    quartered = 0,
  ): void {
    if (quartered === plan.quarterings) {
      this.strip(plan, a, b, c, onAB, onBC, onCA);
      return;
    }
    const ab = this.midpoints.between(a, b);
    const bc = this.midpoints.between(b, c);
    const ca = this.midpoints.between(c, a);
    // All four are shaped like the whole, and their edges are named in the same order.
    this.split(plan, a, ab, ca, onAB, -1, onCA, quartered + 1);
    this.split(plan, ab, b, bc, onAB, onBC, -1, quartered + 1);
    this.split(plan, bc, ca, ab, -1, -1, -1, quartered + 1);
    this.split(plan, ca, bc, c, -1, onBC, onCA, quartered + 1);
  }

  /** Cuts across between the points of AB below and those of A-C-B above, whichever comes next along AB. */
  private strip(
    plan: FacetPlan,
    a: number,
    b: number,
    c: number,
    onAB: number,
    onBC: number,
    onCA: number,
  ): void {
    const scale = 2 ** plan.quarterings;
    const below = plan.piecesAB / scale;
    const toC = plan.piecesCA / scale;
    const fromC = plan.piecesBC / scale;
    const above = toC + fromC;
    if (this.lower.length <= below) this.lower = new Uint32Array(2 * below);
    if (this.upper.length <= above) this.upper = new Uint32Array(2 * above);
    const { lower, upper, midpoints } = this;
    if (below === 1) {
      this.write(a, b, c, onAB, onBC, onCA);
      return;
    }
    midpoints.along(a, b, below, lower);
    midpoints.along(a, c, toC, upper);
    midpoints.along(c, b, fromC, upper.subarray(toC));
    const upperShare = (at: number) =>
      at <= toC ? (plan.shareOfC * at) / toC : plan.shareOfC + ((1 - plan.shareOfC) * (at - toC)) / fromC;
    const onUpper = (at: number) => (at <= toC ? onCA : onBC);

    this.write(a, lower[1]!, upper[1]!, onAB, -1, onUpper(1));
    let low = 1;
    let high = 1;
    while (low < below - 1 || high < above - 1) {
      const lowNext = low < below - 1 && (high === above - 1 || (low + 1) / below <= upperShare(high + 1));
      if (lowNext) {
        this.write(lower[low]!, lower[low + 1]!, upper[high]!, onAB, -1, -1);
        low++;
      } else {
        this.write(lower[low]!, upper[high + 1]!, upper[high]!, -1, onUpper(high + 1), -1);
        high++;
      }
    }
    this.write(lower[low]!, b, upper[high]!, onAB, onUpper(above), -1);
  }
}
