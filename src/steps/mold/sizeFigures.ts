/** Figures of the size chain and of the two rims. */
import { gripAfterCooling } from '../../core/cure/coolDown';
import type { Figure } from '../../core/figure';
import { matchRims } from '../../core/stone/rimMatch';
import { coolingMismatchMm } from '../../core/stone/sizeChain';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, withBand, type FigureSpec } from '../kit/figures';
import { processOf } from '../shared/process';
import { moldTable } from '../inputs/mold';
import { liftFigure, orderWords } from './opening';
import { celsius, entryStatus, figureFrom, leastCertain, mm } from './say';
import {
  axisSizes,
  commonPrintScale,
  finishedRim,
  mismatchBandMm,
  printScaleBand,
  sizeChoices,
  type AxisSize,
} from './sizes';
import type { Answer, MoldWork } from '../stone/work';

export function sizeFigures(context: StepContext, work: MoldWork): readonly Figure[] {
  return [
    ...lengthFigures(context, work),
    mismatchFigure(context),
    liftFigure(context),
    ...rimFigures(context),
  ];
}

function lengthFigures(context: StepContext, { stone }: MoldWork): readonly Figure[] {
  const sizes = axisSizes(context);
  const { mold } = context.inputs;
  const expansions = leastCertain(
    entryStatus(mold.stoneExpansionPerMK, moldTable.stoneExpansionPerMK, 'from memory'),
    entryStatus(mold.laminateExpansionPerMK, moldTable.laminateExpansionPerMK, 'from memory'),
  );
  const status = leastCertain(stone.settingExpansionPercent.status, expansions);
  const finished: FigureSpec = {
    id: 'mold.finishedLengthMm',
    label: 'Finished part, x × y × z',
    unit: 'mm',
    decimals: 2,
    status,
    source: 'expansionsFromMemory',
  };
  const wanted: FigureSpec = {
    id: 'mold.wantedLengthMm',
    label: 'Wanted, x × y × z',
    unit: 'mm',
    decimals: 2,
    status: 'your entry',
  };
  const scale: FigureSpec = {
    id: 'mold.printScale',
    label: 'Print scale that hits it',
    unit: '×',
    decimals: 4,
    status,
    source: 'expansionsFromMemory',
  };
  return [
    figureFrom(finished, sizes, (known) =>
      figure(
        finished,
        known.map(({ chain }) => chain.finishedMm),
        ...chainWorking(context, known),
      ),
    ),
    figureFrom(wanted, sizes, (known) =>
      figure(
        wanted,
        known.map(({ wantedMm }) => wantedMm),
        known.every(({ asDrawn }) => asDrawn)
          ? 'As drawn, for want of another length.'
          : 'Your lengths; as drawn where none is given.',
      ),
    ),
    figureFrom(scale, sizes, (known) => {
      const shown = figure(
        scale,
        commonPrintScale(known),
        ...known.map(
          ({ axis, printScale, wantedMm }) =>
            `${axis}: ${formatNumber(printScale, 4)} for ${mm(wantedMm, 2)}`,
        ),
        'One factor for the whole print, midway between the axes. Water does not tune this: expansion hardly depends on it.',
      );
      return withBand(shown, ...printScaleBand(known));
    }),
  ];
}

function chainWorking({ inputs }: StepContext, sizes: readonly AxisSize[]): readonly string[] {
  const { roomC, gel } = processOf(inputs);
  return [
    ...sizes.map(
      ({ axis, chain, measured, bandMm }) =>
        `${axis}: drawn ${mm(chain.drawnMm, 2)}, printed ${mm(chain.printedMm, 2)}${measured ? ' (measured)' : ''}, stone ${mm(chain.stoneMm, 2)}, stone at ${celsius(gel.valueC)} ${mm(chain.stoneAtGelMm, 2)}, finished ${mm(chain.finishedMm, 2)}${bandMm[1] - bandMm[0] > 0.005 ? ` (${formatNumber(bandMm[0], 2)} to ${mm(bandMm[1], 2)} over the card’s expansion)` : ''}`,
    ),
    `From ${celsius(roomC)}; the laminate takes the mold’s size where it gels, at ${celsius(gel.valueC)} (${gel.how}). Drying and cure shrinkage are left out, and what the stone grows after its second hour. A caliper on the first part tells what is left.`,
  ];
}

function mismatchFigure(context: StepContext): Figure {
  const spec: FigureSpec = {
    id: 'mold.coolingMismatchMm',
    label: 'Mold shrinks more than the part, longest side',
    unit: 'mm',
    decimals: 3,
    status: 'from memory',
    source: 'expansionsFromMemory',
  };
  const sizes: Answer<readonly AxisSize[]> = axisSizes(context);
  const choices = sizeChoices(context);
  return figureFrom(spec, sizes, (known) => {
    const longest = Math.max(...known.map(({ chain }) => chain.finishedMm));
    const shown = figure(
      spec,
      coolingMismatchMm(longest, choices),
      `(${formatNumber(choices.stoneExpansionPerK * 1e6, 1)} − ${formatNumber(choices.laminateExpansionPerK * 1e6, 1)}) × 10⁻⁶/K × ${formatNumber(choices.gelC - choices.roomC, 0)} K × ${mm(longest, 1)}`,
      orderWords[gripAfterCooling(coolingMismatchMm(longest, choices))],
    );
    return withBand(shown, ...mismatchBandMm(context, longest));
  });
}

function rimFigures(context: StepContext): readonly Figure[] {
  const length: FigureSpec = {
    id: 'mold.rimLengthOffMm',
    label: 'Rim longer than the other half’s by',
    unit: 'mm',
    decimals: 2,
  };
  const width: FigureSpec = {
    id: 'mold.rimWidthOffMm',
    label: 'Rim wider than the other half’s by',
    unit: 'mm',
    decimals: 2,
  };
  const outline: FigureSpec = {
    id: 'mold.rimOutlineOffMm',
    label: 'Largest step between the two rims',
    unit: 'mm',
    decimals: 2,
  };
  const own = finishedRim(context);
  const other = context.otherHalf ?? null;
  const why =
    other === null
      ? 'No other half of this enclosure is worked out yet.'
      : own === null
        ? 'The rim of this half is not known yet.'
        : null;
  if (why !== null || own === null || other === null)
    return [length, width, outline].map((spec) => unknownFigure(spec, why ?? ''));
  const match = matchRims(own, other.rim);
  const against = `Finished rim of this half less that of “${other.name}”, middle on middle.`;
  return [
    figure(length, match.lengthMm, against),
    figure(width, match.widthMm, against),
    figure(
      outline,
      match.outlineMm,
      `Against “${other.name}”, laid ${match.turned}; worst at ${formatNumber(match.outlineAtMm[0], 1)}, ${mm(match.outlineAtMm[1])} from the middle.`,
    ),
  ];
}
