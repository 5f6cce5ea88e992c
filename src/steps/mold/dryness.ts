/** How far each half has dried, from its log. */
import { dryTargetFromFreshG, dryToleranceG } from '../../core/stone/drying';
import { dryingState, type DryingState, type Weighing } from '../../core/stone/dryingLog';
import { Problem } from '../../core/problem';
import type { StepContext } from '../context';
import type { Answer, Half, MoldWork } from './work';

export interface HalfDryness {
  readonly log: readonly Weighing[];
  readonly state: DryingState;
  readonly toleranceG: number;
  /** From the fresh weight when the log starts at 0 h, else from the volume. */
  readonly targetG: number;
  readonly targetBy: 'fresh weight' | 'volume';
}

/** Weighings of one half, in the order of the log. */
export function weighingsOf({ inputs }: StepContext, half: Half): readonly Weighing[] {
  return inputs.mold.dryingLog.flatMap(({ hours, negativeG, positiveG }) => {
    const grams = half === 'negative' ? negativeG : positiveG;
    return grams === null ? [] : [{ hours, grams }];
  });
}

/** Stone weighed within this time of demolding has lost next to nothing yet (common practice). */
const freshHours = 0.5;

export function halfDryness(context: StepContext, work: MoldWork, half: Half): Answer<HalfDryness> {
  const answer = work.half[half];
  if (!answer.known) return answer;
  if (!work.mix.known) return work.mix;
  const log = weighingsOf(context, half);
  const { stone } = answer.value;
  const toleranceG = dryToleranceG(stone.freeWaterG, context.inputs.mold.scaleStepG);
  const [first] = log;
  const fresh = first !== undefined && first.hours <= freshHours ? first.grams : null;
  try {
    return {
      known: true,
      value: {
        log,
        state: dryingState(log, toleranceG),
        toleranceG,
        targetG: fresh === null ? stone.dryG : dryTargetFromFreshG(fresh, work.mix.value),
        targetBy: fresh === null ? 'volume' : 'fresh weight',
      },
    };
  } catch (error) {
    if (error instanceof Problem) return { known: false, why: error.message };
    throw error;
  }
}
