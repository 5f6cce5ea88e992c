/** Figures of the Fit step. */
import type { Figure } from '../../core/figure';
import type { FitFindings } from '../../core/fit/findings';
import { fastenersAlong, seamOf } from '../../core/fit/seam';
import { toleranceStack, type StackItem } from '../../core/fit/stack';
import { wovenConductivitySPerM } from '../../core/radio/conductivity';
import { transmitterFinding, type TransmitterFinding } from '../../core/radio/transmitterVerdict';
import { formatNumber } from '../../core/units/formatNumber';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import { wallBand } from '../shared/band';
import type { StepContext } from '../shared/context';
import type { ProjectInputs } from '../inputs/project';
import { stoneInUse } from '../stone/stoneInUse';

const specs = {
  clearance: {
    id: 'fit.leastClearanceMm',
    label: 'Least clearance of the contents',
    unit: 'mm',
    decimals: 2,
  },
  scale: { id: 'fit.scaleThatFits', label: 'Least scale at which all fits', unit: '×', decimals: 4 },
  shift: { id: 'fit.shiftThatFitsMm', label: 'Shift that makes it fit, x, y, z', unit: 'mm', decimals: 2 },
  ladder: { id: 'fit.ladder', label: 'Sizes to print', unit: '', decimals: 0 },
  posts: { id: 'fit.posts', label: 'Posts under boards', unit: '', decimals: 0 },
  glue: { id: 'fit.postGlueMm2', label: 'Glued area of the posts', unit: 'mm²', decimals: 0 },
  rimLength: { id: 'fit.rimLengthMm', label: 'Rim, length', unit: 'mm', decimals: 1 },
  gap: { id: 'fit.rimGapMaxMm', label: 'Widest gap between the lands', unit: 'mm', decimals: 2 },
  step: { id: 'fit.rimStepMaxMm', label: 'Largest step between the rims', unit: 'mm', decimals: 2 },
  measured: { id: 'fit.rimMeasuredMm', label: 'Largest step as measured', unit: 'mm', decimals: 2 },
  mateScale: { id: 'fit.mateScale', label: 'Print the other half next at', unit: '×', decimals: 4 },
  scraped: { id: 'fit.rimScrapedMm', label: 'Taken off one rim by scraping', unit: 'mm', decimals: 2 },
  worst: { id: 'fit.stackWorstMm', label: 'Tolerances, all off one way', unit: 'mm', decimals: 2 },
  rss: { id: 'fit.stackRssMm', label: 'Tolerances, root sum square', unit: 'mm', decimals: 2 },
  gasket: { id: 'fit.gasketMl', label: 'Bead or cord along the seam', unit: 'mL', decimals: 2 },
  cartridge: { id: 'fit.cartridgePercent', label: 'Of one cartridge', unit: '%', decimals: 0 },
  squeezed: { id: 'fit.squeezedMl', label: 'Squeezed out of the seam', unit: 'mL', decimals: 2 },
  screws: { id: 'fit.screws', label: 'Screws along the rim', unit: '', decimals: 0 },
  edge: {
    id: 'fit.screwEdgeMm',
    label: 'Hole to edge, at least',
    unit: 'mm',
    decimals: 1,
    status: 'common practice',
  },
  sheet: { id: 'fit.sheetOhm', label: 'Shell, resistance of a square', unit: 'Ω', decimals: 2 },
  loss: { id: 'fit.radioLossDb', label: 'Loss of each transmitter', unit: 'dB', decimals: 1 },
} as const satisfies Record<string, FigureSpec>;

const mm = (value: number, decimals = 2) => `${formatNumber(value, decimals)} mm`;
const places = (at: readonly number[]) => at.map((one) => formatNumber(one, 1)).join(', ');

export function fitFigures(context: StepContext): readonly Figure[] {
  const found = context.fit ?? null;
  return [
    ...contentFigures(context, found),
    ...rimFigures(context, found),
    ...stackFigures(context),
    ...seamFigures(context, found),
    ...radioFigures(context),
  ];
}

function contentFigures({ inputs }: StepContext, found: FitFindings | null): readonly Figure[] {
  const list = [specs.clearance, specs.scale, specs.shift, specs.ladder, specs.posts, specs.glue];
  const why =
    inputs.fit.contents.length === 0
      ? 'No contents are entered.'
      : (found?.contentsProblem ?? 'The fit is not worked out yet.');
  if (found === null || found.clearances.length === 0) return list.map((spec) => unknownFigure(spec, why));
  const { clearances, leastScale, shift, ladder } = found;
  const posts = found.posts.flatMap((board) => board.posts);
  const least = Math.min(...clearances.map(({ clearanceMm }) => clearanceMm));
  return [
    figure(
      specs.clearance,
      least,
      ...clearances.map(
        ({ name, clearanceMm, atMm, overRimMm }) =>
          `${name}: ${mm(clearanceMm)} at ${places(atMm)}${overRimMm > 0 ? `; reaches ${mm(overRimMm)} over the rim` : ''}.`,
      ),
      'Exact distance between each body and the core face, at its size as cast and cured.',
    ),
    leastScale === null
      ? unknownFigure(specs.scale, 'No scale up to 4 was found at which all fits.')
      : figure(
          specs.scale,
          leastScale.scale,
          `With ${mm(inputs.fit.clearanceMm)} all round, contents shifted together by ${places(leastScale.shiftMm)} mm and turned by ${formatNumber(leastScale.turnDeg, 1)}° about the pull; the wall keeps its thickness.`,
          'Linear programs over shift, turn and scale; the clearance at the end is exact. A lesser scale may exist with another arrangement.',
        ),
    shift === null
      ? unknownFigure(specs.shift, 'No shift alone makes everything fit.')
      : figure(specs.shift, shift.shiftMm, 'All contents together, at the size as it is.'),
    figure(
      specs.ladder,
      ladder.length === 0
        ? 'none'
        : ladder
            .map(({ scale, fits }) => `${formatNumber(scale, 3)} ${fits ? 'fits' : 'does not fit'}`)
            .join('; '),
      ladder.length === 0
        ? 'No sizes are asked for.'
        : `Least clearance ${ladder.map(({ clearanceMm }) => mm(clearanceMm)).join(', ')}, contents placed as for the least scale.`,
    ),
    figure(
      specs.posts,
      posts.length,
      ...found.posts.map(
        ({ name, posts: own }) =>
          `${name}: ${own.length === 0 ? 'nothing of the core face lies over its corners' : own.map(({ heightMm, footMm }) => `${mm(heightMm, 1)} high, foot at ${places(footMm)}`).join('; ')}.`,
      ),
      `Posts of ${mm(inputs.fit.postMm, 1)}, in from the corners of each board.`,
    ),
    figure(
      specs.glue,
      posts.reduce((sum, { glueMm2 }) => sum + glueMm2, 0),
      'Cross-section over the cosine of the slope that each stands on.',
    ),
  ];
}

function rimFigures({ inputs }: StepContext, found: FitFindings | null): readonly Figure[] {
  const { measuredRims, mate } = inputs.fit;
  const measured =
    measuredRims.length === 0
      ? unknownFigure(specs.measured, 'No rims are measured.')
      : figure(
          specs.measured,
          Math.max(...measuredRims.map(({ ownMm, mateMm }) => Math.abs(ownMm - mateMm) / 2)),
          ...measuredRims.map(
            ({ place, ownMm, mateMm }) => `Place ${place}: (${mm(ownMm)} − ${mm(mateMm)}) / 2.`,
          ),
        );
  const length =
    found?.rimLengthMm == null
      ? unknownFigure(specs.rimLength, 'The rim is looked for when contents or the other half are entered.')
      : figure(
          specs.rimLength,
          found.rimLengthMm,
          `Outer outline of the largest flat ring, land ${mm(found.landMm ?? 0)}.`,
        );
  const rims = found?.rims ?? null;
  if (rims === null) {
    const why =
      mate === null && found?.rimsProblem == null
        ? 'No other half is chosen.'
        : (found?.rimsProblem ?? 'The rims are not compared yet.');
    const list = [specs.gap, specs.step, specs.mateScale, specs.scraped];
    return [length, ...list.map((spec) => unknownFigure(spec, why)), measured];
  }
  return [
    length,
    figure(specs.gap, rims.gapMaxMm, 'Lands held against each other where they stand out most.'),
    figure(
      specs.step,
      rims.stepMaxMm,
      `Outlines laid on each other at their own sizes by least squares; worst at ${places(rims.worstAtMm)}.`,
      'Each half at its size as cast and cured, by its own stone, program and print.',
    ),
    figure(specs.mateScale, rims.mateScale, 'Scale of the robust similarity between the outlines.'),
    figure(
      specs.scraped,
      rims.scrapedMm,
      `${formatNumber(100 * rims.scrapedShare, 1)} % of the outline lies more than 0.1 mm off the similarity.`,
    ),
    measured,
  ];
}

/** What the workbook knows of print, stone and wall, and what the maker has added. */
function stackItems(inputs: ProjectInputs, measured: StepContext['measured']): readonly StackItem[] {
  const box = measured?.summary;
  const longestMm =
    box === undefined ? 0 : Math.max(...box.boxMaxMm.map((high, axis) => high - box.boxMinMm[axis]!));
  const stone = stoneInUse(inputs.mold).settingExpansionPercent;
  const stonePercent =
    stone.band === null || stone.band === undefined ? 0 : (stone.band[1] - stone.band[0]) / 2;
  const band = wallBand(inputs);
  return [
    { name: 'Print', plusMinusMm: inputs.fit.printPlusMinusMm },
    { name: `Stone, expansion over ${mm(longestMm, 0)}`, plusMinusMm: (stonePercent / 100) * longestMm },
    { name: 'Wall of the laminate', plusMinusMm: band === null ? 0 : (band.goHighMm - band.goLowMm) / 2 },
    ...inputs.fit.stack.map(({ name, plusMinusMm }) => ({ name, plusMinusMm })),
  ];
}

function stackFigures({ inputs, measured }: StepContext): readonly Figure[] {
  if (measured === null) {
    const why = 'The length that stone grows over is not measured yet.';
    return [unknownFigure(specs.worst, why), unknownFigure(specs.rss, why)];
  }
  const items = stackItems(inputs, measured);
  const { worstMm, rssMm } = toleranceStack(items);
  const working = items.map(({ name, plusMinusMm }) => `${name}: ± ${mm(plusMinusMm, 3)}`).join('; ');
  return [
    figure(specs.worst, worstMm, `${working}.`),
    figure(specs.rss, rssMm, `√ of the sum of squares: ${working}.`),
  ];
}

function seamFigures({ inputs: { fit } }: StepContext, found: FitFindings | null): readonly Figure[] {
  const list = [specs.gasket, specs.cartridge, specs.squeezed];
  const lengthMm = found?.rimLengthMm ?? null;
  const screws = [specs.screws, specs.edge];
  if (lengthMm === null || found === null) {
    const why = 'The length of the rim is not known: enter contents or choose the other half.';
    return [...list, ...screws].map((spec) => unknownFigure(spec, why));
  }
  const gapMm = fit.seamGapMm + (found.rims?.gapMaxMm ?? 0);
  const seam = seamOf({
    lengthMm,
    landMm: found.landMm ?? 0,
    gapMm,
    beadMm: fit.beadMm,
    lossShare: fit.seamLossPercent / 100,
    cartridgeMl: fit.cartridgeMl,
  });
  const bead =
    fit.seam === 'none'
      ? list.map((spec) => unknownFigure(spec, 'No seam is chosen.'))
      : [
          figure(
            specs.gasket,
            seam.beadMl,
            `${mm(lengthMm, 0)} × π ${mm(fit.beadMm)}² / 4 = ${mm(lengthMm, 0)} × ${formatNumber(seam.beadMm2, 2)} mm².`,
          ),
          figure(
            specs.cartridge,
            100 * seam.cartridgeShare,
            `${formatNumber(seam.takenMl, 2)} mL taken, ${formatNumber(fit.seamLossPercent, 0)} % of it lost.`,
          ),
          figure(
            specs.squeezed,
            seam.squeezedMl,
            `Bead less what the closed seam holds, land ${mm(found.landMm ?? 0)} × gap ${mm(gapMm)}; below 0 the seam is not filled.`,
            `A cord is pressed to ${formatNumber(100 * (1 - seam.pressedShare), 0)} % of its height.`,
          ),
        ];
  if (fit.screwMm === 0)
    return [...bead, ...screws.map((spec) => unknownFigure(spec, 'No screws are entered.'))];
  const { count, pitchMm, edgeMm, lugMm } = fastenersAlong(lengthMm, fit.screwPitchMm, fit.screwMm);
  return [
    ...bead,
    figure(
      specs.screws,
      count,
      `${mm(lengthMm, 0)} / ${count} = ${mm(pitchMm, 1)} apart, four diameters at least.`,
    ),
    figure(
      specs.edge,
      edgeMm,
      `Three diameters from the middle of a hole to any edge; a lug is ${mm(lugMm, 1)} wide at least.`,
    ),
  ];
}

/** null while the shell's wall or its size is not known. */
export function radioFindings({ inputs, measured }: StepContext): readonly TransmitterFinding[] | null {
  const wallMm = wallBand(inputs)?.wantedMm;
  if (measured === null || wallMm === undefined) return null;
  const { boxMinMm, boxMaxMm } = measured.summary;
  const radiusMm = Math.max(1, Math.min(...boxMaxMm.map((high, axis) => high - boxMinMm[axis]!)) / 2);
  const sheet = { conductivitySPerM: conductivityOf(inputs), thicknessMm: wallMm };
  return inputs.fit.transmitters.map((one) => transmitterFinding(sheet, radiusMm, one));
}

const conductivityOf = ({ fit }: ProjectInputs): number =>
  fit.conductivitySPerM ?? (wovenConductivitySPerM[0] + wovenConductivitySPerM[1]) / 2;

function radioFigures(context: StepContext): readonly Figure[] {
  const found = radioFindings(context);
  const why =
    context.inputs.fit.transmitters.length === 0
      ? 'No transmitters are entered.'
      : 'Wall and size of the shell are not known yet.';
  if (found === null || found.length === 0)
    return [unknownFigure(specs.sheet, why), unknownFigure(specs.loss, why)];
  return [
    figure(
      specs.sheet,
      found[0]!.sheetOhm,
      `1 / (${formatNumber(conductivityOf(context.inputs), 0)} S/m × ${mm(wallBand(context.inputs)!.wantedMm)}).`,
    ),
    figure(
      specs.loss,
      found.map(({ lossDb }) => lossDb),
      ...found.map(
        ({ name, field, lossDb, closedLossDb, skinDepthMm, wavelengthMm }) =>
          `${name}: ${field === 'near' ? 'magnetic near field of a coil through a closed thin shell (Kaden, from memory); tuning and quality suffer all the same' : 'plane wave through an endless sheet, an upper bound'}, ${formatNumber(closedLossDb, 1)} dB closed, ${formatNumber(lossDb, 1)} dB with its window; skin depth ${mm(skinDepthMm)}, wavelength ${mm(wavelengthMm, 0)}.`,
      ),
    ),
  ];
}
