/**
 * How stiff the laminate's wall is in bending, told against plates that a maker knows. Material constants are from
 * memory (`materialsFromMemory` in core/sources); the plate relation is D = E t³ / (12 (1 − ν²)), `timoshenkoPlates`.
 */
import { Problem } from '../problem';
import type { Laminate } from './lamination';

export interface ReferenceMaterial {
  readonly key: 'steel' | 'aluminum' | 'printedPlastic';
  readonly label: string;
  readonly eGPa: number;
  readonly nu: number;
  /** Lowest and highest plausible modulus, GPa. */
  readonly bandGPa: readonly [number, number];
}

/** From memory. The printed plastic is dense, at room temperature, and bent along its lines. */
export const referenceMaterials: readonly ReferenceMaterial[] = [
  { key: 'steel', label: 'steel', eGPa: 205, nu: 0.29, bandGPa: [195, 212] },
  { key: 'aluminum', label: 'aluminum', eGPa: 69, nu: 0.33, bandGPa: [68, 73] },
  { key: 'printedPlastic', label: 'printed plastic', eGPa: 2.4, nu: 0.36, bandGPa: [1.5, 3.5] },
];

/** Bending stiffness per width of the laminate as a wide wall, N·mm: D − B A⁻¹ B along x and along y. */
export function bendingStiffnessNmm(laminate: Laminate): { readonly xNmm: number; readonly yNmm: number } {
  return { xNmm: laminate.freeBendingNmm[0][0], yNmm: laminate.freeBendingNmm[1][1] };
}

/** Bending stiffness per width of a uniform wide plate, N·mm. */
export function plateStiffnessNmm(eGPa: number, nu: number, thicknessMm: number): number {
  return (1000 * eGPa * thicknessMm ** 3) / (12 * (1 - nu * nu));
}

export interface PlateComparison {
  readonly material: ReferenceMaterial;
  /** Bending stiffness of the laminate over that of a plate `referenceThicknessMm` thick. */
  readonly stiffnessRatio: number;
  /** The plate of this material that bends just as much, mm. */
  readonly equalThicknessMm: number;
}

/**
 * Against plates of `referenceThicknessMm`: give the laminate's own thickness, or the printed wall. `laminateNmm` is
 * one direction's bending stiffness per width.
 */
export function compareWithPlates(
  laminateNmm: number,
  referenceThicknessMm: number,
): readonly PlateComparison[] {
  if (!(laminateNmm > 0 && referenceThicknessMm > 0))
    throw new Problem(
      'laminate.notPositive',
      'The bending stiffness and the thickness of the plate to compare with must be more than zero.',
    );
  return referenceMaterials.map((material) => {
    const unitNmm = plateStiffnessNmm(material.eGPa, material.nu, 1);
    return {
      material,
      stiffnessRatio: laminateNmm / (unitNmm * referenceThicknessMm ** 3),
      equalThicknessMm: Math.cbrt(laminateNmm / unitNmm),
    };
  });
}
