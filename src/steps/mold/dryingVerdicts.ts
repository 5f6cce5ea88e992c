/** Is the drying safe for the stone, and are the halves dry? */
import type { Verdict } from '../../core/figure';
import { dryingLimitsC, expectedShare, steadyHours } from '../../core/stone/drying';
import type { Weighing } from '../../core/stone/dryingLog';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { halfDryness, type HalfDryness } from '../stone/dryness';
import { celsius, grams } from './say';
import { halves, type Half, type MoldWork } from '../stone/work';

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
    reason: `${plan}: hotter than the ${celsius(dryingLimitsC.enteringAir)} of any entering air. Damp stone can burst from its own steam, and its surface turns to weak plaster.`,
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
  const { log, state, expected, isDry, offG, toleranceG } = dryness.value;
  const last = log[log.length - 1];
  if (last === undefined || state.word === 'too few weighings')
    return {
      id,
      word: 'not yet known',
      reason: `The ${half}: ${state.reason}`,
      fix: `Weigh it every few hours; it should stop near ${grams(expected.dryG)}.`,
    };
  if (state.word === 'not yet') return { id, word: 'look again', ...notYet(half, dryness.value, last) };
  if (isDry)
    return {
      id,
      word: 'go',
      reason: `The ${half} is dry: ${grams(last.grams)}, no fall beyond ${formatNumber(toleranceG, 1)} g over ${formatNumber(state.steadyForHours ?? 0, 1)} h, and within ${formatNumber(offG, 1)} g of ${expectedWords(dryness.value)}.`,
      fix: '',
    };
  return { id, ...steadyButOff(half, dryness.value, last) };
}

const expectedWords = ({ expected }: HalfDryness) => `${grams(expected.dryG)} by its ${expected.by}`;

function notYet(half: Half, dryness: HalfDryness, last: Weighing): Pick<Verdict, 'reason' | 'fix'> {
  const { state, waterLeftShare } = dryness;
  const target = expectedWords(dryness);
  const left =
    waterLeftShare !== null && waterLeftShare > 0
      ? ` About ${formatNumber(100 * waterLeftShare, 0)} % of its free water is still in.`
      : '';
  return {
    reason: `The ${half} is not dry yet: ${grams(last.grams)} at ${formatNumber(last.hours, 1)} h, dry near ${state.endG === null ? target : `${grams(state.endG)} (fitted; ${target})`}.${left} ${state.reason}`,
    fix:
      state.hoursLeft === null
        ? `Keep drying and weigh again ${steadyHours} h or more after the last time.`
        : `Keep drying for about ${formatNumber(state.hoursLeft, 1)} h more and weigh again. Damp stone in the oven steams and holds the laminate cold.`,
  };
}

/** A weight that holds, but is not the one that dry stone of this mix has, or none that this scale can tell. */
function steadyButOff(half: Half, dryness: HalfDryness, last: Weighing): Omit<Verdict, 'id'> {
  const { expected, offG, scaleTells } = dryness;
  const target = expectedWords(dryness);
  const allowed = `a dry half lies within ${formatNumber(offG, 1)} g of it (${formatNumber(100 * expectedShare, 0)} % of its free water)`;
  if (!scaleTells)
    return {
      word: 'not yet known',
      reason: `The ${half} no longer falls at ${grams(last.grams)} (${target}), but ${allowed}, and one step of this scale is more.`,
      fix: 'Weigh on a scale with finer steps, and enter its step.',
    };
  const unsure =
    expected.by === 'volume'
      ? ' The half was not weighed fresh, and a volume tells its weight to 2 % only: weigh the next one as it leaves the box.'
      : '';
  return last.grams > expected.dryG
    ? {
        word: 'look again',
        reason: `The ${half} no longer falls at ${grams(last.grams)}, yet ${target} is dry, and ${allowed}: water is still held, or the mix was another.${unsure}`,
        fix: 'Move it to drier air with a fan and weigh again tomorrow; sealed faces do not dry.',
      }
    : {
        word: 'look again',
        reason: `The ${half} weighs ${grams(last.grams)}, less than dry stone can (${target}), and ${allowed}: crystal water is lost, or the mix was another.${unsure}`,
        fix: 'Stop heating. Scratch the surface with a nail: chalk means plaster.',
      };
}
