/**
 * Weighings of a drying half, and where they are heading: m(t) = end + (start - end) exp(-t / tau), least squares. Stone
 * first loses water at an even rate and only then levels off; while it is even, no end can be read from it.
 */
import { Problem } from '../problem';
import { steadyHours } from './drying';

export interface Weighing {
  readonly hours: number;
  readonly grams: number;
}

/** 'steady' is not yet dry: that takes the weight expected from the mix, too (`drying.ts`). */
export type DryingWord = 'steady' | 'not yet' | 'too few weighings';

export interface DryingState {
  readonly word: DryingWord;
  /** Where the weight levels off; null when the weighings do not tell. */
  readonly endG: number | null;
  /** Time constant of the levelling; null with `endG`, and when the weight no longer changes. */
  readonly tauHours: number | null;
  /** Fitted weight at the first weighing; null with `tauHours`. */
  readonly startG: number | null;
  /** Still to go at the last weighing, g. */
  readonly toGoG: number | null;
  /** Over how long the weight has held; null unless steady. */
  readonly steadyForHours: number | null;
  /** From the last weighing until less than the tolerance is left; null when not known, 0 when steady. */
  readonly hoursLeft: number | null;
  /** Root of the mean squared misfit, g. */
  readonly misfitG: number | null;
  readonly reason: string;
}

/** Weighings needed before an end can be fitted: three unknowns. */
const leastWeighings = 3;
/** A time constant longer than this many spans of the log is no levelling off that anyone could read. */
const longestTauSpans = 3;

/**
 * Steady: from the latest weighing that is `steadyHours` or more before the last, all lie within `toleranceG` (a share of
 * the free water, or what the scale can show).
 * @throws Problem `stone.weighings` for weights that are not above zero or times that do not grow
 */
export function dryingState(log: readonly Weighing[], toleranceG: number): DryingState {
  checkWeighings(log);
  const last = log[log.length - 1];
  const held = heldLately(log);
  if (last !== undefined && held !== null && held.spreadG <= toleranceG + roundingG)
    return {
      ...notFitted,
      word: 'steady',
      endG: held.meanG,
      toGoG: 0,
      hoursLeft: 0,
      steadyForHours: held.hours,
      reason: `The weight has held for ${held.hours.toFixed(1)} h.`,
    };
  if (log.length < leastWeighings || last === undefined)
    return {
      ...notFitted,
      word: 'too few weighings',
      reason: `${log.length} of the ${leastWeighings} weighings that an end point needs.`,
    };
  const fit = fitApproach(log);
  if (fit === null)
    return {
      ...notFitted,
      word: 'not yet',
      reason:
        held === null
          ? `All weighings lie within ${(last.hours - log[0]!.hours).toFixed(1)} h: only a weight that holds for ${steadyHours} h or more is steady.`
          : 'The weight does not level off yet: it falls evenly or does not fall. Weigh again later.',
    };
  const toGoG = last.grams - fit.endG;
  return {
    ...notFitted,
    word: 'not yet',
    ...fit,
    toGoG,
    hoursLeft: toGoG <= toleranceG ? steadyHours : fit.tauHours * Math.log(toGoG / toleranceG),
    reason:
      toGoG <= toleranceG
        ? `Little is left to the fitted end point; it still has to hold for ${steadyHours} h.`
        : 'The weight is still falling toward the fitted end point.',
  };
}

/** Weights typed to a tenth of a gram subtract to a hair over the tolerance. */
const roundingG = 1e-9;

const notFitted = {
  endG: null,
  tauHours: null,
  startG: null,
  toGoG: null,
  hoursLeft: null,
  steadyForHours: null,
  misfitG: null,
} as const;

function checkWeighings(log: readonly Weighing[]): void {
  log.forEach(({ hours, grams }, index) => {
    const former = log[index - 1];
    if (!(grams > 0) || !Number.isFinite(hours) || (former !== undefined && !(hours > former.hours)))
      throw new Problem(
        'stone.weighings',
        `Weighing ${index + 1} needs a weight above zero and a later time than the one before. Correct that line.`,
      );
  });
}

/** The weighings from the latest one that is `steadyHours` or more before the last; null where none is. */
function heldLately(log: readonly Weighing[]): { hours: number; spreadG: number; meanG: number } | null {
  const last = log[log.length - 1];
  // Times typed to a tenth of an hour subtract to a hair under 4.
  const from = log.findLastIndex(
    ({ hours }) => last !== undefined && last.hours - hours >= steadyHours - 1e-9,
  );
  if (last === undefined || from < 0) return null;
  const weights = log.slice(from).map(({ grams }) => grams);
  return {
    hours: last.hours - log[from]!.hours,
    spreadG: Math.max(...weights) - Math.min(...weights),
    meanG: weights.reduce((sum, grams) => sum + grams, 0) / weights.length,
  };
}

/** Weight on the fitted way at a time, g; null where nothing is fitted. `firstHours`: of the first weighing. */
export function fittedWeightG(
  { endG, startG, tauHours }: DryingState,
  firstHours: number,
  hours: number,
): number | null {
  if (endG === null || startG === null || tauHours === null) return null;
  return endG + (startG - endG) * Math.exp(-(hours - firstHours) / tauHours);
}

interface Approach {
  readonly endG: number;
  readonly startG: number;
  readonly tauHours: number;
  readonly misfitG: number;
}

/** Best exponential approach from above; null when none levels off within a few spans of the log. */
function fitApproach(log: readonly Weighing[]): Approach | null {
  const first = log[0]!;
  const span = log[log.length - 1]!.hours - first.hours;
  const misfitAt = (logTau: number) => fitForTau(log, Math.exp(logTau)).misfitG;
  // Coarse scan, then golden section round the best: the misfit over log tau has one valley for a decay, not for noise.
  const low = Math.log(span / 50);
  const high = Math.log(span * 50);
  const steps = 200;
  let best = low;
  for (let i = 1; i <= steps; i++) {
    const at = low + ((high - low) * i) / steps;
    if (misfitAt(at) < misfitAt(best)) best = at;
  }
  const step = (high - low) / steps;
  const tauHours = Math.exp(goldenMinimum(misfitAt, best - step, best + step));
  const fit = fitForTau(log, tauHours);
  const falls = fit.startG > fit.endG && fit.endG > 0;
  return falls && tauHours <= longestTauSpans * span ? fit : null;
}

/** For a given tau the fit is linear in the end and the height of the decay. */
function fitForTau(log: readonly Weighing[], tauHours: number): Approach {
  const start = log[0]!.hours;
  const n = log.length;
  const decay = log.map(({ hours }) => Math.exp(-(hours - start) / tauHours));
  const meanDecay = decay.reduce((sum, one) => sum + one, 0) / n;
  const meanG = log.reduce((sum, { grams }) => sum + grams, 0) / n;
  let products = 0;
  let squares = 0;
  log.forEach(({ grams }, i) => {
    products += (decay[i]! - meanDecay) * (grams - meanG);
    squares += (decay[i]! - meanDecay) ** 2;
  });
  const heightG = squares > 0 ? products / squares : 0;
  const endG = meanG - heightG * meanDecay;
  const misfit = log.reduce((sum, { grams }, i) => sum + (grams - endG - heightG * decay[i]!) ** 2, 0);
  return { endG, startG: endG + heightG, tauHours, misfitG: Math.sqrt(misfit / n) };
}

function goldenMinimum(of: (x: number) => number, from: number, to: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [left, right] = [high - share * (high - low), low + share * (high - low)];
  let [atLeft, atRight] = [of(left), of(right)];
  for (let i = 0; i < 80; i++) {
    if (atLeft <= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - share * (high - low);
      atLeft = of(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + share * (high - low);
      atRight = of(right);
    }
  }
  return (low + high) / 2;
}
