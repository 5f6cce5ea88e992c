/**
 * Post-cure of the demolded part, standing free in the oven: a thin shell in moving air follows it within minutes, so it is
 * taken as one lump. Slow heating keeps it under its own Tg, which rises as it cures; the supplier's sheet gives the rate.
 */
import { curveOf, type Curve } from './curve';
import { doseAlong, type SupplierCure } from './dose';
import type { LaminateHeat } from './moldMaterials';

export interface PostCure {
  readonly targetC: number;
  readonly rampKPerMin: number;
  readonly dwellS: number;
}

/** Slow, then an hour (common practice, no source; the supplier's sheet rules). */
export const usualPostCure: PostCure = { targetC: 120, rampKPerMin: 0.3, dwellS: 3600 };

export interface PostCureResult {
  readonly part: Curve;
  readonly totalS: number;
  /** Time constant of the shell, s. */
  readonly lagS: number;
  /** Gained by the part on its own; null without a supplier's cure. */
  readonly dose: number | null;
}

/** `filmWPerM2K`: convection and radiation together, on both faces of the shell. */
export function freePostCure(
  { targetC, rampKPerMin, dwellS }: PostCure,
  roomC: number,
  wallMm: number,
  laminate: LaminateHeat,
  filmWPerM2K: number,
  supplier: SupplierCure | null,
): PostCureResult {
  const lagS = (laminate.densityKgM3 * laminate.heatJPerKgK * (wallMm / 1000)) / (2 * filmWPerM2K);
  const rampS = (60 * (targetC - roomC)) / rampKPerMin;
  const slope = (targetC - roomC) / rampS;
  const behindK = slope * lagS * (1 - Math.exp(-rampS / lagS));
  const points: [number, number][] = [];
  for (let part = 0; part <= 40; part++) {
    const timeS = (rampS * part) / 40;
    points.push([timeS, roomC + slope * (timeS - lagS * (1 - Math.exp(-timeS / lagS)))]);
  }
  for (let part = 1; part <= 20; part++) {
    const sinceS = (dwellS * part) / 20;
    points.push([rampS + sinceS, targetC - behindK * Math.exp(-sinceS / lagS)]);
  }
  const part = curveOf(points);
  return {
    part,
    totalS: rampS + dwellS,
    lagS,
    dose: supplier === null ? null : doseAlong(supplier, part).total,
  };
}
