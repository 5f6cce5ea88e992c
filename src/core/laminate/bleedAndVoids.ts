/**
 * What is in the laminate after cure, when some resin was pressed out and some air stayed in. The fiber stays; fiber,
 * resin and voids fill the thickness. Exact arithmetic of the card's numbers (`plyVolumeSum` in core/sources).
 */
import { Problem } from '../problem';
import type { PlyMaterial } from './plyThickness';
import { stackVolume, type StackVolume } from './stackVolume';

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

/** `resinLostShare` of each ply's resin by mass, `voidFraction` of the laminate's volume; both 0 to below 1. */
export function contentAfterBleed(
  plies: readonly PlyMaterial[],
  resinLostShare: number,
  voidFraction: number,
): LaminateContent {
  if (!(resinLostShare >= 0 && resinLostShare < 1))
    throw new Problem('laminate.bleed', 'The share of resin lost must be from 0 to less than 1.');
  return contentOf(stackVolume(plies), resinLostShare, checkedVoidFraction(voidFraction));
}

/** The same of a stack whose volumes are known, e.g. by a weighed plate. */
export function contentOfVolume(
  volume: StackVolume,
  resinLostShare: number,
  voidFraction: number,
): LaminateContent {
  return contentOf(volume, resinLostShare, checkedVoidFraction(voidFraction));
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
  const laid = stackVolume(plies);
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

function checkedVoidFraction(voidFraction: number): number {
  if (!(voidFraction >= 0 && voidFraction < 1))
    throw new Problem('laminate.voids', 'The void share of the volume must be from 0 to less than 1.');
  return voidFraction;
}

function contentOf(laid: StackVolume, resinLostShare: number, voidFraction: number): LaminateContent {
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
