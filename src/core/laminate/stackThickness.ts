/** Thickness and mass of a whole ply stack: sums over its plies. */
import { compensatedSum } from '../numeric/compensatedSum';
import { curedThicknessMm, laidPlyThicknessMm, prepregArealMassGsm, type PlyMaterial } from './plyThickness';

export interface StackThickness {
  readonly plies: number;
  /** Before closing and cure. */
  readonly laidMm: number;
  /** After cure with no bleed and no voids. */
  readonly curedMm: number;
  /** Prepreg (fiber and resin) per area of part, all plies together, g/m². */
  readonly arealMassGsm: number;
  /** Dry fiber per area of part, all plies together, g/m². */
  readonly fiberGsm: number;
}

/** `bulkFactor` (laid over cured, dimensionless) stands in for cards without a measured thickness as laid. */
export function stackThickness(plies: readonly PlyMaterial[], bulkFactor: number): StackThickness {
  return {
    plies: plies.length,
    laidMm: compensatedSum(plies.map((ply) => laidPlyThicknessMm(ply, bulkFactor))),
    curedMm: compensatedSum(plies.map(curedThicknessMm)),
    arealMassGsm: compensatedSum(plies.map(prepregArealMassGsm)),
    fiberGsm: compensatedSum(plies.map((ply) => ply.arealWeightGsm)),
  };
}
