/** Resin pressure against moisture voids, at the hottest place of the laminate. */
import { voidPressureAlong } from '../../core/cure/moistureVoids';
import type { CurePrediction, PredictedRun } from '../../core/cure/predictCure';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { ProjectInputs } from '../inputs';
import { banded } from './banded';
import { cureFigureSpecs as specs } from './figureSpecs';
import { celsius } from './say';

/** Damp stone steams against the laminate, so it counts as full humidity. */
const dampFromPercent = 10;
const humidityInMold = ({ cure, closing }: ProjectInputs): number =>
  cure.freeWaterLeftPercent >= dampFromPercent ? 100 : closing.humidityPercent;

export function voidPressureOf(inputs: ProjectInputs, run: PredictedRun) {
  return voidPressureAlong(run.hottest.curve, humidityInMold(inputs));
}

export function voidFigure(inputs: ProjectInputs, prediction: CurePrediction): Figure {
  const shown = banded(
    specs.voids,
    prediction,
    (run) => voidPressureOf(inputs, run).neededKPa,
    (run) => {
      const { absoluteKPa, temperatureC } = voidPressureOf(inputs, run);
      return `4962 exp(−4892 / T) × ${formatNumber(humidityInMold(inputs), 0)} % at ${celsius(temperatureC)} = ${formatNumber(absoluteKPa, 0)} kPa absolute, less 101 kPa of air`;
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
