/**
 * What is in the laminate after cure, when some resin was pressed out and some air stayed in. The fiber stays; fiber,
 * resin and voids fill the thickness. Exact arithmetic of the card's numbers (`plyVolumeSum` in core/sources).
 */
import { compensatedSum } from '../numeric/compensatedSum';
import { Problem } from '../problem';
import { curedThicknessMm, prepregArealMassGsm, type PlyMaterial } from './plyThickness';

export interface LaminateContent {
  readonly thicknessMm: number;
  readonly fiberVolumeFraction: number;
  readonly voidFraction: number;
  readonly fiberMassFraction: number;
  /** Mass over volume, voids counted as volume. */
  readonly densityGCm3: number;
  readonly arealMassGsm: number;
  readonly fiberGsm: number;
  readonly resinGsm: number;
  readonly resinLostGsm: number;
  /** Of the resin that was laid in, by mass, 0 to 1. */
  readonly resinLostShare: number;
}

interface LaidIn {
  readonly fiberGsm: number;
  readonly resinGsm: number;
  /** Thickness that fiber alone, and resin alone, would fill. */
  readonly fiberMm: number;
  readonly resinMm: number;
}

/** `resinLostShare` of each ply's resin by mass, `voidFraction` of the laminate's volume; both 0 to below 1. */
export function contentAfterBleed(
  plies: readonly PlyMaterial[],
  resinLostShare: number,
  voidFraction: number,
): LaminateContent {
  if (!(resinLostShare >= 0 && resinLostShare < 1))
    throw new Problem('laminate.bleed', 'The share of resin lost must be from 0 to less than 1.');
  return contentOf(laidIn(plies), resinLostShare, checkedVoidFraction(voidFraction));
}

/** The resin that must have left, from the caliper on the cured laminate. */
export function contentAtThickness(
  plies: readonly PlyMaterial[],
  curedMm: number,
  voidFraction: number,
): LaminateContent {
  const laid = laidIn(plies);
  const solidMm = curedMm * (1 - checkedVoidFraction(voidFraction));
  const resinMm = solidMm - laid.fiberMm;
  if (!(resinMm > 0))
    throw new Problem(
      'laminate.thinnerThanFiber',
      'The measured thickness is less than the dry fiber alone fills: check the caliper, the number of plies and the fiber areal weight.',
    );
  const kept = resinMm / laid.resinMm;
  if (kept > 1 + 1e-9)
    throw new Problem(
      'laminate.thickerThanLaid',
      'The measured thickness is more than the fiber, the resin and these voids can fill: check the caliper, the resin content and the void share.',
    );
  return contentOf(laid, Math.max(0, 1 - kept), voidFraction);
}

export interface WeighedOffcut {
  readonly arealMassGsm: number;
  /** Measured; replaces the card's. */
  readonly resinMassFraction: number;
  /** Resin weighed over resin on the cards, less 1: negative is resin lost, positive a richer roll. */
  readonly resinChangeShare: number;
}

/** Resin content from an offcut of the whole stack on a scale, laid or cured, fiber areal weight taken from the cards. */
export function weighedOffcut(plies: readonly PlyMaterial[], massG: number, areaMm2: number): WeighedOffcut {
  if (!(massG > 0 && areaMm2 > 0))
    throw new Problem('laminate.notPositive', 'The mass and the area of the offcut must be more than zero.');
  const laid = laidIn(plies);
  const arealMassGsm = massG / (areaMm2 * 1e-6);
  const resinGsm = arealMassGsm - laid.fiberGsm;
  if (!(resinGsm > 0))
    throw new Problem(
      'laminate.lighterThanFiber',
      'The offcut weighs less than its dry fiber: check the scale, its area and the number of plies in it.',
    );
  return {
    arealMassGsm,
    resinMassFraction: resinGsm / arealMassGsm,
    resinChangeShare: resinGsm / laid.resinGsm - 1,
  };
}

/**
 * Void fraction from a measured density: 1 − ρ (wf/ρf + wr/ρr). A result below zero is no negative void: it says that a
 * density or the resin content is off. Source: `voidContentStandard` in core/sources.
 */
export function voidFractionFromDensity(
  measuredGCm3: number,
  card: Pick<PlyMaterial, 'resinMassFraction' | 'fiberDensityGCm3' | 'resinDensityGCm3'>,
): number {
  if (!(measuredGCm3 > 0))
    throw new Problem('laminate.notPositive', 'The measured density must be more than zero.');
  const { resinMassFraction, fiberDensityGCm3, resinDensityGCm3 } = card;
  return (
    1 - measuredGCm3 * ((1 - resinMassFraction) / fiberDensityGCm3 + resinMassFraction / resinDensityGCm3)
  );
}

function laidIn(plies: readonly PlyMaterial[]): LaidIn {
  if (plies.length === 0)
    throw new Problem('laminate.noPlies', 'The stack has no plies: add at least one ply.');
  const total = (of: (ply: PlyMaterial) => number) => compensatedSum(plies.map(of));
  const fiberGsm = total((ply) => ply.arealWeightGsm);
  const fiberMm = total((ply) => ply.arealWeightGsm / (1000 * ply.fiberDensityGCm3));
  return {
    fiberGsm,
    resinGsm: total(prepregArealMassGsm) - fiberGsm,
    fiberMm,
    resinMm: total(curedThicknessMm) - fiberMm,
  };
}

function checkedVoidFraction(voidFraction: number): number {
  if (!(voidFraction >= 0 && voidFraction < 0.5))
    throw new Problem('laminate.voids', 'The void share of the volume must be from 0 to less than 0.5.');
  return voidFraction;
}

function contentOf(laid: LaidIn, resinLostShare: number, voidFraction: number): LaminateContent {
  const { fiberGsm, fiberMm } = laid;
  const resinGsm = laid.resinGsm * (1 - resinLostShare);
  const thicknessMm = (fiberMm + laid.resinMm * (1 - resinLostShare)) / (1 - voidFraction);
  const arealMassGsm = fiberGsm + resinGsm;
  return {
    thicknessMm,
    fiberVolumeFraction: fiberMm / thicknessMm,
    voidFraction,
    fiberMassFraction: fiberGsm / arealMassGsm,
    densityGCm3: arealMassGsm / (1000 * thicknessMm),
    arealMassGsm,
    fiberGsm,
    resinGsm,
    resinLostGsm: laid.resinGsm - resinGsm,
    resinLostShare,
  };
}
