/** Resin pressure against moisture voids, at the hottest place of the laminate. */
import { voidPressureAlong } from '../../core/cure/moistureVoids';
import type { CurePrediction, PredictedRun } from '../../core/cure/predictCure';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../context';
import { waterLeft } from '../mold/waterLeft';
import { banded } from './banded';
import { cureFigureSpecs as specs } from './figureSpecs';
import { celsius } from './say';

/** What tells how damp it is in the mold. */
type Inside = Pick<StepContext, 'inputs' | 'mold'>;

/** Damp stone steams against the laminate, so it counts as full humidity. */
const dampFromPercent = 10;
const humidityInMold = ({ inputs, mold }: Inside): number =>
  waterLeft(inputs, mold).percent >= dampFromPercent ? 100 : inputs.closing.humidityPercent;

export function voidPressureOf(context: Inside, run: PredictedRun) {
  return voidPressureAlong(run.hottest.curve, humidityInMold(context));
}

export function voidFigure(context: Inside, prediction: CurePrediction): Figure {
  const shown = banded(
    specs.voids,
    prediction,
    (run) => voidPressureOf(context, run).neededKPa,
    (run) => {
      const { absoluteKPa, temperatureC } = voidPressureOf(context, run);
      return `4962 exp(−4892 / T) × ${formatNumber(humidityInMold(context), 0)} % at ${celsius(temperatureC)} = ${formatNumber(absoluteKPa, 0)} kPa absolute, less 101 kPa of air`;
    },
  );
  return {
    ...shown,
    working: [
      ...shown.working,
      'Humidity is that of the roll’s store; 100 % for stone that still steams is an analogy. Once the resin has gelled, no void opens.',
    ],
  };
}
