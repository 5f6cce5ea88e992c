/** The unit that the part is taken in, and how sure that is. */
import type { LengthUnit } from '../../core/units/length';
import { mmPerUnit } from '../../core/units/length';
import type { StepContext } from '../shared/context';

export interface TakenUnit {
  readonly unit: LengthUnit;
  readonly how: 'confirmed' | 'declared' | 'plausible' | 'guessed';
  /** Factor from file units to part mm: unit and scale together. */
  readonly mmPerFileUnit: number;
}

/** null while nothing is measured: the guess needs the box. */
export function takenUnit({ inputs, pattern, measured }: StepContext): TakenUnit | null {
  if (measured === null || pattern === null) return null;
  const { unit: confirmed, scale } = inputs.part;
  const { unitGuess } = measured;
  const unit = confirmed === 'unconfirmed' ? (pattern.declaredUnit ?? unitGuess.unit) : confirmed;
  const mmPerFileUnit = mmPerUnit[unit] * scale;
  if (confirmed !== 'unconfirmed') return { unit, how: 'confirmed', mmPerFileUnit };
  if (pattern.declaredUnit !== null && unitGuess.sure) return { unit, how: 'declared', mmPerFileUnit };
  return { unit, how: unitGuess.sure ? 'plausible' : 'guessed', mmPerFileUnit };
}
