/** How much prepreg the part takes: net, from the show face, and to buy, as blanks cut from the roll. */
import type { Figure } from '../../core/figure';
import { blankOnRoll, developedBlank, type Blank } from '../../core/laminate/blanks';
import { prepregArealMassGsm } from '../../core/laminate/plyThickness';
import { leastRectangle } from '../../core/mesh/leastRectangle';
import { compensatedSum } from '../../core/numeric/compensatedSum';
import { formatNumber } from '../../core/units/formatNumber';
import type { MeasuredPart, StepContext } from '../shared/context';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import { availablePart } from '../shared/missing';
import { resolveStack, type KnownStack } from '../shared/stack';

/**
 * Prepreg cut over face covered: trim edge, darts and the corners of a rectangular cut. Common practice; the low and
 * high ends are a shallow tray cut close and a deep one cut wide.
 */
const cuttingAllowance = { low: 1.15, usual: 1.3, high: 1.6 } as const;

const areaSpec: FigureSpec = {
  id: 'plies.prepregAreaCm2',
  label: 'Prepreg net, all plies with trim and darts',
  unit: 'cm²',
  decimals: 0,
  status: 'common practice',
};
const massSpec: FigureSpec = {
  id: 'plies.prepregMassG',
  label: 'Prepreg net, mass',
  unit: 'g',
  decimals: 1,
  status: 'common practice',
};

const buySpec: FigureSpec = {
  id: 'plies.prepregBuyCm2',
  label: 'Prepreg to buy, blanks as cut',
  unit: 'cm²',
  decimals: 0,
  status: 'common practice',
};

/** Left all round a blank, to be trimmed after the cure (common practice). */
const trimMarginMm = 10;

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
    return [areaSpec, massSpec, buySpec].map((spec) => unknownFigure(spec, why ?? ''));
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
    buyFigure(context, part.measured, stack),
  ];
}

/** Plan of the part along the least rectangle round its outline, and the height of its walls, both seen along the pull. */
function planOf(
  { inputs, mold }: StepContext,
  { summary }: MeasuredPart,
): { plan: Blank; wallMm: number; by: string } {
  const outline = mold?.rimOutlineMm ?? null;
  if (mold !== null && outline !== null) {
    const { firstMm, secondMm } = leastRectangle(outline.flat());
    const { coverOverShowMm, coverUnderRimMm } = inputs.mold;
    return {
      plan: { lengthMm: Math.max(firstMm, secondMm), widthMm: Math.min(firstMm, secondMm) },
      wallMm: mold.box.innerMm[2] - coverOverShowMm - coverUnderRimMm,
      by: 'least rectangle round the outline',
    };
  }
  const { boxMinMm, boxMaxMm } = summary;
  const sizes = boxMinMm.map((low, axis) => boxMaxMm[axis]! - low);
  const shares = inputs.part.pull.map(Math.abs);
  const along = shares.indexOf(Math.max(...shares));
  const across = sizes.filter((_, axis) => axis !== along);
  return {
    plan: { lengthMm: Math.max(...across), widthMm: Math.min(...across) },
    wallMm: sizes[along]!,
    by: 'box along the file’s axes until the two pours are worked out',
  };
}

const areaCm2 = ({ lengthMm, widthMm }: Blank) => (lengthMm * widthMm) / 100;
const size = ({ lengthMm, widthMm }: Blank) =>
  `${formatNumber(lengthMm, 0)} × ${formatNumber(widthMm, 0)} mm`;

function buyFigure(context: StepContext, measured: MeasuredPart, stack: KnownStack): Figure {
  const { plan, wallMm, by } = planOf(context, measured);
  const blank = developedBlank(plan, wallMm, trimMarginMm);
  // A patch is small and its outline free: it is taken as a square.
  const patches = stack.patches.map(({ patch }) => {
    const sideMm = 10 * Math.sqrt(patch.areaCm2);
    return { square: { lengthMm: sideMm, widthMm: sideMm }, angleDeg: patch.angleDeg };
  });
  const angles = [...new Set(stack.plies.map(({ ply }) => Math.abs(ply.angleDeg)))].toSorted((a, b) => a - b);
  const rows = angles.map((angleDeg) => ({
    angleDeg,
    plies: stack.plies.filter(({ ply }) => Math.abs(ply.angleDeg) === angleDeg).length,
    onRoll: blankOnRoll(blank, angleDeg),
  }));
  const patchesCm2 = compensatedSum(
    patches.map(({ square, angleDeg }) => areaCm2(blankOnRoll(square, angleDeg))),
  );
  const toBuyCm2 = compensatedSum([...rows.map(({ plies, onRoll }) => plies * areaCm2(onRoll)), patchesCm2]);
  const nestedCm2 = compensatedSum([
    stack.plies.length * areaCm2(blank),
    ...patches.map(({ square }) => areaCm2(square)),
  ]);
  const shown = figure(
    buySpec,
    toBuyCm2,
    `Blank ${size(blank)}: ${size(plan)} (${by}) and on each side ${formatNumber(wallMm, 1)} mm of wall folded flat and ${trimMarginMm} mm to trim (common practice)`,
    ...rows.map(
      ({ angleDeg, plies, onRoll }) =>
        `${plies} × ${size(onRoll)} of roll for ${formatNumber(angleDeg, 0)}°: ${formatNumber(plies * areaCm2(onRoll), 0)} cm²`,
    ),
    ...(patches.length === 0 ? [] : [`Patches as squares: ${formatNumber(patchesCm2, 1)} cm²`]),
    `${formatNumber(nestedCm2, 0)} cm² if slanting blanks nest without loss; the roll’s width and what is left at its end come on top.`,
  );
  return toBuyCm2 - nestedCm2 < 0.5 ? shown : { ...shown, band: [nestedCm2, toBuyCm2] };
}
