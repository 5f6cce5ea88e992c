/** Is the drying safe for the stone, and are the halves dry? */
import type { Verdict } from '../../core/figure';
import { dryingLimitsC } from '../../core/stone/drying';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../context';
import { halfDryness } from './dryness';
import { celsius, grams } from './say';
import { halves, type Half, type MoldWork } from './work';

/** Lighter than the dry target by more than this share of it is lost crystal water or a wrong mix (common practice). */
const overdriedShare = 0.03;

export function dryingVerdict({ inputs }: StepContext): Verdict {
  const id = 'mold.drying';
  const { dryingC, dryingHours } = inputs.mold;
  const plan = `Drying at ${celsius(dryingC)}, ${formatNumber(dryingHours, 0)} h planned`;
  if (dryingC <= dryingLimitsC.usual)
    return {
      id,
      word: 'go',
      reason: `${plan}: under the ${celsius(dryingLimitsC.usual)} to keep (common practice). Weigh until it stops falling.`,
      fix: '',
    };
  if (dryingC <= dryingLimitsC.enteringAir)
    return {
      id,
      word: 'look again',
      reason: `${plan}. Keep the stone under ${celsius(dryingLimitsC.usual)}; it turns chalky from about ${celsius(dryingLimitsC.chalky)} (from memory). Air up to ${celsius(dryingLimitsC.enteringAir)} is for entering a dryer while the stone is still damp (a maker’s drying guide).`,
      fix: `Dry at ${celsius(45)} with a fan.`,
    };
  return {
    id,
    word: 'stop',
    reason: `${plan}: hotter than the ${celsius(dryingLimitsC.enteringAir)} of any entering air. Damp stone can burst from its own steam, and its surface turns back to plaster.`,
    fix: `Dry at ${celsius(45)} with a fan for a day or more.`,
  };
}

/** One verdict for each half that has been weighed. */
export function dryVerdicts(context: StepContext, work: MoldWork): readonly Verdict[] {
  if (context.inputs.mold.dryingLog.length === 0) return [];
  return halves.map((half) => dryVerdict(context, work, half));
}

function dryVerdict(context: StepContext, work: MoldWork, half: Half): Verdict {
  const id = `mold.${half}.dry`;
  const dryness = halfDryness(context, work, half);
  if (!dryness.known)
    return {
      id,
      word: 'not yet known',
      reason: dryness.why,
      fix: 'Correct the drying log, or wait until the pours are worked out.',
    };
  const { log, state, targetG, targetBy } = dryness.value;
  const last = log[log.length - 1];
  if (last === undefined || state.word === 'too few weighings')
    return {
      id,
      word: 'not yet known',
      reason: `The ${half}: ${state.reason}`,
      fix: `Weigh it every few hours; it should stop near ${grams(targetG)}.`,
    };
  const target = `${grams(targetG)} by its ${targetBy}`;
  if (state.word === 'not yet')
    return {
      id,
      word: 'look again',
      reason: `The ${half} is not dry yet: ${grams(last.grams)} at ${formatNumber(last.hours, 1)} h, dry near ${state.endG === null ? target : `${grams(state.endG)} (fitted; ${target})`}. ${state.reason}`,
      fix:
        state.hoursLeft === null
          ? 'Keep drying and weigh again later.'
          : `Keep drying for about ${formatNumber(state.hoursLeft, 1)} h more and weigh again. Damp stone in the oven steams and holds the laminate cold.`,
    };
  const share = last.grams / targetG - 1;
  if (Math.abs(share) <= overdriedShare)
    return {
      id,
      word: 'go',
      reason: `The ${half} is dry: ${grams(last.grams)} and no longer falling (${target}).`,
      fix: '',
    };
  return {
    id,
    word: 'look again',
    reason:
      share > 0
        ? `The ${half} no longer falls at ${grams(last.grams)}, yet ${target} is dry: water is still held, or the mix was another.`
        : `The ${half} weighs ${grams(last.grams)}, less than dry stone can (${target}): crystal water is lost, or the mix was another.`,
    fix:
      share > 0
        ? 'Move it to drier air with a fan and weigh again tomorrow; sealed faces do not dry.'
        : 'Stop heating. Scratch the surface with a nail: chalk means plaster.',
  };
}
