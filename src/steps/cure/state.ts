/** The prediction in use by figures, verdicts, sheet and checklist, or what is missing before it can be had. */
import type { CurePrediction, PredictedRun } from '../../core/cure/predictCure';
import type { StepContext } from '../shared/context';
import { availablePart, type Missing } from '../shared/missing';
import { cureChoicesOf } from './cureChoicesOf';

export type CureAnswer =
  | { readonly known: true; readonly prediction: CurePrediction; readonly middle: PredictedRun }
  | ({ readonly known: false } & Missing);

export function cureState(context: StepContext): CureAnswer {
  const choices = cureChoicesOf(context.inputs);
  if (!choices.known)
    return { known: false, reason: choices.why, fix: 'Correct that input; the prediction follows at once.' };
  const part = availablePart(context);
  if (!part.known) return part;
  const problem = context.cureProblem ?? null;
  if (problem !== null)
    return { known: false, reason: problem, fix: 'Correct that input; the prediction follows at once.' };
  const prediction = context.cure ?? null;
  const middle = prediction?.runs.find(({ treatment }) => treatment === 'vapor-held');
  if (prediction === null || middle === undefined)
    return {
      known: false,
      reason: 'The oven run is not worked out yet.',
      fix: 'Wait until the prediction has ended; start it again if it was canceled.',
    };
  return { known: true, prediction, middle };
}
