/** What is in the cured laminate, and what the part weighs. */
import type { Figure } from '../../core/figure';
import { contentAfterBleed } from '../../core/laminate/bleedAndVoids';
import { partMass, type CoveredArea } from '../../core/laminate/partMass';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { count, figure, percent, unknownFigure, type FigureSpec } from '../kit/figures';
import { laminateInMold, midSurfaceMm2, type LaminateInMold } from '../closedMold/laminateInMold';
import { availablePart } from '../shared/missing';
import { resolveStack, type KnownStack } from '../shared/stack';

const contentSpecs = {
  thickness: {
    id: 'plies.moldedThicknessMm',
    label: 'Laminate as molded, mean',
    unit: 'mm',
    decimals: 2,
    source: 'rigidCavity',
  },
  voids: {
    id: 'plies.moldedVoidPercent',
    label: 'Voids in it',
    unit: '%',
    decimals: 1,
    source: 'rigidCavity',
  },
  fraction: {
    id: 'plies.moldedFiberFraction',
    label: 'Fiber volume fraction as molded',
    unit: '',
    decimals: 3,
    source: 'rigidCavity',
  },
  fiberMass: { id: 'plies.fiberMassFraction', label: 'Fiber mass fraction', unit: '', decimals: 3 },
  density: {
    id: 'plies.densityGCm3',
    label: 'Density of the laminate, voids included',
    unit: 'g/cm³',
    decimals: 3,
    source: 'fiberVolumeNotes',
  },
  areal: { id: 'plies.arealMassGsm', label: 'Cured laminate per area of part', unit: 'g/m²', decimals: 0 },
  resin: { id: 'plies.resinGsm', label: 'Resin left per area of part', unit: 'g/m²', decimals: 0 },
} as const satisfies Record<string, FigureSpec>;

const partTable = {
  area: { id: 'plies.midSurfaceCm2', label: 'Mid-surface of the part', unit: 'cm²', decimals: 1 },
  part: { id: 'plies.partMassG', label: 'Cured part, mass', unit: 'g', decimals: 1 },
  resin: { id: 'plies.resinMassG', label: 'Resin in the part', unit: 'g', decimals: 1 },
  lost: { id: 'plies.resinLostG', label: 'Resin pressed out', unit: 'g', decimals: 1 },
} as const satisfies Record<string, FigureSpec>;

const gsm = (value: number) => `${formatNumber(value, 0)} g/m²`;

export function contentFigures(context: StepContext): readonly Figure[] {
  const stack = resolveStack(context.inputs.plies);
  if (!stack.known) return Object.values(contentSpecs).map((spec) => unknownFigure(spec, stack.reason));
  const { content, how } = laminateInMold(context, stack);
  const { fiberMm, voidFreeMm } = stack.volume;
  const thickness = `${formatNumber(content.thicknessMm, 3)} mm`;
  const said = `${how.charAt(0).toUpperCase()}${how.slice(1)}.`;
  return [
    figure(
      contentSpecs.thickness,
      content.thicknessMm,
      `${formatNumber(voidFreeMm, 3)} mm that the plies fill, less what is pressed out, over (1 − voids) = ${thickness}`,
      said,
    ),
    figure(
      contentSpecs.voids,
      percent(content.voidFraction),
      `1 − laminate / cavity; cavity ${thickness} in the mean`,
      said,
    ),
    figure(
      contentSpecs.fraction,
      content.fiberVolumeFraction,
      `fiber ${formatNumber(fiberMm, 3)} mm of ${thickness}`,
      said,
    ),
    figure(
      contentSpecs.fiberMass,
      content.fiberMassFraction,
      `fiber ${gsm(content.fiberGsm)} of ${gsm(content.arealMassGsm)}`,
    ),
    figure(
      contentSpecs.density,
      content.densityGCm3,
      `${gsm(content.arealMassGsm)} / (1000 × ${thickness}) = ${formatNumber(content.densityGCm3, 3)} g/cm³; ${formatNumber(densityWithoutVoids(content), 3)} without voids`,
      said,
    ),
    figure(
      contentSpecs.areal,
      content.arealMassGsm,
      `fiber ${gsm(content.fiberGsm)} + resin ${gsm(content.resinGsm)}${content.resinLostGsm > 0 ? `, after ${gsm(content.resinLostGsm)} of resin is lost` : ''}`,
    ),
    figure(
      contentSpecs.resin,
      content.resinGsm,
      `${gsm(content.arealMassGsm)} − ${gsm(content.fiberGsm)} of fiber${stack.resinMeasured ? '; resin content by the scale' : ''}`,
    ),
  ];
}

const densityWithoutVoids = ({ densityGCm3, voidFraction }: LaminateInMold['content']) =>
  densityGCm3 / (1 - voidFraction);

export function partMassFigures(context: StepContext): readonly Figure[] {
  const stack = resolveStack(context.inputs.plies);
  const part = availablePart(context);
  const areaMm2 = midSurfaceMm2(context);
  const why = !stack.known
    ? stack.reason
    : !part.known
      ? part.reason
      : areaMm2 === null
        ? 'No show face was told apart, so the area to cover is not known.'
        : null;
  if (why !== null || !stack.known || areaMm2 === null)
    return Object.values(partTable).map((spec) => unknownFigure(spec, why ?? ''));
  const { content, cavity, how } = laminateInMold(context, stack);
  const mass = massOver(areaMm2, stack, content);
  const note = 'Midway through the wall of the show face; rims and details are left out.';
  const patchNote =
    stack.patches.length === 0
      ? ''
      : ` + ${count(stack.patches.length, 'doubler or overlap', 'doublers and overlaps')}`;
  return [
    figure(
      partTable.area,
      areaMm2 / 100,
      cavity === null
        ? 'From the faces as far as they are told apart.'
        : 'Σ over the show face, moved inward by half the wall.',
      note,
    ),
    figure(
      partTable.part,
      mass.partG,
      `${formatNumber(areaMm2 / 100, 1)} cm² × ${formatNumber(content.arealMassGsm, 0)} g/m²${patchNote} = ${formatNumber(mass.partG, 2)} g`,
      ...(cavity === null ? [] : [cavityWords(cavity, content, mass.partG)]),
      note,
      'Trimmed, without coat and inserts.',
    ),
    figure(partTable.resin, mass.resinG, `the part less ${formatNumber(mass.fiberG, 1)} g of fiber`, note),
    figure(partTable.lost, mass.resinLostG, how, 'The same balance as at the Mold closing step.'),
  ];
}

function cavityWords(
  { cavityMm3, airMm3 }: NonNullable<LaminateInMold['cavity']>,
  content: LaminateInMold['content'],
  partG: number,
): string {
  const density = densityWithoutVoids(content);
  return `${formatNumber(partG, 2)} g / ${formatNumber(density, 3)} g/cm³ + ${formatNumber(airMm3 / 1000, 2)} cm³ of air against a cavity of ${formatNumber(cavityMm3 / 1000, 2)} cm³.`;
}

function massOver(areaMm2: number, stack: KnownStack, content: LaminateInMold['content']) {
  const covered: CoveredArea[] = [
    { areaMm2, content },
    ...stack.patches.map(({ patch, card }) => ({
      areaMm2: 100 * patch.areaCm2,
      content: contentAfterBleed([card], content.resinLostShare, content.voidFraction),
    })),
  ];
  return partMass(covered);
}
