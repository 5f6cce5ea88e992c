/** Figures of the Ply schedule step: what the stack is, and how the wall compares with it. */
import type { Figure } from '../../core/figure';
import { curedThicknessMm, prepregArealMassGsm } from '../../core/laminate/plyThickness';
import { wantedPlies, wantedWallMm } from '../../core/laminate/wantedPlies';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../context';
import { figure, percent, unknownFigure, type FigureSpec } from '../figures';
import { wallInUse } from '../wallInUse';
import type { PliesInputs } from './inputs';
import { contentFigures, partMassFigures, patchFigures } from './massFigures';
import { prepregFigures } from './prepregFigures';
import { rollFigure } from './rolls';
import { resolveStack, type KnownStack } from './stack';
import { halfCaliperStepMm, stackShares } from './stackShares';
import { stiffnessFigures } from './stiffnessFigures';
import { strengthFigures } from './strengthFigures';
import { warpFigures } from './warpFigures';

const mm = (value: number, decimals = 3) => `${formatNumber(value, decimals)} mm`;

const stackSpecs = {
  fiberFraction: {
    id: 'plies.fiberVolumeFraction',
    label: 'Fiber volume fraction',
    unit: '',
    decimals: 3,
    source: 'fiberVolumeNotes',
  },
  curedPly: {
    id: 'plies.curedPlyMm',
    label: 'One ply, cured',
    unit: 'mm',
    decimals: 3,
    source: 'plyVolumeSum',
  },
  laidPly: { id: 'plies.laidPlyMm', label: 'One ply, as laid', unit: 'mm', decimals: 3 },
  count: { id: 'plies.plyCount', label: 'Plies', unit: '', decimals: 0, status: 'your entry' },
  laid: { id: 'plies.laidThicknessMm', label: 'Stack as laid', unit: 'mm', decimals: 2 },
  cured: {
    id: 'plies.curedThicknessMm',
    label: 'Stack cured',
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
    ...patchFigures(context),
    ...prepregFigures(context),
    ...stiffnessFigures(context),
    ...warpFigures(context),
    ...strengthFigures(context),
    rollFigure(context),
  ];
}

function stackFigures(stack: KnownStack, inputs: PliesInputs): readonly Figure[] {
  const { total, plies, content } = stack;
  const { bulkFactor } = inputs;
  const [first] = plies;
  const card = first?.card;
  const one = !stack.mixed && card !== undefined;
  const fraction = content.fiberVolumeFraction;
  const bled = inputs.resinLostPercent > 0 || inputs.voidPercent > 0;
  const mean = 'Mean over the plies of the stack, which are of different cards.';
  const laidBand = looseBand(stack);
  return [
    figure(
      stackSpecs.fiberFraction,
      fraction,
      one && !bled
        ? `Vf = (${formatNumber(1 - card.resinMassFraction, 3)} / ${formatNumber(card.fiberDensityGCm3, 2)}) / (${formatNumber(1 - card.resinMassFraction, 3)} / ${formatNumber(card.fiberDensityGCm3, 2)} + ${formatNumber(card.resinMassFraction, 3)} / ${formatNumber(card.resinDensityGCm3, 2)}) = ${formatNumber(fraction, 3)}`
        : `fiber ${mm(fraction * total.curedMm)} of ${mm(total.curedMm)} cured, over all plies`,
      bledWords(inputs, stack),
    ),
    figure(
      stackSpecs.curedPly,
      stack.curedPlyMm,
      one
        ? `${formatNumber(card.arealWeightGsm, 0)} g/m² / (1000 × ${formatNumber(card.fiberDensityGCm3, 2)} g/cm³ × ${formatNumber(fraction, 3)}) = ${mm(stack.curedPlyMm)}`
        : mean,
    ),
    {
      ...figure(
        { ...stackSpecs.laidPly, status: stack.laidStatus },
        stack.laidPlyMm,
        one ? laidWorking(stack, bulkFactor) : mean,
        ...(laidBand === null
          ? []
          : ['An estimate: a caliper over three laid plies, divided by three, replaces it.']),
      ),
      ...(laidBand === null ? {} : { band: laidBand }),
    },
    figure(stackSpecs.count, total.plies, 'Counted in the stack.'),
    figure(
      { ...stackSpecs.laid, status: stack.laidStatus },
      total.laidMm,
      one
        ? `${total.plies} × ${mm(stack.laidPlyMm)} = ${mm(total.laidMm)}`
        : `sum of ${total.plies} plies of different cards`,
    ),
    figure(
      stackSpecs.cured,
      total.curedMm,
      one
        ? `${total.plies} × ${mm(stack.curedPlyMm)} = ${mm(total.curedMm)}`
        : bled
          ? bledWords(inputs, stack)
          : plies.map((ply) => mm(curedThicknessMm(ply.card))).join(' + '),
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

function bledWords({ resinLostPercent, voidPercent }: PliesInputs, { resinMeasured }: KnownStack): string {
  const weighed = resinMeasured ? ' Resin content by the weighed offcut.' : '';
  return resinLostPercent === 0 && voidPercent === 0
    ? `No bleed and no voids, as entered.${weighed}`
    : `After ${formatNumber(resinLostPercent, 1)} % of the resin is lost, with ${formatNumber(voidPercent, 1)} % of voids.${weighed}`;
}

function laidWorking(stack: KnownStack, bulkFactor: number): string {
  const card = stack.plies[0]?.card;
  if (card === undefined || card.laidThicknessMm === null)
    return `${mm(stack.curedPlyMm)} cured × ${formatNumber(bulkFactor, 2)} = ${mm(stack.laidPlyMm)}`;
  return stack.laidStatus === 'measured'
    ? `${mm(card.laidThicknessMm)} by caliper, from the card.`
    : `${mm(card.laidThicknessMm)} as the ready-made card says; nobody has measured your roll yet.`;
}

/** Half to one and a half of the loft over cured (common practice); null for a measured ply. */
function looseBand(stack: KnownStack): readonly [number, number] | null {
  if (stack.laidStatus === 'measured') return null;
  const loft = stack.laidPlyMm - stack.curedPlyMm;
  return [stack.curedPlyMm + 0.5 * loft, stack.curedPlyMm + 1.5 * loft];
}

function wallFigures(context: StepContext): readonly Figure[] {
  const shareSpecs = [
    ['plies.loosePercent', 'Wall over the stack as laid: loose', 'over'],
    ['plies.betweenPercent', 'Wall between laid and cured: presses', 'within'],
    ['plies.underPercent', 'Wall under the cured stack: holds the mold open', 'under'],
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
  };
  const stack = resolveStack(context.inputs.plies);
  const wall = wallInUse(context);
  const wanted = stack.known
    ? wantedWallFigure(wantedWallSpec, stack)
    : unknownFigure(wantedWallSpec, stack.reason);
  if (!stack.known || !wall.known) {
    const why = stack.known ? (wall.known ? '' : wall.reason) : stack.reason;
    return [
      ...shareSpecs.map(([id, label]) => unknownFigure({ id, label, unit: '%', decimals: 1 }, why)),
      unknownFigure(wantedPliesSpec, why),
      wanted,
    ];
  }
  const { curedMm, laidMm } = stack.total;
  const shares = stackShares(wall, stack);
  const status = wall.nominal ? 'your entry' : 'computed';
  return [
    ...shareSpecs.map(([id, label, share]) =>
      figure(
        { id, label, unit: '%', decimals: 1, status },
        percent(shares[share]),
        `Cured ${mm(curedMm, 2)}, as laid ${mm(laidMm, 2)}, to half a caliper step (${mm(halfCaliperStepMm)}); wall: ${wall.how}.`,
      ),
    ),
    figure(
      { ...wantedPliesSpec, status },
      wantedPlies(wall.medianMm, stack.curedPlyMm, stack.laidPlyMm, context.inputs.walls.overMm),
      `Wall ${mm(wall.medianMm)}; n plies span n × ${mm(stack.curedPlyMm)} cured to n × ${mm(stack.laidPlyMm)} as laid; the fewest that fill it.`,
    ),
    wanted,
  ];
}

function wantedWallFigure(spec: FigureSpec, { total }: KnownStack): Figure {
  const low = Math.min(total.curedMm, total.laidMm);
  const high = Math.max(total.curedMm, total.laidMm);
  return {
    ...figure(
      spec,
      wantedWallMm(low, high),
      `Midway between ${mm(total.curedMm)} cured and ${mm(total.laidMm)} as laid: the most room for print error either way.`,
    ),
    band: [low, high],
  };
}
