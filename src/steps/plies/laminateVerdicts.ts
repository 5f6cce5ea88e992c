/** Verdicts on the cured laminate itself: what is in it, whether it stays flat, whether it is balanced. */
import type { Verdict } from '../../core/figure';
import { stackChecks } from '../../core/laminate/stackChecks';
import { bowMm, warpOf } from '../../core/laminate/warp';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { laminateInMold } from '../closedMold/laminateInMold';
import type { Material } from '../inputs/material';
import { processOf } from '../shared/process';
import type { KnownStack } from '../shared/stack';
import { stackLaminate, type KnownLaminate, type LaminateState } from './stackLaminate';
import { partLengthMm, strongestPerM, worseHalf } from './warpFigures';

/** Usual highest fiber volume fraction by kind of fabric: `fiberVolumeNotes` in core/sources. */
const usualMostFiber: Readonly<Record<Material['weave'], number>> = {
  woven: 0.55,
  'non-crimp': 0.6,
  unidirectional: 0.7,
};
/** Round fibers in a square pattern touch at π / 4: no press gets a stack past it (geometry). */
const touchingFiber = Math.PI / 4;
/** Over this share of voids no constants of a ply hold (common practice). */
const mostlyAirShare = 0.1;
/** Common practice: under it the wall is mostly resin. */
const resinRichFiber = 0.35;
/** What a seam and a flat table show on a small enclosure (common practice). */
const bowAllowedMm = 0.2;
/** Stands in for the part's length while there is none. */
const stripMm = 100;
/** Share of a pull that may come out as shear before it is called unbalanced (common practice). */
const shearAllowed = 0.05;

export function laminateVerdicts(context: StepContext, stack: KnownStack): readonly Verdict[] {
  const answer = stackLaminate(context);
  const content = contentVerdict(context, stack);
  if (!answer.known)
    return [
      content,
      {
        id: 'plies.constants',
        word: 'look again',
        reason: `Stiffness and warp cannot be worked out: ${answer.reason}`,
        // So much air, not the card, is what no typical ply stands for.
        fix:
          laminateInMold(context, stack).content.voidFraction > mostlyAirShare
            ? ''
            : 'Correct the elastic constants on the material card, or clear them to take typical ones.',
      },
    ];
  return [content, warpVerdict(context, answer), balanceVerdict(answer)];
}

function contentVerdict(context: StepContext, stack: KnownStack): Verdict {
  const id = 'plies.content';
  const { content } = laminateInMold(context, stack);
  const { plies } = stack;
  const { goVoidPercent, lookVoidPercent } = context.inputs.walls;
  const voidPercent = 100 * content.voidFraction;
  const fiber = content.fiberVolumeFraction;
  const most = usualMost(plies.map(({ card }) => card));
  const share = formatNumber(fiber, 2);
  if (fiber > touchingFiber)
    return {
      id,
      word: 'stop',
      reason: `Fiber would fill ${share} of the volume; side by side, round fibers touch at ${formatNumber(touchingFiber, 2)}, so there is not resin enough.`,
      fix: 'Check areal weight, densities and resin content on the card, and the resin lost.',
    };
  if (fiber > most)
    return {
      id,
      word: 'look again',
      reason: `Fiber fills ${share} of the volume; this fabric is usually brought to ${formatNumber(most, 2)} at most (published). Dry spots are likely.`,
      fix: 'Check the numbers on the card.',
    };
  if (voidPercent > goVoidPercent)
    return {
      id,
      word: voidPercent > lookVoidPercent ? 'stop' : 'look again',
      reason: `${formatNumber(voidPercent, 1)} % of the whole laminate is air, narrow places included: you accept ${formatNumber(goVoidPercent, 1)} % (common practice).`,
      fix: '',
    };
  if (fiber < resinRichFiber)
    return {
      id,
      word: 'look again',
      reason: `Fiber fills only ${share} of the volume: mostly resin, so heavier and softer than it needs to be (common practice).`,
      fix: `Check the resin content on the card.`,
    };
  return {
    id,
    word: 'go',
    reason: `Fiber fills ${share} of the volume; up to ${formatNumber(most, 2)} is usual for this fabric (published).`,
    fix: '',
  };
}

/** Thickness that a ply's fiber alone would fill. */
const fiberMm = (card: Material) => card.arealWeightGsm / (1000 * card.fiberDensityGCm3);

/** Of a mixed stack: each ply's fiber takes the room that its own kind needs. */
function usualMost(cards: readonly Material[]): number {
  const fiber = cards.reduce((sum, card) => sum + fiberMm(card), 0);
  return fiber / cards.reduce((sum, card) => sum + fiberMm(card) / usualMostFiber[card.weave], 0);
}

const celsius = (value: number) => `${formatNumber(value, 0)} °C`;

function warpVerdict(context: StepContext, answer: KnownLaminate): Verdict {
  const id = 'plies.warp';
  const { inUse, stressFree, stressFreeFarC } = processOf(context.inputs);
  const worse = worseHalf(answer);
  const span = `from the ${celsius(stressFree.valueC)} at which it is free of stress (${stressFree.how}) to ${celsius(inUse.valueC)}`;
  if (!worse.warps)
    return { id, word: 'go', reason: `The stack stays flat ${span}.${whyFlat(worse)}`, fix: '' };
  const lengthMm = partLengthMm(context);
  const overMm = lengthMm ?? stripMm;
  const bow = bowMm(strongestPerM(worse.curvaturePerM), overMm);
  const farBow = bowMm(strongestPerM(worse.farCurvaturePerM), overMm);
  const over = `${formatNumber(overMm, 0)} mm${lengthMm === null ? ' of strip' : ', the part’s length'}`;
  const { shape, radiusMm } = warpOf(worse.curvaturePerM);
  const estimate = answer.warpTypical ? ', with constants from memory' : '';
  const far =
    stressFreeFarC > stressFree.valueC
      ? ` Where it gives way in the ${celsius(stressFreeFarC)} stage, up to ${formatNumber(farBow, 2)} mm.`
      : '';
  const reason = `The stack bends ${span}: ${formatNumber(bow, 2)} mm of bow over ${over}${estimate}.${far} Radius ${formatNumber((radiusMm ?? 0) / 1000, 2)} m, a ${shape}. That is a flat strip; a shell with sides shows it as a pull at the seam.`;
  return Math.max(bow, farBow) <= bowAllowedMm
    ? { id, word: 'go', reason, fix: '' }
    : { id, word: 'look again', reason, fix: '' };
}

function whyFlat({ laminate }: LaminateState): string {
  return stackChecks(laminate).symmetric
    ? ' Each ply has its like at the same depth on the other side.'
    : ' It is not symmetric, and that does no harm here: every ply stretches alike in all directions.';
}

function balanceVerdict(answer: KnownLaminate): Verdict {
  const id = 'plies.balance';
  const shear = Math.max(shearOf(answer), answer.secondHalf === null ? 0 : shearOf(answer.secondHalf));
  const { balanced, quasiIsotropic, symmetric } = stackChecks(answer.laminate);
  if (shear > shearAllowed)
    return {
      id,
      word: 'look again',
      reason: `The stack is not balanced: a pull along or across shears it by ${formatNumber(shear, 2)} of the stretch. It turns out of shape under load and on cooling.`,
      fix: '',
    };
  const order = symmetric ? 'symmetric' : 'not symmetric';
  const kind = quasiIsotropic ? ', equally stiff in all directions' : '';
  return {
    id,
    word: 'go',
    reason: `The stack is ${balanced ? 'balanced' : 'nearly balanced'} and ${order}${kind}.`,
    fix: '',
  };
}

/** Shear strain over stretch, for a pull along x or y, held flat; the larger of the two. */
function shearOf({ laminate }: LaminateState): number {
  const { heldFlatMmPerN: a } = laminate;
  return Math.max(Math.abs(a[0][2] / a[0][0]), Math.abs(a[1][2] / a[1][1]));
}
