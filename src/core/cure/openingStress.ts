/**
 * What opening the oven does to hot stone: its skin cools before its core, would shrink, cannot, and is pulled. The stone as a
 * plate that cools on both faces: a textbook parabola across it, skin against mean two thirds of skin against core.
 */

export interface OpeningStone {
  /** Thinnest way through the closed mold, mm. */
  readonly thicknessMm: number;
  readonly conductivityWPerMK: number;
  readonly capacityJPerM3K: number;
  /** Convection and radiation together. */
  readonly filmWPerM2K: number;
  readonly expansionPerK: number;
  readonly modulusGPa: number;
}

/** Set dental stone; of it 10 to 15 GPa and 0.2 to 0.3 are found (from memory). */
export const stoneModulusGPa = { usual: 12, low: 10, high: 15 } as const;
const poissonRatio = 0.25;
/** In tension, MPa: 2.53 to 2.99 split across (Hersek et al., J. Prosthet. Dent. 87 (2002) 499, abstract). */
export const stoneBearsMPa = [2.5, 3] as const;

/** Core over skin when the mold is put into cooler air at once, K: ΔT Bi / (2 + Bi) with Bi = h L / k over half the thickness. */
export function openedDifferenceK(stone: OpeningStone, aboveAirK: number): number {
  const biot = (stone.filmWPerM2K * stone.thicknessMm) / 2000 / stone.conductivityWPerMK;
  return (aboveAirK * biot) / (2 + biot);
}

/** Core over skin while the air falls evenly, K: rate ρc L² / (2 k). */
export function steadyDifferenceK(stone: OpeningStone, kPerMin: number): number {
  const halfM = stone.thicknessMm / 2000;
  return ((kPerMin / 60) * stone.capacityJPerM3K * halfM * halfM) / (2 * stone.conductivityWPerMK);
}

/** Tension in the skin, MPa: E α (mean − skin) / (1 − ν). */
export function skinTensionMPa({ expansionPerK, modulusGPa }: OpeningStone, coreOverSkinK: number): number {
  return (1000 * modulusGPa * expansionPerK * (2 / 3) * coreOverSkinK) / (1 - poissonRatio);
}
