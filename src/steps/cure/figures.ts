/** Figures of the predicted oven run. */
import type { CurePrediction, PredictedRun } from '../../core/cure/predictCure';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, withBand } from '../kit/figures';
import { banded } from './banded';
import { doseFigure, dwellFigure } from './doseFigures';
import { cureFigureSpecs as specs } from './figureSpecs';
import { gelFigures } from './gel';
import { openingFigure } from './opening';
import { celsius, hoursMinutes } from './say';
import { cureState } from './state';
import { resinNeed } from '../closedMold/resinState';

export function cureFigures(context: StepContext): readonly Figure[] {
  const state = cureState(context);
  if (!state.known)
    return Object.values(specs).map(
      (spec) => gelFigures(context).find(({ id }) => id === spec.id) ?? unknownFigure(spec, state.reason),
    );
  const { prediction } = state;
  const { inputs } = context;
  return [
    banded(
      specs.coldestPeak,
      prediction,
      ({ coldest }) => coldest.peakC,
      ({ coldest }) => celsius(coldest.peakC),
    ),
    banded(
      specs.hottestPeak,
      prediction,
      ({ hottest }) => hottest.peakC,
      ({ hottest }) => celsius(hottest.peakC),
    ),
    banded(specs.lag, prediction, (run) => lastReached(run)?.lagS ?? null, lagWords),
    banded(
      specs.timeAtDwell,
      prediction,
      ({ coldest }) => coldest.dwells.at(-1)?.timeAtS ?? null,
      ({ coldest }) => hoursMinutes(coldest.dwells.at(-1)?.timeAtS ?? 0),
    ),
    banded(
      specs.spread,
      prediction,
      ({ spreadK }) => spreadK,
      ({ spreadK, spreadAtS }) => `${formatNumber(spreadK, 1)} K at ${hoursMinutes(spreadAtS)}`,
    ),
    doseFigure(inputs, prediction),
    ...kineticsFigures(context, prediction, state.middle),
    dwellFigure(inputs, prediction),
    banded(
      specs.stonePeak,
      prediction,
      ({ stonePeakC }) => stonePeakC,
      ({ stonePeakC }) => celsius(stonePeakC),
    ),
    banded(
      specs.turned,
      prediction,
      ({ stoneTurnedMm }) => stoneTurnedMm,
      ({ stoneTurnedMm, crystalWaterLostPercent }) =>
        `${formatNumber(stoneTurnedMm, 1)} mm, ${formatNumber(crystalWaterLostPercent, 0)} % of the stone`,
    ),
    banded(
      specs.water,
      prediction,
      ({ freeWaterLeftG }) => freeWaterLeftG,
      ({ freeWaterLeftG, water }) =>
        `${formatNumber(freeWaterLeftG, 1)} g of ${formatNumber(water[0]?.heldG ?? 0, 1)} g`,
    ),
    voidFigure(context),
    banded(
      specs.demold,
      prediction,
      ({ demoldAfterS }) => demoldAfterS,
      ({ demoldAfterS }) => demoldWords(demoldAfterS, inputs.cure.demoldC),
    ),
    ...gelFigures(context),
    openingFigure(inputs, prediction),
  ];
}

/** Degree of cure and Tg, where the resin's kinetics are given. */
function kineticsFigures(
  { inputs }: StepContext,
  prediction: CurePrediction,
  middle: PredictedRun,
): readonly Figure[] {
  return [
    inputs.cure.kineticsForm === 'none'
      ? unknownFigure(specs.degree, 'No kinetics of this resin are given; a dose is never a degree of cure.')
      : banded(
          specs.degree,
          prediction,
          ({ coldest }) => coldest.degreeOfCure,
          ({ coldest }) => formatNumber(coldest.degreeOfCure ?? 0, 2),
        ),
    middle.tgC === null
      ? unknownFigure(specs.tg, 'Needs kinetics and the three Tg constants of this resin.')
      : banded(
          specs.tg,
          prediction,
          ({ tgC }) => tgC,
          ({ tgC }) => (tgC === null ? 'not known' : celsius(tgC)),
        ),
  ];
}

/** The same need as at the Mold closing step, from the same function. */
function voidFigure(context: StepContext): Figure {
  const { neededKPa, bandKPa, working } = resinNeed(context);
  return withBand(figure(specs.voids, neededKPa, ...working), ...bandKPa);
}

const demoldWords = (demoldAfterS: number | null, demoldC: number): string =>
  demoldAfterS === null
    ? 'not within the hours looked at'
    : `${hoursMinutes(demoldAfterS)} until the laminate is under ${celsius(demoldC)}, door shut, falling by 1 K/min`;

/** The last dwell that the place reached. */
const lastReached = ({ coldest }: PredictedRun) => coldest.dwells.findLast(({ lagS }) => lagS !== null);

const lagWords = ({ coldest }: PredictedRun): string =>
  coldest.dwells
    .map(({ targetC, lagS }) =>
      lagS === null
        ? `${celsius(targetC)} never reached`
        : `${celsius(targetC)} ${hoursMinutes(lagS)} after the dial`,
    )
    .join(', ');
