/** How far each half has dried, from its log. */
import {
  dryTargetFromFreshG,
  dryToleranceG,
  expectedShare,
  freeWaterFromFreshG,
} from '../../core/stone/drying';
import { dryingState, type DryingState, type Weighing } from '../../core/stone/dryingLog';
import type { HalfStone } from '../../core/stone/pourBatch';
import type { StoneMix } from '../../core/stone/stoneMix';
import { Problem } from '../../core/problem';
import type { StepContext } from '../shared/context';
import type { Answer, Half, MoldWork } from './work';

/** What the mix lets expect of a half, g. */
export interface ExpectedWeights {
  readonly dryG: number;
  /** Fresh from the box; all of it leaves on drying. */
  readonly freeWaterG: number;
  /** From the fresh weight when the log starts with it, else from the volume, which is far less sure. */
  readonly by: 'fresh weight' | 'volume';
}

export interface HalfDryness {
  readonly log: readonly Weighing[];
  readonly state: DryingState;
  /** By how much a steady weight may fall. */
  readonly toleranceG: number;
  readonly expected: ExpectedWeights;
  /** How far a dry half may lie off the expected weight. */
  readonly offG: number;
  /** Free water left at the last weighing, share of what the mix left; below 0: lighter than dry. null: not weighed. */
  readonly waterLeftShare: number | null;
  /** false when one step of the scale is more than `offG`. */
  readonly scaleTells: boolean;
  /** The weight is steady and the expected one. */
  readonly isDry: boolean;
}

/** Weighings of one half, in the order of the log. */
function weighingsOf({ inputs }: Pick<StepContext, 'inputs'>, half: Half): readonly Weighing[] {
  return inputs.mold.dryingLog.flatMap(({ hours, negativeG, positiveG }) => {
    const grams = half === 'negative' ? negativeG : positiveG;
    return grams === null ? [] : [{ hours, grams }];
  });
}

/** Stone weighed within this time of demolding has lost next to nothing yet (common practice). */
const freshHours = 0.5;

export function halfDryness(
  context: Pick<StepContext, 'inputs'>,
  { mix, half: ofHalves }: Pick<MoldWork, 'mix' | 'half'>,
  half: Half,
): Answer<HalfDryness> {
  if (!mix.known) return mix;
  const log = weighingsOf(context, half);
  const [first] = log;
  const isFresh = first !== undefined && first.hours <= freshHours;
  // A fresh weight tells without the volume, so also while the pours are not worked out.
  const stone = ofHalves[half];
  if (!isFresh && !stone.known) return stone;
  try {
    const expected =
      isFresh || !stone.known
        ? expectedByFresh(first!.grams, mix.value)
        : expectedByVolume(stone.value.stone);
    return { known: true, value: drynessOf(log, expected, context.inputs.mold.scaleStepG) };
  } catch (error) {
    if (error instanceof Problem) return { known: false, why: error.message };
    throw error;
  }
}

const expectedByVolume = ({ dryG, freeWaterG }: HalfStone): ExpectedWeights => ({
  dryG,
  freeWaterG,
  by: 'volume',
});

const expectedByFresh = (freshG: number, mix: StoneMix): ExpectedWeights => ({
  dryG: dryTargetFromFreshG(freshG, mix),
  freeWaterG: freeWaterFromFreshG(freshG, mix),
  by: 'fresh weight',
});

function drynessOf(log: readonly Weighing[], expected: ExpectedWeights, scaleStepG: number): HalfDryness {
  const { dryG, freeWaterG } = expected;
  const toleranceG = dryToleranceG(freeWaterG, scaleStepG);
  const state = dryingState(log, toleranceG);
  const offG = expectedShare * freeWaterG;
  const last = log[log.length - 1];
  const scaleTells = scaleStepG <= offG;
  return {
    log,
    state,
    toleranceG,
    expected,
    offG,
    waterLeftShare: last === undefined || !(freeWaterG > 0) ? null : (last.grams - dryG) / freeWaterG,
    scaleTells,
    isDry: state.word === 'steady' && scaleTells && last !== undefined && Math.abs(last.grams - dryG) <= offG,
  };
}
