/** What is in the cured laminate, and what the part weighs. */
import type { Figure } from '../../core/figure';
import { contentAfterBleed } from '../../core/laminate/bleedAndVoids';
import { partMass, type CoveredArea } from '../../core/laminate/partMass';
import { laidPlyThicknessMm } from '../../core/laminate/plyThickness';
import { compensatedSum } from '../../core/numeric/compensatedSum';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../context';
import { count, figure, unknownFigure, type FigureSpec } from '../figures';
import { availablePart } from '../missing';
import type { PliesInputs } from './inputs';
import { resolveStack, type KnownStack } from './stack';

const contentSpecs = {
  fiberMass: { id: 'plies.fiberMassFraction', label: 'Fiber mass fraction', unit: '', decimals: 3 },
  density: {
    id: 'plies.densityGCm3',
    label: 'Density of the laminate',
    unit: 'g/cm³',
    decimals: 3,
    source: 'fiberVolumeNotes',
  },
  areal: { id: 'plies.arealMassGsm', label: 'Cured laminate per area of part', unit: 'g/m²', decimals: 0 },
  resin: { id: 'plies.resinGsm', label: 'Resin left per area of part', unit: 'g/m²', decimals: 0 },
} as const satisfies Record<string, FigureSpec>;

const partSpecs = {
  area: { id: 'plies.midSurfaceCm2', label: 'Mid-surface of the part', unit: 'cm²', decimals: 1 },
  part: { id: 'plies.partMassG', label: 'Cured part, mass', unit: 'g', decimals: 1 },
  resin: { id: 'plies.resinMassG', label: 'Resin in the part', unit: 'g', decimals: 1 },
  lost: { id: 'plies.resinLostG', label: 'Resin pressed out', unit: 'g', decimals: 1 },
} as const satisfies Record<string, FigureSpec>;

const patchSpecs = {
  area: {
    id: 'plies.patchAreaCm2',
    label: 'Local patches, area',
    unit: 'cm²',
    decimals: 1,
    status: 'your entry',
  },
  laid: { id: 'plies.patchLaidMm', label: 'Thickest place with patches, as laid', unit: 'mm', decimals: 2 },
} as const satisfies Record<string, FigureSpec>;

const gsm = (value: number) => `${formatNumber(value, 0)} g/m²`;

export function contentFigures({ inputs }: StepContext): readonly Figure[] {
  const stack = resolveStack(inputs.plies);
  if (!stack.known) return Object.values(contentSpecs).map((spec) => unknownFigure(spec, stack.reason));
  const { content } = stack;
  return [
    figure(
      contentSpecs.fiberMass,
      content.fiberMassFraction,
      `fiber ${gsm(content.fiberGsm)} of ${gsm(content.arealMassGsm)}`,
    ),
    figure(
      contentSpecs.density,
      content.densityGCm3,
      `${gsm(content.arealMassGsm)} / (1000 × ${formatNumber(content.thicknessMm, 3)} mm) = ${formatNumber(content.densityGCm3, 3)} g/cm³${content.voidFraction > 0 ? ', voids counted as volume' : ''}`,
    ),
    figure(
      contentSpecs.areal,
      content.arealMassGsm,
      `fiber ${gsm(content.fiberGsm)} + resin ${gsm(content.resinGsm)}${content.resinLostGsm > 0 ? `, after ${gsm(content.resinLostGsm)} of resin is lost` : ''}`,
    ),
    figure(
      contentSpecs.resin,
      content.resinGsm,
      `${gsm(content.arealMassGsm)} − ${gsm(content.fiberGsm)} of fiber${stack.resinMeasured ? '; resin content by the weighed offcut' : ''}`,
    ),
  ];
}

export function partMassFigures(context: StepContext): readonly Figure[] {
  const { plies } = context.inputs;
  const stack = resolveStack(plies);
  const part = availablePart(context);
  const why = stack.known ? (part.known ? null : part.reason) : stack.reason;
  if (why !== null || !stack.known || !part.known)
    return Object.values(partSpecs).map((spec) => unknownFigure(spec, why ?? ''));
  const { show, core } = part.measured.summary.kindAreaMm2;
  if (!(show > 0)) {
    const noShow = 'No show face was told apart, so the area to cover is not known.';
    return Object.values(partSpecs).map((spec) => unknownFigure(spec, noShow));
  }
  const areaMm2 = core > 0 ? (show + core) / 2 : show;
  const mass = massOver(areaMm2, stack, plies);
  const low = massOver(core > 0 ? Math.min(show, core) : show, stack, plies);
  const high = massOver(core > 0 ? Math.max(show, core) : show, stack, plies);
  const areaWorking =
    core > 0
      ? `(show face ${formatNumber(show / 100, 1)} + core face ${formatNumber(core / 100, 1)}) / 2 cm²`
      : `show face ${formatNumber(show / 100, 1)} cm²; no core face was told apart`;
  const note = 'Midway between the faces as far as they are told apart; rims and details are left out.';
  const patchNote =
    stack.patches.length === 0 ? '' : ` + ${count(stack.patches.length, 'local patch', 'local patches')}`;
  const banded = (one: Figure, ends: readonly [number, number]): Figure =>
    core > 0 ? { ...one, band: ends } : one;
  return [
    figure(partSpecs.area, areaMm2 / 100, areaWorking, note),
    banded(
      figure(
        partSpecs.part,
        mass.partG,
        `${formatNumber(areaMm2 / 100, 1)} cm² × ${formatNumber(stack.content.arealMassGsm, 0)} g/m²${patchNote} = ${formatNumber(mass.partG, 1)} g`,
        note,
        'Trimmed, without coat and inserts.',
      ),
      [low.partG, high.partG],
    ),
    banded(
      figure(partSpecs.resin, mass.resinG, `the part less ${formatNumber(mass.fiberG, 1)} g of fiber`, note),
      [low.resinG, high.resinG],
    ),
    figure(
      partSpecs.lost,
      mass.resinLostG,
      `${formatNumber(plies.resinLostPercent, 1)} % of the resin laid in, as you entered`,
    ),
  ];
}

function massOver(areaMm2: number, stack: KnownStack, inputs: PliesInputs) {
  const covered: CoveredArea[] = [
    { areaMm2, content: stack.content },
    ...stack.patches.map(({ patch, card }) => ({
      areaMm2: 100 * patch.areaCm2,
      content: contentAfterBleed([card], inputs.resinLostPercent / 100, inputs.voidPercent / 100),
    })),
  ];
  return partMass(covered);
}

export function patchFigures({ inputs }: StepContext): readonly Figure[] {
  const stack = resolveStack(inputs.plies);
  if (!stack.known) return Object.values(patchSpecs).map((spec) => unknownFigure(spec, stack.reason));
  const { patches, total } = stack;
  const totalCm2 = compensatedSum(patches.map(({ patch }) => patch.areaCm2));
  const thickest = thickestPlace(stack, inputs.plies.bulkFactor);
  return [
    figure(
      patchSpecs.area,
      totalCm2,
      patches.length === 0
        ? 'There are no local patches.'
        : patches.map(({ patch }) => `${patch.place} ${formatNumber(patch.areaCm2, 1)}`).join(' + '),
    ),
    figure(
      { ...patchSpecs.laid, status: stack.laidStatus },
      total.laidMm + (thickest?.addedMm ?? 0),
      thickest === null
        ? 'The stack itself; there are no local patches.'
        : `stack ${formatNumber(total.laidMm, 2)} mm + ${formatNumber(thickest.addedMm, 2)} mm at ${thickest.place}; patches of one place lie on each other`,
      'The wall of the pattern must be thicker there by as much.',
    ),
  ];
}

function thickestPlace(
  { patches }: KnownStack,
  bulkFactor: number,
): { readonly place: string; readonly addedMm: number } | null {
  const addedMm = new Map<string, number>();
  for (const { patch, card } of patches)
    addedMm.set(patch.place, (addedMm.get(patch.place) ?? 0) + laidPlyThicknessMm(card, bulkFactor));
  return [...addedMm].reduce<{ place: string; addedMm: number } | null>(
    (most, [place, added]) => (most === null || added > most.addedMm ? { place, addedMm: added } : most),
    null,
  );
}
