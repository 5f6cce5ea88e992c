/** The ply stack of the inputs with each ply's card looked up, or the reason why there is none. */
import { curedThicknessMm, laidPlyThicknessMm } from '../../core/laminate/plyThickness';
import { stackThickness, type StackThickness } from '../../core/laminate/stackThickness';
import { defaultMaterial, type Material, type PliesInputs, type Ply } from './inputs';

export interface KnownStack {
  readonly known: true;
  readonly total: StackThickness;
  readonly plies: readonly { readonly ply: Ply; readonly card: Material }[];
  /** Mean over the plies; the thickness of each when all are of one card. */
  readonly curedPlyMm: number;
  readonly laidPlyMm: number;
  /** More than one card is in the stack. */
  readonly mixed: boolean;
  /** How the thickness as laid is known: the least certain of the plies. */
  readonly laidStatus: 'measured' | 'common practice';
}

export interface UnknownStack {
  readonly known: false;
  readonly reason: string;
  readonly fix: string;
}

/** A value still as it came with the ready-made card was measured by nobody. */
function isMeasured(card: Material): boolean {
  const untouched =
    card.id === defaultMaterial.id && card.laidThicknessMm === defaultMaterial.laidThicknessMm;
  return card.laidThicknessMm !== null && !untouched;
}

export function resolveStack(inputs: PliesInputs): KnownStack | UnknownStack {
  if (inputs.stack.length === 0)
    return {
      known: false,
      reason: 'The stack has no plies, so there is no thickness to hold a wall against.',
      fix: 'Add the plies you mean to lay, from the show face inward.',
    };
  const plies: { ply: Ply; card: Material }[] = [];
  for (const [index, ply] of inputs.stack.entries()) {
    const card = inputs.materials.find(({ id }) => id === ply.materialId);
    if (card === undefined)
      return {
        known: false,
        reason: `Ply ${index + 1} names a material that has no card.`,
        fix: `Choose a material for ply ${index + 1}, or add its card.`,
      };
    plies.push({ ply, card });
  }
  const cards = plies.map(({ card }) => card);
  const total = stackThickness(cards, inputs.bulkFactor);
  const [first] = cards;
  const mixed = cards.some((card) => card !== first);
  return {
    known: true,
    total,
    plies,
    // For one card the card's own value, not total / count: no rounding crumbs in a pairing that is exact.
    curedPlyMm: mixed || first === undefined ? total.curedMm / cards.length : curedThicknessMm(first),
    laidPlyMm:
      mixed || first === undefined
        ? total.laidMm / cards.length
        : laidPlyThicknessMm(first, inputs.bulkFactor),
    mixed,
    laidStatus: cards.every(isMeasured) ? 'measured' : 'common practice',
  };
}
