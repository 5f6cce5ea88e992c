/**
 * Thickness, fiber content and mass of one prepreg ply from its card. No bleed and no voids: what is on the roll
 * stays in the laminate. If resin bleeds, work the fiber content out again from the measured thickness.
 *
 * Source: `fiberVolumeNotes` in core/sources (fiber volume fraction, plies in a gap); the cured thickness is their
 * rearrangement.
 */
import { Problem } from '../problem';

/** What a prepreg card says about one ply. */
export interface PlyMaterial {
  /** Mass of dry fiber per area, g/m². */
  readonly arealWeightGsm: number;
  readonly fiberDensityGCm3: number;
  readonly resinDensityGCm3: number;
  /** Resin mass over prepreg mass, between 0 and 1, both excluded. */
  readonly resinMassFraction: number;
  /** Thickness of one ply as laid, by caliper; null when not measured. */
  readonly laidThicknessMm: number | null;
}

function mustBePositive(value: number, what: string): void {
  if (!(value > 0 && Number.isFinite(value)))
    throw new Problem('laminate.notPositive', `${what} must be more than zero.`);
}

/** Vf = (wf/ρf) / (wf/ρf + wr/ρr), dimensionless, with wf + wr = 1. */
export function fiberVolumeFraction(
  card: Pick<PlyMaterial, 'resinMassFraction' | 'fiberDensityGCm3' | 'resinDensityGCm3'>,
): number {
  mustBePositive(card.fiberDensityGCm3, 'The fiber density');
  mustBePositive(card.resinDensityGCm3, 'The resin density');
  if (!(card.resinMassFraction > 0 && card.resinMassFraction < 1))
    throw new Problem('laminate.resinFraction', 'The resin mass fraction must lie between 0 and 1.');
  const fiberVolume = (1 - card.resinMassFraction) / card.fiberDensityGCm3;
  return fiberVolume / (fiberVolume + card.resinMassFraction / card.resinDensityGCm3);
}

/** Cured thickness of one ply in mm: areal weight (g/m²) / (1000 ρf Vf). */
export function curedPlyThicknessMm(
  arealWeightGsm: number,
  fiberDensityGCm3: number,
  fiberFraction: number,
): number {
  mustBePositive(arealWeightGsm, 'The fiber areal weight');
  mustBePositive(fiberDensityGCm3, 'The fiber density');
  mustBePositive(fiberFraction, 'The fiber volume fraction');
  return arealWeightGsm / (1000 * fiberDensityGCm3 * fiberFraction);
}

/** Cured thickness of one ply of this card, mm. */
export function curedThicknessMm(card: PlyMaterial): number {
  return curedPlyThicknessMm(card.arealWeightGsm, card.fiberDensityGCm3, fiberVolumeFraction(card));
}

/** Density of the void-free laminate in g/cm³: ρf Vf + ρr (1 − Vf). */
export function laminateDensityGCm3(
  fiberDensityGCm3: number,
  resinDensityGCm3: number,
  fiberFraction: number,
): number {
  return fiberDensityGCm3 * fiberFraction + resinDensityGCm3 * (1 - fiberFraction);
}

/** Fiber volume fraction of plies held in a gap: Σ areal weight (g/m²) / (1000 ρf gap), gap in mm. */
export function fiberFractionInGap(
  totalArealWeightGsm: number,
  fiberDensityGCm3: number,
  gapMm: number,
): number {
  mustBePositive(fiberDensityGCm3, 'The fiber density');
  mustBePositive(gapMm, 'The gap');
  return totalArealWeightGsm / (1000 * fiberDensityGCm3 * gapMm);
}

/** Mass of prepreg per area of one ply, g/m²: fiber areal weight / (1 − resin mass fraction). */
export function prepregArealMassGsm(card: Pick<PlyMaterial, 'arealWeightGsm' | 'resinMassFraction'>): number {
  return card.arealWeightGsm / (1 - card.resinMassFraction);
}

/** Thickness of one ply as laid, mm: the caliper's value, else the cured thickness times the bulk factor. */
export function laidPlyThicknessMm(card: PlyMaterial, bulkFactor: number): number {
  return card.laidThicknessMm ?? curedThicknessMm(card) * bulkFactor;
}
