/** The ply stack of the inputs with each ply's card looked up, or the reason why there is none. */
import { laidPlyThicknessMm } from '../../core/laminate/plyThickness';
import { stackThickness, type StackThickness } from '../../core/laminate/stackThickness';
import {
  plateContent,
  stackVolume,
  type CuredPlate,
  type StackVolume,
} from '../../core/laminate/stackVolume';
import { Problem } from '../../core/problem';
import { cardInUse } from './cardInUse';
import type { Material } from '../inputs/material';
import type { PliesInputs } from '../inputs/plies';
import type { Ply, PlyPatch } from '../inputs/ply';

export interface KnownStack {
  readonly known: true;
  readonly total: StackThickness;
  /** What it fills without voids and without bleed: by the cards, or by a cured plate on the scale. */
  readonly volume: StackVolume;
  /** Voids of that plate, 0 to 1 (negative where its numbers contradict each other); null without a plate. */
  readonly plateVoidShare: number | null;
  /** Cards with what was measured at the bench in place. */
  readonly plies: readonly { readonly ply: Ply; readonly card: Material }[];
  readonly patches: readonly { readonly patch: PlyPatch; readonly card: Material }[];
  /** Mean over the plies, void-free; the thickness of each when all are of one card. */
  readonly curedPlyMm: number;
  readonly laidPlyMm: number;
  /** More than one card is in the stack. */
  readonly mixed: boolean;
  /** How the thickness as laid is known: the least certain of the plies. */
  readonly laidStatus: 'measured' | 'common practice';
  /** By which share the thickness as laid may be off either way; 0 where every ply was measured. */
  readonly laidScatter: number;
  /** The resin content was weighed, of every ply or on a cured plate. */
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

/** A 200 g/m² twill is laid at 0.23 to 0.27 mm, so 8 % either way (from memory). */
const usualLaidScatter = 0.08;

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
  const plate = measuredPlate(inputs);
  const weighed = plate === null ? null : plateContent(layers, plate);
  const volume = weighed?.volume ?? stackVolume(layers);
  const total = { ...stackThickness(layers, inputs.bulkFactor), curedMm: volume.voidFreeMm };
  const first = layers[0] as Material;
  const mixed = layers.some((card) => card !== first);
  const laidIsMeasured = plies.every(({ laidMeasured }) => laidMeasured);
  return {
    known: true,
    total,
    volume,
    plateVoidShare: weighed?.voidShare ?? null,
    plies: plies.map(({ ply, card }) => ({ ply, card })),
    patches: inputs.patches.map((patch) => ({ patch, card: used(patch.materialId).card })),
    curedPlyMm: volume.voidFreeMm / layers.length,
    laidPlyMm: mixed ? total.laidMm / layers.length : laidPlyThicknessMm(first, inputs.bulkFactor),
    mixed,
    laidStatus: laidIsMeasured ? 'measured' : 'common practice',
    laidScatter: laidIsMeasured ? 0 : usualLaidScatter,
    resinMeasured: weighed !== null || plies.every(({ resinMeasured }) => resinMeasured),
  };
}

/** null without a plate. */
function measuredPlate({ plateMassG, plateAreaCm2, plateThicknessMm }: PliesInputs): CuredPlate | null {
  if (plateMassG === null && plateAreaCm2 === null && plateThicknessMm === null) return null;
  if (plateMassG === null || plateAreaCm2 === null || plateThicknessMm === null)
    throw new Problem(
      'plies.plate',
      'The cured plate needs its mass, its area and its thickness; give all three, or clear all three.',
    );
  return { massG: plateMassG, areaMm2: 100 * plateAreaCm2, thicknessMm: plateThicknessMm };
}
