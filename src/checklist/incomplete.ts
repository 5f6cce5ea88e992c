import { whyAwaited } from '../steps/kit/awaited';
import type { StepContext } from '../steps/shared/context';

/** Why a sheet that is printed now would lack results, a sentence each; none when all is in. */
export function incompleteReasons({ pattern, awaited = [] }: StepContext): readonly string[] {
  if (pattern === null && awaited.length === 0) return ['No pattern is imported.'];
  return awaited.map((result) => whyAwaited(result).reason);
}
