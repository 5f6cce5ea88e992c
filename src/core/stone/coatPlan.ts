/** Sealer and release on the faces of both halves: how much to take, how long it waits, how thick its film dries. */

export interface CoatChoices {
  readonly coats: number;
  /** Area that one liter covers in one coat, m2/L, from the supplier's sheet. */
  readonly coverageM2PerL: number;
  /** Left in brush and pot, %. */
  readonly lossPercent: number;
  /** After each coat, min. */
  readonly waitMin: number;
}

export interface CoatPlan {
  readonly perCoatMl: number;
  readonly totalMl: number;
  readonly waitingMin: number;
}

/** One coat: area / coverage, losses added. 0.02 m2 at 5 m2/L are 4 mL. */
export function coatPlan(
  areaMm2: number,
  { coats, coverageM2PerL, lossPercent, waitMin }: CoatChoices,
): CoatPlan {
  const perCoatMl = (areaMm2 / 1e6 / coverageM2PerL) * 1000 * (1 + lossPercent / 100);
  return { perCoatMl, totalMl: coats * perCoatMl, waitingMin: coats * waitMin };
}

/** m2/L that a coat covers when its film dries to `filmUm`: 10 × volume solids in % / film (`coatSpreading` in core/sources). */
export function spreadingRateM2PerL(solidsPercent: number, filmUm: number): number {
  return (10 * solidsPercent) / filmUm;
}

/** The same the other way: what one coat at this coverage dries to, um. 8 m2/L at 40 % solids leave 50 um. */
export function dryFilmUm(solidsPercent: number, coverageM2PerL: number): number {
  return (10 * solidsPercent) / coverageM2PerL;
}
