import type { Vec3 } from '../mesh/types';
import type { ClosingHistogram, FacetSamples } from './closingTypes';

export const mostBins = 8192;
/**
 * What the four directions of a bin weigh, in mm of gap: the wall itself, the cosine times a usual stand-off, the arms
 * times a usual tilt over half the plan.
 */
const usualStandOffMm = 0.3;
const usualTiltMm = 0.1;
/** Bins are fine enough when the gaps of their facets scatter by less than this about their means (root mean square). */
const fineEnoughMm = 2e-4;

/**
 * Splits the show face along its widest direction, the bin with most scatter first, until `limit` bins or until all are
 * fine. Deterministic; sums are in float64.
 */
export function closingHistogram(
  samples: FacetSamples,
  centerMm: Float32Array,
  limit: number = mostBins,
): ClosingHistogram {
  const { frame, areaMm2, wallMm, pullCosine, armUMm, armVMm } = samples;
  const taking: number[] = [];
  for (let facet = 0; facet < areaMm2.length; facet++) if (areaMm2[facet]! > 0) taking.push(facet);
  const count = taking.length;
  const order = Uint32Array.from(taking);
  const halfPlanMm = Math.max(...frame.halfSizeMm, 1e-9);
  const directions = [
    { values: wallMm, weight: 1 },
    { values: pullCosine, weight: usualStandOffMm },
    { values: armUMm, weight: usualTiltMm / halfPlanMm },
    { values: armVMm, weight: usualTiltMm / halfPlanMm },
  ] as const;

  const measure = (from: number, to: number): Bin => {
    const sums = new Float64Array(4);
    let area = 0;
    const first = order[from]!;
    // About the first facet, so that a common offset costs no digits.
    const squares = new Float64Array(4);
    for (let at = from; at < to; at++) {
      const facet = order[at]!;
      const weight = areaMm2[facet]!;
      area += weight;
      for (let k = 0; k < 4; k++) {
        const away = directions[k]!.values[facet]! - directions[k]!.values[first]!;
        sums[k]! += weight * away;
        squares[k]! += weight * away * away;
      }
    }
    let widest = 0;
    let scatter = 0;
    let all = 0;
    for (let k = 0; k < 4; k++) {
      const own = directions[k]!.weight ** 2 * Math.max(0, squares[k]! - (sums[k]! * sums[k]!) / area);
      all += own;
      if (own > scatter) [widest, scatter] = [k, own];
    }
    const mean = directions[widest]!.values[first]! + sums[widest]! / area;
    return { from, to, widest, mean, scatter: all };
  };

  const bins = count > 0 ? splitAll(measure(0, count), limit) : [];
  return summed(bins);

  function splitAll(whole: Bin, most: number): Bin[] {
    const totalArea = order.reduce((sum, facet) => sum + areaMm2[facet]!, 0);
    const enough = fineEnoughMm ** 2 * totalArea;
    const heap = new BinHeap(whole);
    let scatter = whole.scatter;
    const done: Bin[] = [];
    while (heap.size + done.length < most && scatter > enough) {
      const bin = heap.take();
      if (bin === null) break;
      const middle = partition(bin);
      if (middle === bin.from || middle === bin.to) {
        done.push(bin);
        continue;
      }
      const halves = [measure(bin.from, middle), measure(middle, bin.to)] as const;
      scatter += halves[0].scatter + halves[1].scatter - bin.scatter;
      heap.put(halves[0]);
      heap.put(halves[1]);
    }
    return [...done, ...heap.all()].sort((a, b) => a.from - b.from);
  }

  /** Facets at or under the mean of the widest direction first; where the others begin. */
  function partition({ from, to, widest, mean }: Bin): number {
    const { values } = directions[widest]!;
    let low = from;
    let high = to - 1;
    while (low <= high) {
      const facet = order[low]!;
      if (values[facet]! <= mean) low++;
      else {
        order[low] = order[high]!;
        order[high--] = facet;
      }
    }
    return low;
  }

  function summed(bins: readonly Bin[]): ClosingHistogram {
    const zeros = () => new Float64Array(bins.length);
    const result = {
      frame,
      wallsKnown: samples.wallsKnown,
      areaMm2: zeros(),
      wallMm: zeros(),
      pullCosine: zeros(),
      armUMm: zeros(),
      armVMm: zeros(),
      centerMm: new Float64Array(3 * bins.length),
      wallLowMm: zeros().fill(Infinity),
      wallHighMm: zeros(),
    };
    for (const [bin, { from, to }] of bins.entries()) {
      for (let at = from; at < to; at++) {
        const facet = order[at]!;
        const weight = areaMm2[facet]!;
        const wall = wallMm[facet]!;
        result.areaMm2[bin]! += weight;
        result.wallMm[bin]! += weight * wall;
        result.pullCosine[bin]! += weight * pullCosine[facet]!;
        result.armUMm[bin]! += weight * armUMm[facet]!;
        result.armVMm[bin]! += weight * armVMm[facet]!;
        for (let axis = 0; axis < 3; axis++)
          result.centerMm[3 * bin + axis]! += weight * centerMm[3 * facet + axis]!;
        if (wall < result.wallLowMm[bin]!) result.wallLowMm[bin] = wall;
        if (wall > result.wallHighMm[bin]!) result.wallHighMm[bin] = wall;
      }
      const area = result.areaMm2[bin]!;
      result.wallMm[bin]! /= area;
      result.pullCosine[bin]! /= area;
      result.armUMm[bin]! /= area;
      result.armVMm[bin]! /= area;
      for (let axis = 0; axis < 3; axis++) result.centerMm[3 * bin + axis]! /= area;
    }
    return result;
  }
}

/** Where a bin stands in the part's own coordinates. */
export function binCenter({ centerMm }: ClosingHistogram, bin: number): Vec3 {
  return [centerMm[3 * bin]!, centerMm[3 * bin + 1]!, centerMm[3 * bin + 2]!];
}

/** The same face with one wall everywhere, for a nominal wall of the print. */
export function withUniformWall(histogram: ClosingHistogram, wallMm: number): ClosingHistogram {
  const walls = new Float64Array(histogram.wallMm.length).fill(wallMm);
  return { ...histogram, wallsKnown: true, wallMm: walls, wallLowMm: walls, wallHighMm: walls };
}

interface Bin {
  readonly from: number;
  readonly to: number;
  /** Direction with most scatter, and its mean. */
  readonly widest: number;
  readonly mean: number;
  /** Area times squared distance to the mean, mm⁴, all directions. */
  readonly scatter: number;
}

/** Bins with the most scattered one on top. */
class BinHeap {
  private readonly bins: Bin[];

  constructor(first: Bin) {
    this.bins = [first];
  }

  get size(): number {
    return this.bins.length;
  }

  all(): readonly Bin[] {
    return this.bins;
  }

  put(bin: Bin): void {
    const { bins } = this;
    let at = bins.push(bin) - 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (bins[parent]!.scatter >= bin.scatter) break;
      bins[at] = bins[parent]!;
      at = parent;
    }
    bins[at] = bin;
  }

  take(): Bin | null {
    const { bins } = this;
    const top = bins[0];
    const last = bins.pop();
    if (top === undefined || last === undefined) return null;
    if (bins.length === 0) return top;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= bins.length) break;
      if (child + 1 < bins.length && bins[child + 1]!.scatter > bins[child]!.scatter) child++;
      if (bins[child]!.scatter <= last.scatter) break;
      bins[at] = bins[child]!;
      at = child;
    }
    bins[at] = last;
    return top;
  }
}
