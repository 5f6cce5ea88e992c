/** Figures of drying: free water, dry targets, fitted end points, and what heat does to the stone. */
import type { Figure } from '../../core/figure';
import { crystalWaterPercent, evaporationHeatKJPerKg } from '../../core/stone/gypsum';
import { dryingLimitsC } from '../../core/stone/drying';
import {
  dehydrationFrontC,
  dehydrationHeatKJPerKg,
  depthByConductionMm,
  depthBySupplyMm,
} from '../../core/stone/dehydration';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, withBand, type FigureSpec } from '../kit/figures';
import { halfDryness } from '../stone/dryness';
import { celsius, figureFrom, grams } from './say';
import { halves, type Half, type MoldWork } from '../stone/work';

/** Air film with radiation in an oven at about 100 °C, W/(m2 K), and conductivity of plaster (from memory). */
const ovenFilmWPerM2K = 25;
const plasterWPerMK = 0.5;
/** Air in the pour and the spread of real bags: a half weighs within this share of its worked-out weight (common practice). */
const targetBandShare = 0.02;

export function dryingFigures(context: StepContext, work: MoldWork): readonly Figure[] {
  return [
    ...halves.flatMap((half) => [
      ...weightFigures(context, work, half),
      ...progressFigures(context, work, half),
    ]),
    evaporation(work),
    crystalWaterSkin(context, work),
  ];
}

const halfNames = { negative: 'Negative', positive: 'Positive' } as const;

const bandNote =
  'Air in the stone and the spread of bags make it good to 2 % (common practice); weigh until it stops falling.';

/** What a half weighs by its mix, and by its fresh weight where it was weighed. */
function weightFigures(context: StepContext, work: MoldWork, half: Half): readonly Figure[] {
  const spec = (field: string, label: string, decimals: number): FigureSpec => ({
    id: `mold.${half}.${field}`,
    label: `${halfNames[half]}: ${label}`,
    unit: 'g',
    decimals,
    source: 'gypsumBalance',
  });
  const fresh = spec('freshG', 'fresh from the box', 0);
  const free = spec('freeWaterG', 'free water after setting', 1);
  const target = spec('dryTargetG', 'dry when it weighs', 0);
  const answer = work.half[half];
  const dryness = halfDryness(context, work, half);
  return [
    figureFrom(fresh, answer, ({ stone }) =>
      withBand(
        figure(fresh, stone.wetG, `${grams(stone.powderG)} powder + ${grams(stone.waterG)} water`, bandNote),
        stone.wetG * (1 - targetBandShare),
        stone.wetG * (1 + targetBandShare),
      ),
    ),
    figureFrom(free, answer, ({ stone }) =>
      figure(
        free,
        stone.freeWaterG,
        `${grams(stone.waterG)} mixed in − ${grams(stone.boundWaterG)} bound (0.18618 g per gram of powder${context.inputs.mold.degreeOfReactionPercent < 100 ? ` that sets, ${formatNumber(context.inputs.mold.degreeOfReactionPercent, 0)} %` : ''})`,
      ),
    ),
    dryness.known && dryness.value.expected.by === 'fresh weight'
      ? figure(
          { ...target, status: 'measured' },
          dryness.value.expected.dryG,
          `Fresh weight ${grams(dryness.value.log[0]?.grams ?? 0)} × (1 + bound water) / (1 + W/P): it needs no volume.`,
        )
      : figureFrom(target, answer, ({ stone }) =>
          withBand(
            figure(
              target,
              stone.dryG,
              `${grams(stone.powderG)} powder + ${grams(stone.boundWaterG)} bound water`,
              bandNote,
            ),
            stone.dryG * (1 - targetBandShare),
            stone.dryG * (1 + targetBandShare),
          ),
        ),
  ];
}

/** How far a half has dried, by its log. */
function progressFigures(context: StepContext, work: MoldWork, half: Half): readonly Figure[] {
  const spec = (field: string, label: string, unit: string, decimals: number): FigureSpec => ({
    id: `mold.${half}.${field}`,
    label: `${halfNames[half]}: ${label}`,
    unit,
    decimals,
  });
  const end = spec('dryEndG', 'weight it levels off at', 'g', 1);
  const left = spec('hoursToDry', 'hours to dry', 'h', 1);
  const water = spec('waterLeftPercent', 'free water left, by weight', '%', 0);
  const dryness = halfDryness(context, work, half);
  return [
    figureFrom(end, dryness, ({ state, log }) =>
      state.endG === null
        ? unknownFigure(end, state.reason)
        : figure(
            { ...end, status: 'measured' },
            state.endG,
            state.tauHours === null
              ? `Mean of the weighings over the last ${formatNumber(state.steadyForHours ?? 0, 1)} h.`
              : `Exponential approach through ${log.length} weighings: time constant ${formatNumber(state.tauHours, 1)} h, misfit ${formatNumber(state.misfitG ?? 0, 1)} g.`,
          ),
    ),
    figureFrom(left, dryness, ({ state, toleranceG, isDry }) =>
      state.hoursLeft === null
        ? unknownFigure(left, state.reason)
        : state.word === 'steady' && !isDry
          ? unknownFigure(left, 'The weight holds, but it is not the one that is expected of dry stone.')
          : figure(
              { ...left, status: 'measured' },
              state.hoursLeft,
              `From the last weighing until less than ${formatNumber(toleranceG, 1)} g is left.`,
            ),
    ),
    figureFrom(water, dryness, ({ waterLeftShare, expected, log }) =>
      waterLeftShare === null
        ? unknownFigure(water, 'It is not weighed yet.')
        : figure(
            { ...water, status: 'measured' },
            100 * waterLeftShare,
            `(${formatNumber(log.at(-1)!.grams, 1)} g − ${formatNumber(expected.dryG, 1)} g dry by its ${expected.by}) / ${formatNumber(expected.freeWaterG, 1)} g of free water`,
            expected.by === 'volume'
              ? 'A volume tells the weight to 2 % only, about half of all the free water: weigh the half as it leaves the box.'
              : 'The oven run starts with it.',
          ),
    ),
  ];
}

function evaporation({ half: { negative, positive } }: MoldWork): Figure {
  const spec: FigureSpec = {
    id: 'mold.evaporationKJ',
    label: 'Heat to dry both halves',
    unit: 'kJ',
    decimals: 0,
    source: 'steamTables',
  };
  if (!negative.known) return unknownFigure(spec, negative.why);
  if (!positive.known) return unknownFigure(spec, positive.why);
  const waterG = negative.value.stone.freeWaterG + positive.value.stone.freeWaterG;
  return figure(
    spec,
    (waterG / 1000) * evaporationHeatKJPerKg,
    `${grams(waterG)} of free water × ${formatNumber(evaporationHeatKJPerKg, 0)} kJ/kg`,
    'In a hot oven this water holds the laminate at 100 °C or less and steams: dry the stone first.',
  );
}

function crystalWaterSkin({ inputs }: StepContext, { mix, stone }: MoldWork): Figure {
  const spec: FigureSpec = {
    id: 'mold.chalkySkinMm',
    label: 'Stone turned back to plaster by this drying, at most',
    unit: 'mm',
    decimals: 1,
    status: 'from memory',
    source: 'gypsumEnthalpies',
  };
  const { dryingC, dryingHours } = inputs.mold;
  return figureFrom(spec, mix, ({ dryDensityGMl }) => {
    const front = {
      excessK: dryingC - dehydrationFrontC,
      timeS: 3600 * dryingHours,
      dryDensityKgM3: 1000 * dryDensityGMl,
      latentHeatJPerKg: 1000 * dehydrationHeatKJPerKg(stone.card.powder),
    };
    const mostMm = Math.min(
      depthBySupplyMm(front, ovenFilmWPerM2K),
      depthByConductionMm(front, plasterWPerMK),
    );
    const shown = figure(
      spec,
      mostMm,
      dryingC <= dehydrationFrontC
        ? `None as a front: ${celsius(dryingC)} is under the ${celsius(dehydrationFrontC)} taken for it. The surface may still turn chalky from ${celsius(dryingLimitsC.chalky)} (from memory).`
        : `${celsius(dryingC)} for ${formatNumber(dryingHours, 0)} h, front taken at ${celsius(dehydrationFrontC)}: the lesser of what heat supply and conduction allow.`,
      `Set stone holds ${formatNumber(crystalWaterPercent().whole, 1)} % of crystal water; ${formatNumber(crystalWaterPercent().toHemihydrate, 1)} % of its mass leave on going back to plaster, all of it in air that is dry enough (published).`,
    );
    return mostMm > 0 ? withBand(shown, 0, mostMm) : shown;
  });
}
