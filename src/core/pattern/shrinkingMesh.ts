/** A closed shell that loses vertices one by one, each pulled onto a neighbor, by rules that keep what it is made for. */
import { addPlane, errorAt, numbersPerQuadric } from './quadric';

export const faceKind = { show: 0, core: 1, land: 2 } as const;

/** Facets narrower than that are not made: 1 for three equal sides, .12 about one to fourteen. */
const leastShape = 0.12;
/** A facet narrower than that has no direction worth keeping. */
const trustedShape = 0.04;
/** Cosine of the most that a facet may turn at once. */
const leastTurnCosine = 0.8;
/** Ends of an edge shorter than this share of a step are one point to any printer: they are joined whatever their planes say. */
const shortShare = 0.05;
/** Weight of the length of an edge in the order that neighbors are tried in: on flat ground the nearest comes first. */
const lengthWeight = 1e-7;

export interface ShrinkingRules {
  /** Sine of the draft that a new facet has, unless it has more than the one that it takes the place of. */
  readonly leastSine: number;
  /** Side of the squares that the mesh was cut from: a facet of half of one counts in full. */
  readonly stepMm: number;
}

export class ShrinkingMesh {
  liveFacets: number;
  private readonly head: Int32Array;
  private readonly next: Int32Array;
  private readonly isLive: Uint8Array;
  private readonly isOutline: Uint8Array;
  private readonly quadrics: Float64Array;
  private readonly seen: Int32Array;
  private readonly touched: Int32Array;
  private readonly shortMm2: number;
  private stamp = 0;
  private sweeps = 0;
  private readonly ring: number[] = [];
  private readonly costs: number[] = [];
  /** Of the facet asked about last. */
  private readonly normal = new Float64Array(3);
  private shape = 0;

  /**
   * @param facets changed in place
   * @param kinds of facets, see `faceKind`
   */
  constructor(
    private readonly positions: Float64Array,
    private readonly facets: Uint32Array,
    private readonly kinds: Uint8Array,
    private readonly rules: ShrinkingRules,
  ) {
    const vertices = positions.length / 3;
    this.shortMm2 = (shortShare * rules.stepMm) ** 2;
    this.liveFacets = kinds.length;
    this.isLive = new Uint8Array(kinds.length).fill(1);
    this.head = new Int32Array(vertices).fill(-1);
    this.next = new Int32Array(facets.length);
    this.isOutline = new Uint8Array(vertices);
    this.quadrics = new Float64Array(numbersPerQuadric * vertices);
    this.seen = new Int32Array(vertices).fill(-1);
    this.touched = new Int32Array(vertices).fill(-1);
    for (let corner = 0; corner < facets.length; corner++) this.enter(corner);
  }

  private enter(corner: number): void {
    const { positions, facets, kinds, quadrics, rules } = this;
    const vertex = facets[corner]!;
    const f = (corner / 3) | 0;
    const first = this.head[vertex]!;
    if (first >= 0 && kinds[(first / 3) | 0] !== kinds[f]) this.isOutline[vertex] = 1;
    this.next[corner] = first;
    this.head[vertex] = corner;
    const [a, b, c] = [facets[3 * f]!, facets[3 * f + 1]!, facets[3 * f + 2]!];
    const area = this.look(a, b, c);
    const weight = Math.min(1, (2 * area) / rules.stepMm ** 2);
    addPlane(quadrics, vertex, this.normal, positions, 3 * a, weight);
  }

  /** Direction, shape and area of a triangle of vertices; the first two stay in `normal` and `shape`. */
  private look(a: number, b: number, c: number): number {
    const { positions: p, normal } = this;
    const [i, j, k] = [3 * a, 3 * b, 3 * c];
    const ux = p[j]! - p[i]!;
    const uy = p[j + 1]! - p[i + 1]!;
    const uz = p[j + 2]! - p[i + 2]!;
    const vx = p[k]! - p[i]!;
    const vy = p[k + 1]! - p[i + 1]!;
    const vz = p[k + 2]! - p[i + 2]!;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    const per = length > 0 ? 1 / length : 0;
    normal[0] = nx * per;
    normal[1] = ny * per;
    normal[2] = nz * per;
    const squares =
      2 * (ux * ux + uy * uy + uz * uz + vx * vx + vy * vy + vz * vz - (ux * vx + uy * vy + uz * vz));
    this.shape = squares > 0 ? (2 * Math.sqrt(3) * length) / squares : 0;
    return length / 2;
  }

  /** Sine of how far the facet asked about last leans to the side that it is released to; 1 for the land. */
  private sineOf(kind: number): number {
    const nz = this.normal[2]!;
    return kind === faceKind.show ? nz : kind === faceKind.core ? -nz : 1;
  }

  /**
   * Tries every vertex once that no other one near it has been pulled onto.
   * @returns how many vertices went
   */
  sweep(withinMm: number): number {
    this.sweeps++;
    let gone = 0;
    for (let vertex = 0; vertex < this.head.length; vertex++)
      if (this.head[vertex]! >= 0 && this.touched[vertex] !== this.sweeps && this.pull(vertex, withinMm))
        gone++;
    return gone;
  }

  /** Pulls the vertex onto the first neighbor that the rules allow, the one that moves the surface least first. */
  private pull(vertex: number, withinMm: number): boolean {
    const { ring, costs, positions } = this;
    this.gatherRing(vertex);
    const most = withinMm * withinMm;
    costs.length = 0;
    for (const other of ring) {
      const error = errorAt(this.quadrics, vertex, other, positions, 3 * other);
      const square = this.squareBetween(vertex, other);
      costs.push(error > most && square > this.shortMm2 ? Infinity : error + lengthWeight * square);
    }
    for (;;) {
      let best = -1;
      let least = Infinity;
      for (let at = 0; at < costs.length; at++) {
        if (costs[at]! >= least) continue;
        least = costs[at]!;
        best = at;
      }
      if (best < 0) return false;
      if (this.allows(vertex, ring[best]!)) {
        this.join(vertex, ring[best]!);
        return true;
      }
      costs[best] = Infinity;
    }
  }

  private squareBetween(one: number, other: number): number {
    const { positions } = this;
    const dx = positions[3 * one]! - positions[3 * other]!;
    const dy = positions[3 * one + 1]! - positions[3 * other + 1]!;
    const dz = positions[3 * one + 2]! - positions[3 * other + 2]!;
    return dx * dx + dy * dy + dz * dz;
  }

  /** Neighbors of the vertex, into `ring`; corners of facets that are gone leave its list. */
  private gatherRing(vertex: number): void {
    const { ring, facets, next, isLive } = this;
    ring.length = 0;
    let before = -1;
    for (let corner = this.head[vertex]!; corner >= 0; corner = next[corner]!) {
      if (isLive[(corner / 3) | 0] === 0) {
        if (before < 0) this.head[vertex] = next[corner]!;
        else next[before] = next[corner]!;
        continue;
      }
      before = corner;
      ring.push(facets[corner % 3 === 2 ? corner - 2 : corner + 1]!);
    }
  }

  private allows(vertex: number, onto: number): boolean {
    return this.keepsShape(vertex, onto) && this.keepsFacets(vertex, onto);
  }

  /** No tunnel is pinched, and the outlines of the rim stay where they are. */
  private keepsShape(vertex: number, onto: number): boolean {
    const { facets, next, isLive, kinds, seen } = this;
    const own = ++this.stamp;
    const first = this.stamp;
    let shared = 0;
    let kindsSeen = 0;
    for (let corner = this.head[vertex]!; corner >= 0; corner = next[corner]!) {
      const f = (corner / 3) | 0;
      if (isLive[f] === 0) continue;
      const a = facets[corner % 3 === 2 ? corner - 2 : corner + 1]!;
      const b = facets[corner % 3 === 0 ? corner + 2 : corner - 1]!;
      seen[a] = own;
      seen[b] = own;
      if (a !== onto && b !== onto) continue;
      shared++;
      kindsSeen |= 1 << kinds[f]!;
    }
    if (shared !== 2) return false;
    const isBorder = (kindsSeen & (kindsSeen - 1)) !== 0;
    if (this.isOutline[vertex] === 1 && !isBorder) return false;
    this.stamp++;
    let common = 0;
    for (let corner = this.head[onto]!; corner >= 0; corner = next[corner]!) {
      if (isLive[(corner / 3) | 0] === 0) continue;
      const a = facets[corner % 3 === 2 ? corner - 2 : corner + 1]!;
      const b = facets[corner % 3 === 0 ? corner + 2 : corner - 1]!;
      if (seen[a] === first) common++;
      if (seen[b] === first) common++;
      if (common > 4) return false;
    }
    // Each common neighbor is met in two facets.
    return common === 4;
  }

  /** Facets stay turned as they are, keep their draft, and do not become slivers. */
  private keepsFacets(vertex: number, onto: number): boolean {
    const { facets, next, isLive, kinds, normal } = this;
    const isShort = this.squareBetween(vertex, onto) <= this.shortMm2;
    let narrowest = 1;
    let worst = 1;
    for (let corner = this.head[vertex]!; corner >= 0; corner = next[corner]!) {
      const f = (corner / 3) | 0;
      if (isLive[f] === 0) continue;
      const a = facets[corner % 3 === 2 ? corner - 2 : corner + 1]!;
      const b = facets[corner % 3 === 0 ? corner + 2 : corner - 1]!;
      this.look(vertex, a, b);
      worst = Math.min(worst, this.shape);
      if (a === onto || b === onto) continue;
      const [x, y, z] = [normal[0]!, normal[1]!, normal[2]!];
      const shapeBefore = this.shape;
      const sineBefore = this.sineOf(kinds[f]!);
      this.look(onto, a, b);
      narrowest = Math.min(narrowest, this.shape);
      const sine = this.sineOf(kinds[f]!);
      if (sine < this.rules.leastSine && sine <= sineBefore) return false;
      const cosine = x * normal[0]! + y * normal[1]! + z * normal[2]!;
      if (cosine < (shapeBefore < trustedShape ? 0 : leastTurnCosine)) return false;
    }
    return narrowest >= leastShape || narrowest > (isShort ? worst / 2 : worst);
  }

  private join(vertex: number, onto: number): void {
    const { facets, next, isLive, quadrics, touched } = this;
    for (let corner = this.head[vertex]!; corner >= 0;) {
      const following = next[corner]!;
      const f = (corner / 3) | 0;
      if (isLive[f] === 1) {
        const [a, b, c] = [facets[3 * f]!, facets[3 * f + 1]!, facets[3 * f + 2]!];
        touched[a] = this.sweeps;
        touched[b] = this.sweeps;
        touched[c] = this.sweeps;
        if (a === onto || b === onto || c === onto) {
          isLive[f] = 0;
          this.liveFacets--;
        } else {
          facets[corner] = onto;
          next[corner] = this.head[onto]!;
          this.head[onto] = corner;
        }
      }
      corner = following;
    }
    this.head[vertex] = -1;
    const [from, to] = [numbersPerQuadric * vertex, numbersPerQuadric * onto];
    for (let at = 0; at < numbersPerQuadric; at++) quadrics[to + at]! += quadrics[from + at]!;
  }

  /** The facets that are left. */
  left(): Uint32Array {
    const left = new Uint32Array(3 * this.liveFacets);
    let to = 0;
    for (let f = 0; f < this.isLive.length; f++) {
      if (this.isLive[f] === 0) continue;
      for (let corner = 0; corner < 3; corner++) left[to++] = this.facets[3 * f + corner]!;
    }
    return left;
  }
}
