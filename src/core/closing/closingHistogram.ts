import { mostCounts } from '../counts';
import type { Vec3 } from '../mesh/types';
import { measureBin, partition, rowsOf, type Bin, type Rows } from './binRows';
import { BinHeap } from './binHeap';
import type { ClosingHistogram, FacetSamples } from './closingTypes';

export const mostBins = mostCounts.closingBins;
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
  const rows = rowsOf(samples);
  const halfPlanMm = Math.max(...samples.frame.halfSizeMm, 1e-9);
  const tiltWeight = (usualTiltMm / halfPlanMm) ** 2;
  const weights = [1, usualStandOffMm ** 2, tiltWeight, tiltWeight] as const;
  const bins = rows.facet.length > 0 ? splitAll(rows, weights, limit) : [];
  return summed(samples, centerMm, rows, bins);
}

/** The bin with most scatter is halved until there are `most` or all are fine; in the order of their rows. */
function splitAll(rows: Rows, weights: Parameters<typeof measureBin>[1], most: number): Bin[] {
  const count = rows.facet.length;
  const whole = measureBin(rows, weights, 0, count);
  let totalArea = 0;
  for (let row = 0; row < count; row++) totalArea += rows.areaMm2[row]!;
  const enough = fineEnoughMm ** 2 * totalArea;
  const heap = new BinHeap(whole);
  let scatter = whole.scatter;
  const done: Bin[] = [];
  while (heap.size + done.length < most && scatter > enough) {
    const bin = heap.take();
    if (bin === null) break;
    const middle = partition(rows, bin);
    if (middle === bin.from || middle === bin.to) {
      done.push(bin);
      continue;
    }
    const halves = [
      measureBin(rows, weights, bin.from, middle),
      measureBin(rows, weights, middle, bin.to),
    ] as const;
    scatter += halves[0].scatter + halves[1].scatter - bin.scatter;
    heap.put(halves[0]);
    heap.put(halves[1]);
  }
  return [...done, ...heap.all()].sort((a, b) => a.from - b.from);
}

/** Area and means of each bin. */
function summed(
  samples: FacetSamples,
  centerMm: Float32Array,
  rows: Rows,
  bins: readonly Bin[],
): ClosingHistogram {
  const { frame, areaMm2, wallMm, pullCosine, armUMm, armVMm } = samples;
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
    let area = 0;
    let wallSum = 0;
    let cosineSum = 0;
    let armUSum = 0;
    let armVSum = 0;
    let x = 0;
    let y = 0;
    let z = 0;
    let low = Infinity;
    let high = 0;
    for (let row = from; row < to; row++) {
      const facet = rows.facet[row]!;
      const weight = areaMm2[facet]!;
      const wall = wallMm[facet]!;
      area += weight;
      wallSum += weight * wall;
      cosineSum += weight * pullCosine[facet]!;
      armUSum += weight * armUMm[facet]!;
      armVSum += weight * armVMm[facet]!;
      x += weight * centerMm[3 * facet]!;
      y += weight * centerMm[3 * facet + 1]!;
      z += weight * centerMm[3 * facet + 2]!;
      if (wall < low) low = wall;
      if (wall > high) high = wall;
    }
    result.areaMm2[bin] = area;
    result.wallMm[bin] = wallSum / area;
    result.pullCosine[bin] = cosineSum / area;
    result.armUMm[bin] = armUSum / area;
    result.armVMm[bin] = armVSum / area;
    result.centerMm.set([x / area, y / area, z / area], 3 * bin);
    result.wallLowMm[bin] = low;
    result.wallHighMm[bin] = high;
  }
  return result;
}

/** Where a bin stands in the part's own coordinates. */
export function binCenter({ centerMm }: ClosingHistogram, bin: number): Vec3 {
  return [centerMm[3 * bin]!, centerMm[3 * bin + 1]!, centerMm[3 * bin + 2]!];
}

/** Walls as the laminate finds them: less the film that lies on the stone, but never less than nothing. */
export function withFilm(histogram: ClosingHistogram, filmMm: number): ClosingHistogram {
  if (filmMm === 0) return histogram;
  const less = (walls: ArrayLike<number>) =>
    Float64Array.from(walls, (wall) => Math.max(leastGapMm, wall - filmMm));
  const { wallMm, wallLowMm, wallHighMm } = histogram;
  return { ...histogram, wallMm: less(wallMm), wallLowMm: less(wallLowMm), wallHighMm: less(wallHighMm) };
}
/** Film against film: stone on stone but for it, mm. */
const leastGapMm = 0.001;

/** The same face with one wall everywhere, for a nominal wall of the print. */
export function withUniformWall(histogram: ClosingHistogram, wallMm: number): ClosingHistogram {
  const walls = new Float64Array(histogram.wallMm.length).fill(wallMm);
  return { ...histogram, wallsKnown: true, wallMm: walls, wallLowMm: walls, wallHighMm: walls };
}
