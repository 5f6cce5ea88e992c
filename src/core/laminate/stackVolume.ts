/**
 * What a stack of plies fills when nothing bleeds and no air stays: fiber and resin have a volume, and a rigid cavity that
 * is wider holds air, pressed or not. The thickness as laid (air between the plies, loft) is another thing: it tells how a
 * stack gets into the mold, not what fills the gap.
 */
import { compensatedSum } from '../numeric/compensatedSum';
import { Problem } from '../problem';
import { curedThicknessMm, prepregArealMassGsm, type PlyMaterial } from './plyThickness';

/** Volumes per area of part, so each is a thickness in mm. */
export interface StackVolume {
  /** Σ FAW / (1000 ρf). */
  readonly fiberMm: number;
  /** Σ FAW (wr/wf) / (1000 ρr). */
  readonly resinMm: number;
  /** t0 = fiber + resin: the thickness without voids and without bleed. */
  readonly voidFreeMm: number;
  readonly fiberGsm: number;
  readonly resinGsm: number;
}

/**
 * t0 = Σ FAW/1000 (1/ρf + (wr/wf)/ρr), FAW in g/m², densities in g/cm³, wr + wf = 1 (`plyVolumeSum` in core/sources).
 * @throws Problem `laminate.noPlies` for an empty stack; `laminate.*` for cards that no ply can have
 */
export function stackVolume(plies: readonly PlyMaterial[]): StackVolume {
  if (plies.length === 0)
    throw new Problem('laminate.noPlies', 'The stack has no plies: add at least one ply.');
  const total = (of: (ply: PlyMaterial) => number) => compensatedSum(plies.map(of));
  const fiberGsm = total((ply) => ply.arealWeightGsm);
  const fiberMm = total((ply) => ply.arealWeightGsm / (1000 * ply.fiberDensityGCm3));
  const voidFreeMm = total(curedThicknessMm);
  return {
    fiberMm,
    resinMm: voidFreeMm - fiberMm,
    voidFreeMm,
    fiberGsm,
    resinGsm: total(prepregArealMassGsm) - fiberGsm,
  };
}

/** Share of a gap that stays air when no resin flows in from elsewhere: max(0, 1 − t0/g), both in mm. */
export function voidShareInGap(voidFreeMm: number, gapMm: number): number {
  return gapMm > voidFreeMm ? 1 - voidFreeMm / gapMm : 0;
}

/** A cured offcut of the whole stack, on a scale and under a caliper. */
export interface CuredPlate {
  readonly massG: number;
  readonly areaMm2: number;
  readonly thicknessMm: number;
}

export interface PlateContent {
  /** As weighed; replaces what the cards say. */
  readonly volume: StackVolume;
  /** v = 1 − m / (A t ρ), ρ the density without voids; negative where scale, caliper or densities contradict each other. */
  readonly voidShare: number;
}

/**
 * Resin content and voids of a cured plate: the fiber is the cards', the rest of the mass is resin, and what the caliper
 * finds beyond both is air (`voidContentStandard` in core/sources).
 * @throws Problem `laminate.lighterThanFiber`, `laminate.notPositive`
 */
export function plateContent(
  plies: readonly PlyMaterial[],
  { massG, areaMm2, thicknessMm }: CuredPlate,
): PlateContent {
  if (!(massG > 0 && areaMm2 > 0 && thicknessMm > 0))
    throw new Problem(
      'laminate.notPositive',
      'Mass, area and thickness of the cured plate must be more than zero.',
    );
  const laid = stackVolume(plies);
  const resinGsm = massG / (areaMm2 * 1e-6) - laid.fiberGsm;
  if (!(resinGsm > 0))
    throw new Problem(
      'laminate.lighterThanFiber',
      'The cured plate weighs less than its dry fiber: check the scale, its area and the number of plies in it.',
    );
  // The resin of a mixed stack has the mean density of what the cards lay in.
  const resinMm = (laid.resinMm * resinGsm) / laid.resinGsm;
  const voidFreeMm = laid.fiberMm + resinMm;
  return {
    volume: { fiberMm: laid.fiberMm, resinMm, voidFreeMm, fiberGsm: laid.fiberGsm, resinGsm },
    voidShare: 1 - voidFreeMm / thicknessMm,
  };
}
