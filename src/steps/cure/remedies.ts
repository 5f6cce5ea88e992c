/** Other oven programs within the limits of stone, pattern, clamps and supplier, and drier stone. */
import { keepsStoneUpToC } from '../../core/cure/moldAfter';
import { requiredS, supplierCure } from '../../core/cure/dose';
import { gentleKPerMin } from '../../core/cure/ovenProgram';
import { Problem } from '../../core/problem';
import { formatNumber } from '../../core/units/formatNumber';
import {
  changeCosts,
  isTroubled,
  type ProposeRemedies,
  type Remedy,
  type RemedyFacts,
} from '../shared/remedy';
import { coatsInUse } from '../mold/coatInUse';
import { coatsForHeat } from './coatRemedies';
import type { ProjectInputs } from '../inputs/project';
import type { CureInputs } from '../inputs/cure';

type Stages = CureInputs['stages'];

/** A dwell is held at most so long, h; and is set in steps of a quarter hour (common practice). */
const [mostDwellHours, dwellStepHours] = [24, 0.25];
/** Water that the halves may hold when the laminate goes in, percent: the dry gate of the cure step. */
const dryPercent = 5;

export const cureRemedies: ProposeRemedies = (facts) => [
  ...(isTroubled(facts, 'cure.program', 'cure.coats', 'cure.film') ? coolerStages(facts) : []),
  ...(isTroubled(facts, 'cure.coats') ? coatsForHeat(facts) : []),
  ...(isTroubled(facts, 'cure.cures', 'cure.service', 'cure.gel') ? longerDwell(facts) : []),
  ...(isTroubled(facts, 'cure.ramp') ? slowerRamps(facts) : []),
  ...(isTroubled(facts, 'cure.stone', 'cure.cures', 'cure.coats') ? wholePrograms(facts) : []),
  ...(isTroubled(facts, 'cure.damp') ? drierStone(facts) : []),
];

const clockHours = (hours: number) =>
  `${Math.floor(hours)} h ${String(Math.round(60 * (hours % 1))).padStart(2, '0')} min`;

const stageWords = (stages: Stages) =>
  stages
    .map(({ targetC, dwellHours }) => `${formatNumber(targetC, 0)} °C for ${clockHours(dwellHours)}`)
    .join(', then ');

const program = (id: string, stages: Stages): Remedy => ({
  id,
  what: `Set the oven to ${stageWords(stages)}.`,
  patch: { 'cure.stages': stages },
  cost: changeCosts.bench,
});

/** Hottest that the dial may be set to, °C. */
function mostOnDialC({ cure, walls }: ProjectInputs): number {
  const { stoneLimitC, clampLimitC, patternInside, patternLimitC, overshootK } = cure;
  const film =
    walls.filmFaces === 'none' || walls.filmLimitC === 0 ? Infinity : walls.filmLimitC - overshootK;
  return Math.floor(
    Math.min(stoneLimitC, clampLimitC, patternInside === 'in' ? patternLimitC : Infinity, film),
  );
}

function coolerStages({ context: { inputs } }: RemedyFacts): readonly Remedy[] {
  const mostC = mostOnDialC(inputs);
  const tops = [mostC, 100, keepsStoneUpToC].filter(
    (topC, at) => topC <= mostC && (at === 0 || topC < mostC),
  );
  return tops
    .filter((topC) => inputs.cure.stages.some(({ targetC }) => targetC > topC))
    .map((topC) =>
      program(
        'cure.stages',
        inputs.cure.stages.map((stage) => ({ ...stage, targetC: Math.min(stage.targetC, topC) })),
      ),
    );
}

const roundedHours = (seconds: number) => Math.ceil(seconds / 3600 / dwellStepHours) * dwellStepHours;

function withLastDwell(stages: Stages, hours: number): Stages {
  return stages.map((stage, at) => (at === stages.length - 1 ? { ...stage, dwellHours: hours } : stage));
}

/** As long as the oven run says, else twice and four times as long. */
function longerDwell({ context: { inputs, cure } }: RemedyFacts): readonly Remedy[] {
  const { stages } = inputs.cure;
  const last = stages.at(-1);
  if (last === undefined) return [];
  const needed = (cure?.runs ?? []).map(({ neededDwellS }) => neededDwellS);
  const known = needed.filter((one) => one !== null);
  const hours = [
    ...(known.length > 0 ? [roundedHours(Math.max(...known))] : []),
    2 * last.dwellHours,
    4 * last.dwellHours,
  ];
  return hours
    .filter((one) => one > last.dwellHours && one <= mostDwellHours)
    .map((one) => program('cure.stages', withLastDwell(stages, one)));
}

function slowerRamps({ context: { inputs } }: RemedyFacts): readonly Remedy[] {
  const { stages, supplierRampKPerMin, ovenFastestKPerMin } = inputs.cure;
  const mostKPerMin = supplierRampKPerMin > 0 ? supplierRampKPerMin : gentleKPerMin;
  if (stages.every(({ rampKPerMin }) => (rampKPerMin ?? ovenFastestKPerMin) <= mostKPerMin)) return [];
  return [
    {
      id: 'cure.ramps',
      what: `Ramp the oven at ${formatNumber(mostKPerMin, 1)} K/min or slower.`,
      patch: {
        'cure.stages': stages.map((stage) => ({
          ...stage,
          rampKPerMin: Math.min(stage.rampKPerMin ?? ovenFastestKPerMin, mostKPerMin),
        })),
      },
      cost: changeCosts.setting,
    },
  ];
}

/** Heats that a whole program is looked for at, °C; the first leaves the stone whole. */
const holdsC = [keepsStoneUpToC, 90, 100, 110, 120] as const;
/** In the stone the laminate lags behind the dial: so many times the supplier's hours are tried, on top of that lag. */
const lagFactors = [1.5, 2.5] as const;
const mostPrograms = 6;

/**
 * Whole programs: one hold at every heat that stone, pattern, clamps, film and coats bear, for as long as the supplier's cures
 * ask there, ramped no faster than the supplier allows. Those that keep the stone come first, then the shorter ones.
 */
function wholePrograms({ context: { inputs } }: RemedyFacts): readonly Remedy[] {
  const { supplierCures, stages, supplierRampKPerMin, overshootK } = inputs.cure;
  const first = stages[0];
  if (supplierCures.length === 0 || first === undefined) return [];
  const coatC = Math.min(...coatsInUse(inputs.mold).map(({ bearsC }) => bearsC?.[0] ?? Infinity));
  const mostC = Math.min(mostOnDialC(inputs), coatC - overshootK);
  const mostKPerMin = supplierRampKPerMin > 0 ? supplierRampKPerMin : gentleKPerMin;
  const rampKPerMin = Math.min(first.rampKPerMin ?? mostKPerMin, mostKPerMin);
  try {
    const cure = supplierCure(supplierCures);
    const held = [...new Set([...holdsC.filter((topC) => topC <= mostC), Math.floor(mostC)])]
      .filter((topC) => topC > 40 && topC <= 130)
      .flatMap((topC) =>
        lagFactors.map((factor) => ({ topC, dwellHours: roundedHours(factor * requiredS(cure, topC)) })),
      )
      .filter(({ dwellHours }) => dwellHours <= mostDwellHours)
      .toSorted(
        (a, b) =>
          Number(a.topC > keepsStoneUpToC) - Number(b.topC > keepsStoneUpToC) || a.dwellHours - b.dwellHours,
      );
    return held
      .slice(0, mostPrograms)
      .map(({ topC, dwellHours }) =>
        program('cure.stages', [{ ...first, targetC: topC, rampKPerMin, dwellHours }]),
      );
  } catch (error) {
    if (error instanceof Problem) return [];
    throw error;
  }
}

/** Where nothing is weighed yet, drying longer is a matter of the plan; what was weighed is a fact. */
function drierStone({ context: { inputs } }: RemedyFacts): readonly Remedy[] {
  const { freeWaterLeftPercent } = inputs.cure;
  if (inputs.mold.dryingLog.length > 0 || freeWaterLeftPercent <= dryPercent) return [];
  return [
    {
      id: 'cure.freeWaterLeftPercent',
      what: `Dry both halves until no more than ${dryPercent} % of their free water is left, by weight.`,
      patch: { 'cure.freeWaterLeftPercent': dryPercent },
      cost: changeCosts.bench,
    },
  ];
}
