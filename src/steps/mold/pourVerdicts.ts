/** Does the mix suffice and join, does the pattern stay down, and does the stone stay cool enough for it? */
import type { Verdict } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { hottestHalf } from './hottestHalf';
import { celsius, grams } from './say';
import { halves, type MoldWork } from '../stone/work';

const newton = (force: number) => `${formatNumber(force, 2)} N`;
const minutes = (value: number) => `${formatNumber(value, 1)} min`;

export function mixVerdict({ mix, stone }: MoldWork): Verdict {
  const id = 'mold.mix';
  if (!mix.known) return { id, word: 'stop', reason: mix.why, fix: 'Take the ratio that stands on the bag.' };
  const { card, waterPowderRatio, strengthMPa } = stone;
  const { low, high } = card.waterPowderRatio;
  const ratio = formatNumber(waterPowderRatio.value, 3);
  if (card.type <= 2)
    return {
      id,
      word: 'look again',
      reason: `${card.name}: ${formatNumber(strengthMPa.value, 0)} MPa and much free water. ${card.use}`,
      fix: '',
    };
  if (waterPowderRatio.value < low || waterPowderRatio.value > high)
    return {
      id,
      word: 'look again',
      reason: `W/P ${ratio} lies outside the ${formatNumber(low, 2)} to ${formatNumber(high, 2)} that is usual for ${card.name}. Water is no way to tune expansion: it takes strength.`,
      fix: 'Check it against the bag; if the bag says so, go on.',
    };
  return {
    id,
    word: 'go',
    reason: `W/P ${ratio} (${waterPowderRatio.how}): slurry ${formatNumber(mix.value.slurryDensityGMl, 2)} g/mL, ${formatNumber(mix.value.freeWaterPercentOfWet, 1)} % of the fresh weight has to dry out.`,
    fix: '',
  };
}

export function layersVerdict({ half, stone }: MoldWork): Verdict {
  const id = 'mold.layers';
  const { negative, positive } = half;
  if (!negative.known || !positive.known)
    return {
      id,
      word: 'not yet known',
      reason: negative.known ? (positive.known ? '' : positive.why) : negative.why,
      fix: 'The batches follow from the volumes, the bowl and the working time.',
    };
  const plans = { negative: negative.value.plan, positive: positive.value.plan };
  const oldest = Math.max(plans.negative.joinAgeMin, plans.positive.joinAgeMin);
  const named = halves
    .map(
      (name) => `${name} ${plans[name].batches === 1 ? 'in one batch' : `in ${plans[name].batches} batches`}`,
    )
    .join(', ');
  const fix =
    'Take a larger bowl, mix under vacuum, or let a second person mix; else roughen and wet the set layer before the next.';
  if (oldest <= stone.workingMin.value)
    return {
      id,
      word: 'go',
      reason:
        oldest === 0
          ? `${named}: nothing to join.`
          : `${named}: a layer is ${minutes(oldest)} old when the next reaches it, still flowing (${minutes(stone.workingMin.value)}): wet on wet.`,
      fix: '',
    };
  const word = oldest <= stone.initialSetMin.value ? 'look again' : 'stop';
  return {
    id,
    word,
    reason: `${named}: a layer is ${minutes(oldest)} old when the next reaches it; it flows for ${minutes(stone.workingMin.value)} and sets from ${minutes(stone.initialSetMin.value)}. ${word === 'stop' ? 'The layers will not join.' : 'It has stiffened: the joint traps air.'}`,
    fix,
  };
}

export function floatVerdict({ inputs }: StepContext, { float }: MoldWork): Verdict {
  const id = 'mold.float';
  if (!float.known)
    return {
      id,
      word: 'not yet known',
      reason: float.why,
      fix: 'The uplift follows from the envelope of the pattern.',
    };
  const { pourMethod } = inputs.mold;
  const { netUpliftN, counterweightG, ifLeakingN, ifLeakingG, sealPressureKPa } = float.value;
  if (pourMethod === 'board, sealed' && ifLeakingN > 0)
    return {
      id,
      word: 'look again',
      reason: `Sealed to the board the pattern is pressed down; it relies on the seal holding ${formatNumber(sealPressureKPa ?? 0, 2)} kPa all round. Should it let go, ${newton(ifLeakingN)} lift it.`,
      fix: `Seal with clay or double-sided tape all round, pour the first centimeter and let it stiffen, and hold the pattern down with ${grams(ifLeakingG)} or screws all the same.`,
    };
  if (netUpliftN < 0 && pourMethod === 'pressed in')
    return {
      id,
      word: 'look again',
      reason: `The pattern is heavier than the slurry it displaces and sinks with ${newton(-netUpliftN)}.`,
      fix: 'Hang the rim on the box with strips so that it stays flush.',
    };
  return {
    id,
    word: 'go',
    reason:
      counterweightG > 0
        ? `The slurry lifts the pattern with ${newton(netUpliftN)}: lay ${grams(counterweightG)} on it, spread over the rim, before the stone is in.`
        : 'Nothing lifts the pattern.',
    fix: '',
  };
}

export function heatVerdict({ inputs }: StepContext, work: MoldWork): Verdict {
  const id = 'mold.heat';
  const { measured, patternSoftensC } = inputs.mold;
  const softens = `the pattern softens at ${celsius(patternSoftensC)}`;
  if (measured.peakC !== null)
    return measured.peakC < patternSoftensC
      ? { id, word: 'go', reason: `Measured peak ${celsius(measured.peakC)}; ${softens}.`, fix: '' }
      : { id, word: 'stop', reason: `Measured peak ${celsius(measured.peakC)}; ${softens}.`, fix: '' };
  const hottest = hottestHalf(work);
  if (!hottest.known)
    return {
      id,
      word: 'not yet known',
      reason: hottest.why,
      fix: 'The peak follows from the size of the pour.',
    };
  const { half, heat } = hottest.value;
  const reason = `The ${half} gets to about ${celsius(heat.peakC)} inside (${celsius(heat.lowC)} to ${celsius(heat.highC)}, constants from memory); ${softens}.`;
  if (heat.highC < patternSoftensC) return { id, word: 'go', reason, fix: '' };
  if (heat.lowC >= patternSoftensC) return { id, word: 'stop', reason, fix: '' };
  // The estimate is on the safe side; the trial cup that the paper asks for tells the rest.
  if (heat.peakC < patternSoftensC)
    return { id, word: 'go', reason: `${reason} A trial cup before the pour tells.`, fix: '' };
  return {
    id,
    word: 'look again',
    reason,
    fix: `Cheap test: fill a cup as thick as the thickest stone, with a scrap of the print in it and a thermometer in the middle, and enter the peak.`,
  };
}
