/** Figures of the Ply schedule step: what the stack is, and how the wall compares with it. */
import type { Figure } from '../../core/figure';
import { prepregArealMassGsm } from '../../core/laminate/plyThickness';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, percent, unknownFigure, withScatter, type FigureSpec } from '../kit/figures';
import { wallsFor } from '../shared/band';
import { pliesForWall } from '../shared/wallPairs';
import { wallFit } from '../shared/wallFit';
import type { PliesInputs } from '../inputs/plies';
import { localFigures } from './localStack';
import { contentFigures, partMassFigures } from './massFigures';
import { prepregFigures } from './prepregFigures';
import { rollFigure } from './rolls';
import { resolveStack, type KnownStack } from '../shared/stack';
import { stiffnessFigures } from './stiffnessFigures';
import { strengthFigures } from './strengthFigures';
import { warpFigures } from './warpFigures';

const mm = (value: number, decimals = 3) => `${formatNumber(value, decimals)} mm`;

const stackSpecs = {
  fiberFraction: {
    id: 'plies.fiberVolumeFraction',
    label: 'Fiber volume fraction, void-free',
    unit: '',
    decimals: 3,
    source: 'fiberVolumeNotes',
  },
  curedPly: {
    id: 'plies.curedPlyMm',
    label: 'One ply, void-free',
    unit: 'mm',
    decimals: 3,
    source: 'plyVolumeSum',
  },
  laidPly: { id: 'plies.laidPlyMm', label: 'One ply, as laid', unit: 'mm', decimals: 3 },
  count: { id: 'plies.plyCount', label: 'Plies', unit: '', decimals: 0, status: 'your entry' },
  laid: { id: 'plies.laidThicknessMm', label: 'Stack as laid', unit: 'mm', decimals: 2 },
  cured: {
    id: 'plies.curedThicknessMm',
    label: 'Your plies fill',
    unit: 'mm',
    decimals: 2,
    source: 'plyVolumeSum',
  },
  prepreg: { id: 'plies.prepregGsm', label: 'Prepreg per area of part', unit: 'g/m²', decimals: 0 },
} as const satisfies Record<string, FigureSpec>;

export function pliesFigures(context: StepContext): readonly Figure[] {
  const stack = resolveStack(context.inputs.plies);
  const ownFigures = stack.known
    ? stackFigures(stack, context.inputs.plies)
    : Object.values(stackSpecs).map((spec) => unknownFigure(spec, stack.reason));
  return [
    ...ownFigures,
    ...wallFigures(context),
    ...contentFigures(context),
    ...partMassFigures(context),
    ...localFigures(context),
    ...prepregFigures(context),
    ...stiffnessFigures(context),
    ...warpFigures(context),
    ...strengthFigures(context),
    rollFigure(context),
  ];
}

/** Where the thickness as laid of each card in the stack was entered: a caliper's reading goes before the number. */
function laidEntries({ materials, stack }: PliesInputs): readonly string[] {
  const used = new Set(stack.map(({ materialId }) => materialId));
  return materials.flatMap(({ id, caliperTotalMm }, at) =>
    used.has(id)
      ? [`plies.materials.${at}.${caliperTotalMm === null ? 'laidThicknessMm' : 'caliperTotalMm'}`]
      : [],
  );
}

function stackFigures(stack: KnownStack, inputs: PliesInputs): readonly Figure[] {
  const { total, plies, volume } = stack;
  const { bulkFactor } = inputs;
  const [first] = plies;
  const card = first?.card;
  const one = !stack.mixed && card !== undefined && stack.plateVoidShare === null;
  const fraction = volume.fiberMm / volume.voidFreeMm;
  const mean =
    stack.plateVoidShare === null
      ? 'Mean over the plies of the stack, which are of different cards.'
      : 'Mean over the plies of the cured plate.';
  const sum = `fiber ${mm(volume.fiberMm)} + resin ${mm(volume.resinMm)} = ${mm(volume.voidFreeMm)} per area`;
  return [
    figure(
      stackSpecs.fiberFraction,
      fraction,
      one
        ? `Vf = (${formatNumber(1 - card.resinMassFraction, 3)} / ${formatNumber(card.fiberDensityGCm3, 2)}) / (${formatNumber(1 - card.resinMassFraction, 3)} / ${formatNumber(card.fiberDensityGCm3, 2)} + ${formatNumber(card.resinMassFraction, 3)} / ${formatNumber(card.resinDensityGCm3, 2)}) = ${formatNumber(fraction, 3)}`
        : sum,
      weighedWords(stack),
    ),
    figure(
      stackSpecs.curedPly,
      stack.curedPlyMm,
      one
        ? `${formatNumber(card.arealWeightGsm, 0)} g/m² / (1000 × ${formatNumber(card.fiberDensityGCm3, 2)} g/cm³ × ${formatNumber(fraction, 3)}) = ${mm(stack.curedPlyMm)}`
        : mean,
    ),
    withScatter(
      figure(
        { ...stackSpecs.laidPly, status: stack.laidStatus, entries: laidEntries(inputs) },
        stack.laidPlyMm,
        one ? laidWorking(stack, bulkFactor) : mean,
        'With the air between the plies: how the stack gets in, not what fills the gap.',
        ...(stack.laidScatter === 0
          ? []
          : ['An estimate: a caliper over three laid plies, divided by three, replaces it.']),
      ),
      stack.laidScatter,
    ),
    figure(stackSpecs.count, total.plies, 'Counted in the stack.'),
    withScatter(
      figure(
        { ...stackSpecs.laid, status: stack.laidStatus, entries: laidEntries(inputs) },
        total.laidMm,
        one
          ? `${total.plies} × ${mm(stack.laidPlyMm)} = ${mm(total.laidMm)}`
          : `sum of ${total.plies} plies of different cards`,
      ),
      stack.laidScatter,
    ),
    figure(
      { ...stackSpecs.cured, status: stack.plateVoidShare === null ? 'computed' : 'measured' },
      total.curedMm,
      sum,
      weighedWords(stack),
      'Void-free, no bleed: a rigid mold that leaves a wider gap leaves air in it.',
    ),
    figure(
      stackSpecs.prepreg,
      total.arealMassGsm,
      one
        ? `${total.plies} × ${formatNumber(card.arealWeightGsm, 0)} / (1 − ${formatNumber(card.resinMassFraction, 3)}) g/m², fiber and resin together`
        : plies.map((ply) => formatNumber(prepregArealMassGsm(ply.card), 0)).join(' + '),
    ),
  ];
}

function weighedWords({ plateVoidShare, resinMeasured }: KnownStack): string {
  if (plateVoidShare !== null)
    return `Resin by the cured plate on the scale; its caliper finds ${formatNumber(100 * plateVoidShare, 1)} % voids${plateVoidShare < 0 ? ' (under none: mass, area, caliper or densities contradict each other)' : ''}.`;
  return resinMeasured ? 'Resin content by the weighed offcut.' : 'From the numbers of the card.';
}

function laidWorking(stack: KnownStack, bulkFactor: number): string {
  const card = stack.plies[0]?.card;
  if (card === undefined || card.laidThicknessMm === null)
    return `${mm(stack.curedPlyMm)} void-free × ${formatNumber(bulkFactor, 2)} = ${mm(stack.laidPlyMm)}`;
  return stack.laidStatus === 'measured'
    ? `${mm(card.laidThicknessMm)} by caliper, from the card.`
    : `${mm(card.laidThicknessMm)} as the ready-made card says; nobody has measured your roll yet.`;
}

const shareSpecs = [
  ['plies.loosePercent', 'Wall wider than the plies fill', 'over'],
  ['plies.betweenPercent', 'Wall that is right for the plies', 'within'],
  ['plies.underPercent', 'Wall with too much fiber in it', 'under'],
] as const;

const wantedPliesSpec: FigureSpec = {
  id: 'plies.wantedPlies',
  label: 'Plies that the wall wants',
  unit: '',
  decimals: 0,
};
const wantedWallSpec: FigureSpec = {
  id: 'plies.wantedWallMm',
  label: 'Wall that the stack wants',
  unit: 'mm',
  decimals: 2,
  status: 'common practice',
  source: 'wallPractice',
};

function wallFigures(context: StepContext): readonly Figure[] {
  const stack = resolveStack(context.inputs.plies);
  const fit = wallFit(context);
  const wanted = stack.known ? wantedWallFigure(stack, context) : unknownFigure(wantedWallSpec, stack.reason);
  if (!fit.known)
    return [
      ...shareSpecs.map(([id, label]) => unknownFigure({ id, label, unit: '%', decimals: 1 }, fit.reason)),
      unknownFigure(wantedPliesSpec, fit.reason),
      wanted,
    ];
  const { shares, wall, band } = fit;
  const status = wall.nominal ? 'your entry' : 'computed';
  return [
    ...shareSpecs.map(([id, label, share]) =>
      figure(
        { id, label, unit: '%', decimals: 1, status, source: 'wallPractice' },
        percent(shares[share]),
        `Right from ${mm(band.goLowMm, 2)} to ${mm(band.goHighMm, 2)} for plies that fill ${mm(band.voidFreeMm, 2)}; wall: ${wall.how}.`,
      ),
    ),
    figure(
      { ...wantedPliesSpec, status },
      pliesForWall(wall.medianMm, fit.stack, context.inputs),
      `Wall ${mm(wall.medianMm)}; n plies fill n × ${mm(fit.stack.curedPlyMm)}: the fewest that fill it. What fewer would leave is air.`,
    ),
    wanted,
  ];
}

function wantedWallFigure(stack: KnownStack, { inputs }: StepContext): Figure {
  const walls = wallsFor(stack, inputs.walls);
  const shown = figure(
    wantedWallSpec,
    walls.wantedMm,
    `${mm(walls.voidFreeMm)} that the plies fill − ${mm(walls.toleranceMm)} that print and stone may be off${inputs.walls.toleranceMm === null ? ' (4 % of it)' : ''}: a little narrow presses on the resin, a little wide is air.`,
    `Right from Vf ${formatNumber(walls.fiberMm / walls.goLowMm, 2)} (${mm(walls.goLowMm)}) to ${formatNumber(inputs.walls.goVoidPercent, 1)} % voids (${mm(walls.goHighMm)}).`,
  );
  return walls.goLowMm <= walls.wantedMm && walls.wantedMm <= walls.goHighMm
    ? { ...shown, band: [walls.goLowMm, walls.goHighMm] }
    : shown;
}
