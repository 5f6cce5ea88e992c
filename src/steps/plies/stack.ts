/** The ply stack of the inputs with each ply's card looked up, or the reason why there is none. */
import { contentAfterBleed, type LaminateContent } from '../../core/laminate/bleedAndVoids';
import { curedThicknessMm, laidPlyThicknessMm } from '../../core/laminate/plyThickness';
import { stackThickness, type StackThickness } from '../../core/laminate/stackThickness';
import { Problem } from '../../core/problem';
import { cardInUse } from './cardInUse';
import type { Material, PliesInputs, Ply, PlyPatch } from './inputs';

export interface KnownStack {
  readonly known: true;
  /** `curedMm` is after bleed and with voids; the rest is as laid in. */
  readonly total: StackThickness;
  /** Cards with what was measured at the bench in place. */
  readonly plies: readonly { readonly ply: Ply; readonly card: Material }[];
  readonly patches: readonly { readonly patch: PlyPatch; readonly card: Material }[];
  /** What is in the cured laminate, patches left out. */
  readonly content: LaminateContent;
  /** Mean over the plies; the thickness of each when all are of one card. */
  readonly curedPlyMm: number;
  readonly laidPlyMm: number;
  /** More than one card is in the stack. */
  readonly mixed: boolean;
  /** How the thickness as laid is known: the least certain of the plies. */
  readonly laidStatus: 'measured' | 'common practice';
  /** The resin content of every ply was weighed. */
  readonly resinMeasured: boolean;
}

export interface UnknownStack {
  readonly known: false;
  readonly reason: string;
  readonly fix: string;
}

export function resolveStack(inputs: PliesInputs): KnownStack | UnknownStack {
  if (inputs.stack.length === 0)
    return {
      known: false,
      reason: 'The stack has no plies, so there is no thickness to hold a wall against.',
      fix: 'Add the plies you mean to lay, from the show face inward.',
    };
  const wrong = missingCard(inputs) ?? misplacedPatch(inputs);
  if (wrong !== null) return { known: false, ...wrong };
  try {
    return knownStack(inputs);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return {
      known: false,
      reason: error.message,
      fix: 'Correct the material card, or clear what was measured.',
    };
  }
}

type Wrong = Pick<UnknownStack, 'reason' | 'fix'>;

function missingCard({ materials, stack, patches }: PliesInputs): Wrong | null {
  const named = [
    ...stack.map(({ materialId }, index) => ({ materialId, what: `ply ${index + 1}` })),
    ...patches.map(({ materialId }, index) => ({ materialId, what: `patch ${index + 1}` })),
  ];
  const lost = named.find(({ materialId }) => !materials.some(({ id }) => id === materialId));
  if (lost === undefined) return null;
  const { what } = lost;
  return {
    reason: `${what.charAt(0).toUpperCase()}${what.slice(1)} names a material that has no card.`,
    fix: `Choose a material for ${what}, or add its card.`,
  };
}

function misplacedPatch({ stack, patches }: PliesInputs): Wrong | null {
  const index = patches.findIndex(({ afterPly }) => afterPly > stack.length);
  if (index < 0) return null;
  return {
    reason: `Patch ${index + 1} lies on ply ${patches[index]?.afterPly}, but the stack has ${stack.length}.`,
    fix: `Put patch ${index + 1} on one of the plies there are.`,
  };
}

function knownStack(inputs: PliesInputs): KnownStack {
  const cards = new Map(inputs.materials.map((card) => [card.id, card]));
  const inUse = new Map(
    [...inputs.stack, ...inputs.patches].map(({ materialId }) => {
      const card = cards.get(materialId);
      if (card === undefined) throw new Problem('plies.card', 'A material has no card.');
      return [materialId, cardInUse(card)];
    }),
  );
  const used = (materialId: string) => {
    const found = inUse.get(materialId);
    if (found === undefined) throw new Problem('plies.card', 'A material has no card.');
    return found;
  };
  const plies = inputs.stack.map((ply) => ({ ply, ...used(ply.materialId) }));
  const layers = plies.map(({ card }) => card);
  const asLaid = stackThickness(layers, inputs.bulkFactor);
  const content = contentAfterBleed(layers, inputs.resinLostPercent / 100, inputs.voidPercent / 100);
  const unchanged = inputs.resinLostPercent === 0 && inputs.voidPercent === 0;
  // Nothing lost and no voids: the plain sum, so that no rounding crumb makes an exact pair inexact.
  const total = unchanged ? asLaid : { ...asLaid, curedMm: content.thicknessMm };
  const first = layers[0] as Material;
  const mixed = layers.some((card) => card !== first);
  return {
    known: true,
    total,
    plies: plies.map(({ ply, card }) => ({ ply, card })),
    patches: inputs.patches.map((patch) => ({ patch, card: used(patch.materialId).card })),
    content,
    // For one card the card's own value, not total / count, for the same reason.
    curedPlyMm: mixed || !unchanged ? total.curedMm / layers.length : curedThicknessMm(first),
    laidPlyMm: mixed ? total.laidMm / layers.length : laidPlyThicknessMm(first, inputs.bulkFactor),
    mixed,
    laidStatus: plies.every(({ laidMeasured }) => laidMeasured) ? 'measured' : 'common practice',
    resinMeasured: plies.every(({ resinMeasured }) => resinMeasured),
  };
}
