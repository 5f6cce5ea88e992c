/**
 * Glass transition temperature from the degree of cure, DiBenedetto's form:
 * Tg = Tg0 + (Tg∞ − Tg0) λ α / (1 − (1 − λ) α). The constants are the user's (`diBenedetto` in core/sources).
 */
import { Problem } from '../problem';

export interface GlassConstants {
  /** Of the uncured resin, °C. */
  readonly uncuredC: number;
  /** Of the fully cured resin, °C. */
  readonly fullyCuredC: number;
  /** Between 0 and 1, dimensionless. */
  readonly lambda: number;
}

/** @throws Problem `cure.glassConstants` */
export function glassTransitionC(degreeOfCure: number, constants: GlassConstants): number {
  const { uncuredC, fullyCuredC, lambda } = constants;
  if (!(lambda > 0 && lambda <= 1) || !(fullyCuredC > uncuredC))
    throw new Problem(
      'cure.glassConstants',
      'The Tg constants need a Tg of the cured resin above that of the uncured one, and a λ between 0 and 1.',
    );
  return uncuredC + ((fullyCuredC - uncuredC) * lambda * degreeOfCure) / (1 - (1 - lambda) * degreeOfCure);
}
