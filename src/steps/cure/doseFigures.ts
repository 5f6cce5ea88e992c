/** The supplier's dose at the coldest place, and the last dwell that meets it. */
import { isExtrapolated, supplierCure } from '../../core/cure/dose';
import type { CurePrediction } from '../../core/cure/predictCure';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { unknownFigure } from '../kit/figures';
import type { ProjectInputs } from '../inputs/project';
import { banded } from './banded';
import { cureFigureSpecs as specs } from './figureSpecs';
import { celsius, hoursMinutes } from './say';

export function doseFigure({ cure }: ProjectInputs, prediction: CurePrediction): Figure {
  if (cure.supplierCures.length === 0)
    return unknownFigure(specs.dose, "Enter two or more cures of the supplier's data sheet.");
  const supplier = supplierCure(cure.supplierCures);
  const shown = banded(
    specs.dose,
    prediction,
    ({ coldest }) => coldest.dose?.total ?? null,
    ({ coldest }) =>
      `${formatNumber(coldest.dose?.total ?? 0, 2)}${coldest.dose?.metAtS == null ? '' : `, minimum met at ${hoursMinutes(coldest.dose.metAtS)}`}`,
  );
  const points = supplier.points.map(
    ({ hours, temperatureC }) => `${formatNumber(hours, 2)} h at ${celsius(temperatureC)}`,
  );
  const energies = supplier.energiesJPerMol.map((energy) => `${formatNumber(energy / 1000, 1)} kJ/mol`);
  const outside = prediction.runs.some(({ coldest }) => isExtrapolated(supplier, coldest.peakC));
  return {
    ...shown,
    working: [
      `Supplier: ${points.join(', ')}${energies.length === 0 ? '' : `; apparent energy ${energies.join(', ')}`}. ∫ dt / t(T) along the laminate.`,
      ...shown.working,
      ...(supplier.points.length === 1
        ? ['With one cure nothing is counted below it. Enter a second one.']
        : []),
      ...(outside
        ? ['Some of these peaks lie outside the supplier’s own temperatures: the dose is extrapolated there.']
        : []),
    ],
  };
}

export function dwellFigure({ cure }: ProjectInputs, prediction: CurePrediction): Figure {
  if (cure.supplierCures.length === 0)
    return unknownFigure(
      specs.dwell,
      "Enter the supplier's cures: without them no dwell can be called enough.",
    );
  if (prediction.stage === 'coarse') return unknownFigure(specs.dwell, 'Comes with the refined answer.');
  const lastC = cure.stages.at(-1)?.targetC ?? 0;
  return banded(
    specs.dwell,
    prediction,
    ({ neededDwellS }) => neededDwellS,
    ({ neededDwellS }) =>
      neededDwellS === null
        ? 'none within 36 h'
        : `${hoursMinutes(neededDwellS)} at ${celsius(lastC)} on the dial`,
  );
}
