/** Verdicts of the Clamp & cure step: program, cure over the band, dampness, voids, clamps, stone, cool-down. */
import { keepsStoneUpToC, moldAfter } from '../../core/cure/moldAfter';
import type { PredictedRun } from '../../core/cure/predictCure';
import type { Verdict } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { jackingWords, liftWords, moldOpening, orderWords } from '../mold/opening';
import { waterLeft } from '../stone/waterLeft';
import { processOf } from '../shared/process';
import { clampsAfterThinning } from './clamps';
import { coatVerdict, filmVerdict } from './coatVerdict';
import type { ProjectInputs } from '../inputs/project';
import { gelVerdicts } from './gel';
import type { CureInputs } from '../inputs/cure';
import { moldNumbers } from '../inputs/heatedMold';
import { cureChoicesOf, overLimits } from './cureChoicesOf';
import { openingVerdict, rampVerdicts, serviceVerdict } from './opening';
import { celsius, hoursMinutes, treatmentNames } from './say';
import { cureState, type CureAnswer } from './state';

export function cureVerdicts(context: StepContext): readonly Verdict[] {
  const state = cureState(context);
  return [
    programVerdict(context),
    curesVerdict(context, state),
    dampVerdict(context),
    ...(state.known ? [stoneVerdict(context.inputs, state.prediction.runs)] : []),
    ...clampsVerdict(context),
    ...coatVerdict(context),
    ...filmVerdict(context),
    ...(state.known ? coolVerdict(context, state.middle) : []),
    ...rampVerdicts(context.inputs),
    ...gelVerdicts(context.inputs),
    ...(state.known
      ? [
          ...openingVerdict(context.inputs, state.prediction),
          ...serviceVerdict(context.inputs, state.middle.tgC),
        ]
      : []),
  ];
}

function programVerdict({ inputs }: StepContext): Verdict {
  const id = 'cure.program';
  const choices = cureChoicesOf(inputs);
  if (!choices.known) return { id, word: 'stop', reason: choices.why, fix: 'Correct it below.' };
  const over = overLimits(inputs);
  if (over.length > 0)
    return {
      id,
      word: 'stop',
      reason: over.join(' '),
      fix: 'Correct the limit if yours is higher.',
    };
  const stages = inputs.cure.stages.map(
    ({ targetC, dwellHours }) => `${celsius(targetC)} for ${hoursMinutes(3600 * dwellHours)}`,
  );
  const told = `The dial goes to ${stages.join(', then ')}`;
  if (!clampsAreRead(inputs.cure)) {
    const { hottestC } = processOf(inputs);
    return {
      id,
      word: 'not yet known',
      reason: `${told}. Whether your clamps stand that is not known: their limit of ${celsius(inputs.cure.clampLimitC)} was put in by this program, not read off them.`,
      fix: `Read it off them, or try one: set on a block, an hour in the oven at ${celsius(hottestC ?? inputs.cure.clampLimitC)}. Pads soft, grip loose or force lost is no. Then say so under Limits.`,
    };
  }
  const borne =
    inputs.cure.patternInside === 'in' ? 'clamps and printed pattern stand it' : 'the clamps stand it';
  return { id, word: 'go', reason: `${told}: ${borne}.`, fix: '' };
}

/** A limit that is no longer the ready-made one was entered by somebody who knew. */
const clampsAreRead = ({ clampLimitFrom, clampLimitC }: CureInputs): boolean =>
  clampLimitFrom === 'read' || clampLimitC !== moldNumbers.clampLimitC.default;

const thermocouple =
  'A thermocouple at the laminate is the test, at the coldest place worked out: cast its wire in, log it, and take the dose from the log.';

function curesVerdict({ inputs }: StepContext, state: CureAnswer): Verdict {
  const id = 'cure.cures';
  if (!state.known) return { id, word: 'not yet known', reason: state.reason, fix: state.fix };
  const { runs } = state.prediction;
  const peaks = runs.map(
    ({ treatment, coldest }) => `${celsius(coldest.peakC)} if ${treatmentNames[treatment]}`,
  );
  if (inputs.cure.supplierCures.length === 0)
    return {
      id,
      word: 'look again',
      reason: `The coldest place of the laminate peaks at ${peaks.join(', ')}. Whether that cures it only the supplier's sheet can say.`,
      fix: "Enter two or more cures of the supplier's data sheet below.",
    };
  const doses = runs.map(({ treatment, coldest }) => ({
    name: treatmentNames[treatment],
    dose: coldest.dose?.total ?? 0,
  }));
  const told = (these: typeof doses) =>
    these.map(({ name, dose }) => `${name} (dose ${formatNumber(dose, 2)})`).join(' or ');
  const met = doses.filter(({ dose }) => dose >= 1);
  const missed = doses.filter(({ dose }) => dose < 1);
  if (missed.length === 0)
    return { id, word: 'go', reason: `Cures whatever the stone does: ${told(met)}.`, fix: '' };
  if (met.length === 0)
    return {
      id,
      word: 'stop',
      reason: `Does not cure, whatever the stone does: ${told(missed)}. The oven is hot enough; the laminate in the stone is not for long enough.`,
      fix: '',
    };
  return {
    id,
    word: 'look again',
    reason: `Cures if ${told(met)}; does not if ${told(missed)}.`,
    fix: thermocouple,
  };
}

const dryPercent = 5;
const dampPercent = 20;

function dampVerdict({ inputs, mold }: StepContext): Verdict {
  const id = 'cure.damp';
  const water = waterLeft(inputs, mold);
  const left = `${formatNumber(water.percent, 0)} % of the free water is taken to be left in the stone. ${water.how}`;
  if (water.isDry)
    return { id, word: 'go', reason: `${left} Both halves have passed the dry gate.`, fix: '' };
  if (water.percent <= dryPercent)
    return water.weighed.length === 0
      ? {
          id,
          word: 'not yet known',
          reason: `${left} No weighings say so.`,
          fix: 'Weigh both halves twice, four hours or more apart, and enter it at the Stone mold step. Until then: a cold mirror laid on a warmed half must stay clear.',
        }
      : {
          id,
          word: 'look again',
          reason: `${left} Not both halves have passed the dry gate of the Stone mold step.`,
          fix: 'Weigh both halves until they hold, and heed what that step says of each.',
        };
  const holds =
    inputs.cure.drying === 'stays'
      ? 'It holds the laminate at 100 °C or less until it has boiled off'
      : 'It cools the stone while it leaves';
  return {
    id,
    word: water.percent > dampPercent ? 'stop' : 'look again',
    reason: `${left} ${holds}, and damp stone can spall or burst.`,
    fix: 'Dry both halves below 49 °C until their weight no longer falls.',
  };
}

/** The one statement on what the program does to the stone. */
function stoneVerdict(inputs: ProjectInputs, runs: readonly PredictedRun[]): Verdict {
  const id = 'cure.stone';
  const worst = Math.max(...runs.map(({ crystalWaterLostPercent }) => crystalWaterLostPercent));
  const depth = Math.max(...runs.map(({ stoneTurnedMm }) => stoneTurnedMm));
  const peak = Math.max(...runs.map(({ stonePeakC }) => stonePeakC));
  const after = moldAfter(processOf(inputs).hottestC ?? 0, worst);
  if (after === 'kept')
    return {
      id,
      word: 'go',
      reason: `This program keeps the mold: the stone peaks at ${celsius(peak)}, and up to ${celsius(keepsStoneUpToC)} it stays stone (common practice). Post-cure the part free-standing.`,
      fix: '',
    };
  const told = `The stone peaks at ${celsius(peak)}; 0 to ${formatNumber(worst, 0)} % of it turns to weak plaster, from the faces up to ${formatNumber(depth, 1)} mm deep`;
  return {
    id,
    word: 'look again',
    reason: `${after === 'used up' ? 'This program uses the mold up' : 'This program wears the mold'}. ${told}; how fast dense stone really turns is not known.`,
    fix: '',
  };
}

const noticedLossShare = 0.25;

function clampsVerdict(context: StepContext): readonly Verdict[] {
  const clamps = clampsAfterThinning(context);
  if (!clamps.known) return [];
  const { coldN, hotN, thinsMm } = clamps.value;
  const told = `The stack thins by ${formatNumber(thinsMm, 2)} mm in the heat; the clamps go from ${formatNumber(coldN, 0)} to ${formatNumber(hotN, 0)} N`;
  return hotN < (1 - noticedLossShare) * coldN
    ? [
        {
          id: 'cure.clamps',
          word: 'look again',
          reason: `${told}.`,
          fix: 'Clamp again early in the first dwell, with gloves for hot things, or use longer springs.',
        },
      ]
    : [{ id: 'cure.clamps', word: 'go', reason: `${told}. Look at them again at the first dwell.`, fix: '' }];
}

/** More shrink-on than this jams the part, mm (common practice). */
const jamsMm = 0.1;

function coolVerdict(context: StepContext, { demoldAfterS }: PredictedRun): readonly Verdict[] {
  const id = 'cure.cool';
  const { demoldC } = context.inputs.cure;
  const waits =
    demoldAfterS === null
      ? `The laminate is not under ${celsius(demoldC)} within the hours looked at`
      : `The laminate is under ${celsius(demoldC)} ${hoursMinutes(demoldAfterS)} after the oven is off`;
  const opening = moldOpening(context);
  if (!opening.known) return [{ id, word: 'go', reason: `${waits}.`, fix: '' }];
  const { mismatchMm, grip } = opening.value;
  const holds = {
    negative: `the mold shrinks by ${formatNumber(mismatchMm, 2)} mm more than the part, so the negative grips it`,
    positive: `the part shrinks by ${formatNumber(-mismatchMm, 2)} mm more than the mold, so it grips the positive`,
    neither: 'part and mold shrink alike',
  }[grip];
  const opens = `${orderWords[grip]}${liftWords(opening)} ${jackingWords(context)}`;
  return [
    {
      id,
      word: Math.abs(mismatchMm) > jamsMm ? 'look again' : 'go',
      reason: `${waits}; ${holds}.`,
      fix: Math.abs(mismatchMm) > jamsMm ? opens : '',
    },
  ];
}
