/** How far steep walls wipe over the stack before the mold is closed. Geometry of a rigid stroke. */
import type { ClosingSamples } from './closingTypes';

/** Change of a wall's gap for a closing stroke, mm: s sin(draft). */
export function gapChangeMm(strokeMm: number, draftDeg: number): number {
  return strokeMm * Math.sin((draftDeg * Math.PI) / 180);
}

/**
 * Stroke over which a wall touches the stack as laid before the mold is closed, mm: (h1 − wall) / sin(draft), at most
 * the depth of the part (a wall without draft wipes all the way). 0 where the wall is wider than the stack.
 */
export function slideMm(laidMm: number, wallMm: number, pullCosine: number, depthMm: number): number {
  const overlap = laidMm - wallMm;
  if (!(overlap > 0)) return 0;
  return pullCosine * depthMm <= overlap ? depthMm : overlap / pullCosine;
}

export interface LongestSlide {
  readonly slideMm: number;
  /** Place in the samples; -1 when no wall slides. */
  readonly place: number;
  /** Share of the area that wipes over the whole depth. */
  readonly allTheWayShare: number;
}

/** Faces nearly across the pull are pressed, not wiped: only walls steeper than this are asked (cosine of 45°). */
export const steepCosine = Math.SQRT1_2;

/** `noticedShare`: steep places that together are less of the area than this are left out, longest slide first. */
export function longestSlide(
  samples: ClosingSamples,
  laidMm: number,
  depthMm: number,
  noticedShare: number,
): LongestSlide {
  const { areaMm2, wallMm, pullCosine } = samples;
  const found: { place: number; slide: number; area: number }[] = [];
  let all = 0;
  let allTheWay = 0;
  for (let place = 0; place < areaMm2.length; place++) {
    const area = areaMm2[place]!;
    if (area === 0) continue;
    all += area;
    if (pullCosine[place]! > steepCosine) continue;
    const slide = slideMm(laidMm, wallMm[place]!, pullCosine[place]!, depthMm);
    if (slide > 0) found.push({ place, slide, area });
    if (slide >= depthMm && slide > 0) allTheWay += area;
  }
  found.sort((a, b) => b.slide - a.slide);
  let passed = 0;
  for (const { place, slide, area } of found) {
    passed += area;
    if (passed >= noticedShare * all) return { slideMm: slide, place, allTheWayShare: allTheWay / all };
  }
  return { slideMm: 0, place: -1, allTheWayShare: all > 0 ? allTheWay / all : 0 };
}
