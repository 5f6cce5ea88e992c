/**
 * The stack as if it were one material.
 *
 * In-plane moduli come in two kinds that differ only where B is not zero. Held flat (a = A⁻¹): what the wall of a
 * closed shell feels, since its own shape keeps it from curling. Free to curl (a of the whole compliance): what a loose
 * strip feels when pulled. For a symmetric stack both are the same. Flexural moduli always use the whole compliance,
 * because a bent wall may shift its neutral surface.
 *
 * Source: `kaw2006` in core/sources, chapter 4 (symmetric stacks); the other kinds follow from the same relations.
 */
import type { Matrix3 } from '../numeric/matrix3';
import type { Laminate } from './lamination';

export interface PlateModuli {
  readonly exGPa: number;
  readonly eyGPa: number;
  readonly gxyGPa: number;
  /** Strain along y over strain along x, for a pull along x, sign turned. */
  readonly nuXy: number;
  readonly nuYx: number;
}

export interface EffectiveModuli {
  readonly heldFlat: PlateModuli;
  readonly freeToCurl: PlateModuli;
  /** Of a uniform plate of the same thickness that bends as easily: E = 12 / (h³ d11) and so on. */
  readonly flexural: PlateModuli;
}

/** Moduli in GPa for the laminate's x and y. */
export function effectiveModuli(laminate: Laminate): EffectiveModuli {
  const { thicknessMm, heldFlatMmPerN, compliance } = laminate;
  return {
    heldFlat: moduliOf(heldFlatMmPerN, thicknessMm),
    freeToCurl: moduliOf(compliance.aMmPerN, thicknessMm),
    flexural: moduliOf(compliance.dPerNmm, thicknessMm ** 3 / 12),
  };
}

/** `section` is what divides a uniform plate's compliance: h for stretching, h³ / 12 for bending. */
function moduliOf(compliance: Matrix3, section: number): PlateModuli {
  const gpa = (entry: number) => 1 / (1000 * section * entry);
  return {
    exGPa: gpa(compliance[0][0]),
    eyGPa: gpa(compliance[1][1]),
    gxyGPa: gpa(compliance[2][2]),
    nuXy: -compliance[0][1] / compliance[0][0],
    nuYx: -compliance[0][1] / compliance[1][1],
  };
}
