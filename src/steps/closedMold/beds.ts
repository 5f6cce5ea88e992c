/** The fiber-bed curve of each ply of the stack, and how well it is known. */
import type { FigureStatus } from '../../core/figure';
import type { BedLayer } from '../../core/closing/bedCurve';
import { alignedBed, bedThroughPoints, wovenBed, type FiberBed } from '../../core/closing/fiberBed';
import { fiberFractionInGap } from '../../core/laminate/plyThickness';
import type { SourceKey } from '../../core/sources';
import { formatNumber } from '../../core/units/formatNumber';
import type { KnownStack } from '../shared/stack';
import type { BedPoints } from '../inputs/clamp';
import type { ClosingInputs } from '../inputs/closing';

export interface StackBeds {
  /** One per material of the stack. */
  readonly layers: readonly BedLayer[];
  /** The least certain of the curves. */
  readonly status: FigureStatus;
  readonly source: SourceKey;
  /** One line per material, for the working of figures. */
  readonly words: readonly string[];
}

interface CardBed {
  readonly bed: FiberBed;
  readonly kind: 'your two points' | 'woven' | 'aligned tows';
}

/** @throws Problem `closing.bedPoints` when two measured points make no curve */
export function stackBeds(stack: KnownStack, inputs: ClosingInputs): StackBeds {
  const byCard = new Map<string, { name: string; fiberMm: number; own: CardBed }>();
  for (const { card } of stack.plies) {
    const fiberMm = card.arealWeightGsm / (1000 * card.fiberDensityGCm3);
    const known = byCard.get(card.id);
    if (known !== undefined) known.fiberMm += fiberMm;
    else byCard.set(card.id, { name: card.name, fiberMm, own: bedOf(card, inputs) });
  }
  const materials = [...byCard.values()];
  const kinds = materials.map(({ own }) => own.kind);
  return {
    layers: materials.map(({ own, fiberMm }) => ({ bed: own.bed, solidFiberMm: fiberMm })),
    status: kinds.includes('aligned tows')
      ? 'from memory'
      : kinds.includes('woven')
        ? 'common practice'
        : 'measured',
    source: kinds.includes('aligned tows') ? 'gutowski1987' : 'lomov2010',
    words: materials.map(({ name, own }) => wordsOf(name, own)),
  };
}

function bedOf(card: KnownStack['plies'][number]['card'], inputs: ClosingInputs): CardBed {
  const measured = inputs.bedPoints.find(({ materialId }) => materialId === card.id);
  if (measured !== undefined) {
    const bed = bedThroughPoints(...pointsOf(card, measured));
    return { bed, kind: 'your two points' };
  }
  const law = inputs.bedLaw === 'by weave' ? (card.weave === 'woven' ? 'woven' : 'aligned') : inputs.bedLaw;
  if (law === 'aligned') return { bed: alignedBed, kind: 'aligned tows' };
  return { bed: wovenBed, kind: 'woven' };
}

function pointsOf(card: KnownStack['plies'][number]['card'], points: BedPoints) {
  const at = (kpa: number, plyMm: number) => ({
    pressurePa: 1000 * kpa,
    fiberFraction: fiberFractionInGap(card.arealWeightGsm, card.fiberDensityGCm3, plyMm),
  });
  return [at(points.lightKpa, points.lightPlyMm), at(points.heavyKpa, points.heavyPlyMm)] as const;
}

const two = (value: number) => formatNumber(value, 2);

function wordsOf(name: string, { bed, kind }: CardBed): string {
  if (bed.kind === 'aligned')
    return `${name}: aligned tows, p = ${formatNumber(bed.springPa, 0)} Pa × (√(Vf/${two(bed.unloadedFraction)}) − 1) / (√(${formatNumber(bed.limitFraction, 3)}/Vf) − 1)⁴, zero at and under ${two(bed.unloadedFraction)}`;
  return `${name}: ${kind}, power law with exponent ${formatNumber(bed.exponent, 1)} through Vf ${formatNumber(bed.referenceFraction, 3)} at ${formatNumber(bed.referencePa / 1000, 0)} kPa, its rest at Vf ${two(bed.unloadedFraction)} taken off so that it meets zero there without a jump`;
}
