/** How far a cloth can shear before it wrinkles, and what shear makes of its thickness. */
import type { FigureStatus } from '../figure';

export type ClothKind = 'woven' | 'unidirectional' | 'non-crimp';

export interface ShearLimits {
  /** From here on wrinkles show. */
  readonly warningDeg: number;
  /** Threads lie side by side: it shears no further. */
  readonly lockingDeg: number;
  readonly status: FigureStatus;
  /** Whose they are, in the maker's words. */
  readonly of: string;
}

/**
 * Typical angles, from memory: 2x2 twill 40 and 54 degrees, plain weave 28 and 45, which also stands for a stitched cloth. A
 * unidirectional tape has no threads across that could turn: it spreads or bunches instead, so a few degrees are its limit (common
 * practice), and a face of double curvature is laid in strips.
 */
const typical: Readonly<Record<ClothKind, ShearLimits>> = {
  woven: { warningDeg: 40, lockingDeg: 54, status: 'from memory', of: '2×2 twill' },
  'non-crimp': { warningDeg: 28, lockingDeg: 45, status: 'from memory', of: 'plain weave or stitched cloth' },
  unidirectional: { warningDeg: 5, lockingDeg: 15, status: 'common practice', of: 'unidirectional tape' },
};

/** What the card says, else what is typical; one entered angle keeps the other on its side of it. */
export function shearLimits(
  kind: ClothKind,
  entered: { readonly warningDeg: number | null; readonly lockingDeg: number | null },
): ShearLimits {
  const usual = typical[kind];
  if (entered.warningDeg === null && entered.lockingDeg === null) return usual;
  const warningDeg = entered.warningDeg ?? Math.min(usual.warningDeg, entered.lockingDeg ?? Infinity);
  const lockingDeg = entered.lockingDeg ?? Math.max(usual.lockingDeg, warningDeg);
  return { warningDeg, lockingDeg, status: 'your entry', of: 'the material card' };
}

/**
 * Thickness, and mass per area, of sheared cloth over flat cloth: its threads are closer by the cosine of the shear, 1 / cos(shear).
 * In a gap that does not give way the fiber fraction rises by the same factor.
 * @param shearRad under a quarter turn
 */
export const shearedThickness = (shearRad: number): number => 1 / Math.cos(shearRad);
