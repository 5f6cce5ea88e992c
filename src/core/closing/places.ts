/** The show face by places in words: what each carries, how it slides, and which ones hold the mold open. */
import { placeName, type PartFrame } from '../mesh/place';
import type { Vec3 } from '../mesh/types';
import { pressureAt, type BedCurve } from './bedCurve';
import { classOf, closingClass, type ClassLimits, type ClosingClass } from './classes';
import { binCenter } from './closingHistogram';
import type { ClosingHistogram } from './closingTypes';
import { slideMm, steepCosine } from './sliding';
import { gapMm, type ClosingPosition } from './tiltedBalance';

export interface ClosingPlace {
  /** e.g. "show face, +x side, steep". */
  readonly place: string;
  readonly steep: boolean;
  readonly areaMm2: number;
  /** Area-weighted means. */
  readonly wallMm: number;
  readonly gapMm: number;
  readonly draftDeg: number;
  /** Push of the bed along the pull, N, and its share of the whole bed's. */
  readonly pushN: number;
  readonly pushShare: number;
  readonly meanPressureKpa: number;
  /** Longest slide of its walls before closing, mm; 0 for faces across the pull. */
  readonly slideMm: number;
  /** The class of most of its area. */
  readonly mostly: ClosingClass;
}

interface Sums {
  readonly steep: boolean;
  area: number;
  wall: number;
  gap: number;
  draft: number;
  push: number;
  load: number;
  slide: number;
  readonly byClass: number[];
}

const classNames = Object.keys(closingClass) as ClosingClass[];

/** Faces that clamps press and steep walls of one side are two places. */
export function closingPlaceName(frame: PartFrame, pointMm: Vec3, pullCosine: number): string {
  return `${placeName(frame, pointMm, 'show')}${pullCosine <= steepCosine ? ', steep' : ''}`;
}

/** Names of a histogram's bins: they stay while plies, clamps and sliders change. */
const namesKept = new WeakMap<ClosingHistogram, readonly string[]>();

function binNames(histogram: ClosingHistogram, frame: PartFrame): readonly string[] {
  const kept = namesKept.get(histogram);
  if (kept !== undefined) return kept;
  const names = Array.from(histogram.pullCosine, (c, bin) =>
    closingPlaceName(frame, binCenter(histogram, bin), c),
  );
  namesKept.set(histogram, names);
  return names;
}

/**
 * Ranked by push, then by area: the first ones hold the mold open. `frame` belongs to the histogram's part: one histogram
 * is always asked with the same.
 */
export function closingPlaces(
  histogram: ClosingHistogram,
  frame: PartFrame,
  position: ClosingPosition,
  curve: BedCurve,
  limits: ClassLimits,
  laidMm: number,
  evenedMm: ArrayLike<number> | null = null,
): readonly ClosingPlace[] {
  const { areaMm2, wallMm, pullCosine } = histogram;
  const names = binNames(histogram, frame);
  const byPlace = new Map<string, Sums>();
  let whole = 0;
  for (let bin = 0; bin < areaMm2.length; bin++) {
    const c = pullCosine[bin]!;
    const steep = c <= steepCosine;
    const name = names[bin]!;
    const sums = byPlace.get(name) ?? {
      steep,
      area: 0,
      wall: 0,
      gap: 0,
      draft: 0,
      push: 0,
      load: 0,
      slide: 0,
      byClass: [0, 0, 0, 0],
    };
    byPlace.set(name, sums);
    const area = areaMm2[bin]!;
    const gap = gapMm(histogram, position, bin);
    const load = pressureAt(curve, gap) * area;
    sums.area += area;
    sums.wall += area * wallMm[bin]!;
    sums.gap += area * gap;
    sums.draft += (area * Math.asin(Math.min(1, c)) * 180) / Math.PI;
    sums.push += load * c;
    sums.load += load;
    whole += load * c;
    if (steep) sums.slide = Math.max(sums.slide, slideMm(laidMm, wallMm[bin]!, c, histogram.frame.depthMm));
    sums.byClass[classOf(gap, limits, evenedMm?.[bin] ?? gap)]! += area;
  }
  return [...byPlace]
    .map(([place, sums]) => ({
      place,
      steep: sums.steep,
      areaMm2: sums.area,
      wallMm: sums.wall / sums.area,
      gapMm: sums.gap / sums.area,
      draftDeg: sums.draft / sums.area,
      pushN: sums.push,
      pushShare: whole > 0 ? sums.push / whole : 0,
      meanPressureKpa: (1000 * sums.load) / sums.area,
      slideMm: sums.slide,
      mostly: classNames[sums.byClass.indexOf(Math.max(...sums.byClass))]!,
    }))
    .sort((a, b) => b.pushN - a.pushN || b.areaMm2 - a.areaMm2);
}
