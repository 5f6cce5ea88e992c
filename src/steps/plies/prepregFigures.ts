/** How much prepreg the part takes: an estimate from the show face until flat patterns are worked out. */
import type { Figure } from '../../core/figure';
import { prepregArealMassGsm } from '../../core/laminate/plyThickness';
import { compensatedSum } from '../../core/numeric/compensatedSum';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../context';
import { figure, unknownFigure, type FigureSpec } from '../figures';
import { availablePart } from '../missing';
import { resolveStack } from './stack';

/**
 * Prepreg cut over face covered: trim edge, darts and the corners of a rectangular cut. Common practice; the low and
 * high ends are a shallow tray cut close and a deep one cut wide.
 */
export const cuttingAllowance = { low: 1.15, usual: 1.3, high: 1.6 } as const;

const areaSpec: FigureSpec = {
  id: 'plies.prepregAreaCm2',
  label: 'Prepreg to cut, all plies',
  unit: 'cm²',
  decimals: 0,
  status: 'common practice',
};
const massSpec: FigureSpec = {
  id: 'plies.prepregMassG',
  label: 'Prepreg to cut, mass',
  unit: 'g',
  decimals: 1,
  status: 'common practice',
};

export function prepregFigures(context: StepContext): readonly Figure[] {
  const part = availablePart(context);
  const stack = resolveStack(context.inputs.plies);
  const why = !stack.known
    ? stack.reason
    : !part.known
      ? part.reason
      : part.measured.summary.kindAreaMm2.show > 0
        ? null
        : 'No show face was told apart, so the area to cover is not known.';
  if (why !== null || !stack.known || !part.known)
    return [unknownFigure(areaSpec, why ?? ''), unknownFigure(massSpec, why ?? '')];
  const showMm2 = part.measured.summary.kindAreaMm2.show;
  const { plies, arealMassGsm } = stack.total;
  const patchesCm2 = compensatedSum(stack.patches.map(({ patch }) => patch.areaCm2));
  const patchesG = compensatedSum(
    stack.patches.map(({ patch, card }) => (patch.areaCm2 * prepregArealMassGsm(card)) / 1e4),
  );
  const coveredCm2 = (showMm2 * plies) / 100 + patchesCm2;
  const coveredG = (showMm2 * arealMassGsm) / 1e6 + patchesG;
  const sum = (skin: string, patches: string) =>
    stack.patches.length === 0 ? skin : `(${skin} + patches ${patches})`;
  const allowance = formatNumber(cuttingAllowance.usual, 2);
  const narrowing =
    'The allowance for trim, darts and offcuts is common practice; flat patterns would narrow it.';
  return [
    {
      ...figure(
        areaSpec,
        coveredCm2 * cuttingAllowance.usual,
        `${sum(`show face ${formatNumber(showMm2 / 100, 1)} cm² × ${plies} plies`, `${formatNumber(patchesCm2, 1)} cm²`)} × ${allowance}`,
        narrowing,
      ),
      band: [coveredCm2 * cuttingAllowance.low, coveredCm2 * cuttingAllowance.high],
    },
    {
      ...figure(
        massSpec,
        coveredG * cuttingAllowance.usual,
        `${sum(`show face ${formatNumber(showMm2 / 100, 1)} cm² × ${formatNumber(arealMassGsm, 0)} g/m²`, `${formatNumber(patchesG, 1)} g`)} × ${allowance}`,
        narrowing,
      ),
      band: [coveredG * cuttingAllowance.low, coveredG * cuttingAllowance.high],
    },
  ];
}
