/** Why nothing can be said yet, in the same words at every step. */
import type { MeasuredPart, Missing, PatternRecord, StepContext } from './context';

export type { Missing };

/** The measured part, or what is missing before it can be had. */
export type Available =
  | { readonly known: true; readonly pattern: PatternRecord; readonly measured: MeasuredPart }
  | ({ readonly known: false } & Missing);

export function availablePart({ pattern, measured, held = null }: StepContext): Available {
  if (pattern === null)
    return {
      known: false,
      reason: 'No pattern is imported yet.',
      fix: 'Import the model of the printed pattern at the Part step.',
    };
  if (held !== null) return { known: false, ...held };
  if (measured === null)
    return {
      known: false,
      reason: 'The pattern is not measured yet.',
      fix: 'Wait until the measurement has ended; start it again if it was canceled.',
    };
  return { known: true, pattern, measured };
}
