/** The size chain of this part: one chain per axis, wanted lengths, the print scale that hits them, the finished rim. */
import {
  chainedLength,
  coolingMismatchMm,
  printScaleFor,
  usualExpansionsPerK,
  type ChainedLength,
  type SizeChainChoices,
} from '../../core/stone/sizeChain';
import type { MoldGeometry } from '../../core/stone/moldGeometry';
import type { FinishedRim } from '../../core/stone/rimMatch';
import type { StepContext } from '../shared/context';
import { moldTable } from '../inputs/mold';
import { availablePart } from '../shared/missing';
import { processOf } from '../shared/process';
import { stoneInUse } from '../stone/stoneInUse';
import type { Answer } from '../stone/work';

export const axes = ['x', 'y', 'z'] as const;

export interface AxisSize {
  readonly axis: 'x' | 'y' | 'z';
  readonly chain: ChainedLength;
  readonly wantedMm: number;
  /** true when the wanted length is the drawn one for want of another. */
  readonly asDrawn: boolean;
  /** true when the print was measured along this axis. */
  readonly measured: boolean;
  /** At which this axis ends at its wanted length. */
  readonly printScale: number;
  /** Finished length at the ends of the setting expansion. */
  readonly bandMm: readonly [number, number];
}

export function sizeChoices({ inputs }: Pick<StepContext, 'inputs'>): SizeChainChoices {
  const { mold } = inputs;
  const { roomC, gel } = processOf(inputs);
  return {
    printScale: mold.printScale,
    printShrinkPercent: mold.printShrinkPercent,
    settingExpansionPercent: stoneInUse(mold).settingExpansionPercent.value,
    stoneExpansionPerK: mold.stoneExpansionPerMK / 1e6,
    laminateExpansionPerK: mold.laminateExpansionPerMK / 1e6,
    roomC,
    gelC: gel.valueC,
  };
}

export function axisSizes(context: StepContext): Answer<readonly AxisSize[]> {
  const part = availablePart(context);
  if (!part.known) return { known: false, why: part.reason };
  const { boxMinMm, boxMaxMm } = part.measured.summary;
  const drawn = axes.map((_, i) => boxMaxMm[i]! - boxMinMm[i]!);
  if (drawn.some((length) => !(length > 0))) return { known: false, why: 'The part has no size to follow.' };
  const { measured, wanted } = context.inputs.mold;
  const printed = [measured.printXMm, measured.printYMm, measured.printZMm];
  const asked = [wanted.xMm, wanted.yMm, wanted.zMm];
  const choices = sizeChoices(context);
  const { band } = stoneInUse(context.inputs.mold).settingExpansionPercent;
  return {
    known: true,
    value: axes.map((axis, i) => {
      const drawnMm = drawn[i]!;
      const measuredMm = printed[i] ?? null;
      const chain = chainedLength(drawnMm, choices, measuredMm);
      const wantedMm = asked[i] ?? drawnMm;
      const at = (settingExpansionPercent: number) =>
        chainedLength(drawnMm, { ...choices, settingExpansionPercent }, measuredMm).finishedMm;
      return {
        axis,
        chain,
        wantedMm,
        asDrawn: asked[i] == null,
        measured: measuredMm !== null,
        // A measured print tells how this printer's lengths come out: its next print shrinks the same.
        printScale:
          measuredMm === null
            ? printScaleFor(drawnMm, wantedMm, choices)
            : (choices.printScale * wantedMm) / chain.finishedMm,
        bandMm: band === null ? [chain.finishedMm, chain.finishedMm] : [at(band[0]), at(band[1])],
      };
    }),
  };
}

/**
 * Ends of the mismatch on cooling over `lengthMm`: by the usual expansions where nobody has entered their own, and by the
 * temperatures at which the resin may gel.
 */
export function mismatchBandMm(
  { inputs }: Pick<StepContext, 'inputs'>,
  lengthMm: number,
): readonly [number, number] {
  const { stoneExpansionPerMK, laminateExpansionPerMK } = inputs.mold;
  const { gelBand } = processOf(inputs);
  const choices = sizeChoices({ inputs });
  const isReadyMade = (key: 'stoneExpansionPerMK' | 'laminateExpansionPerMK') =>
    inputs.mold[key] === moldTable[key].default;
  const stones = isReadyMade('stoneExpansionPerMK') ? usualExpansionsPerK.stone : [stoneExpansionPerMK / 1e6];
  const laminates = isReadyMade('laminateExpansionPerMK')
    ? usualExpansionsPerK.laminate
    : [laminateExpansionPerMK / 1e6];
  const gels = [choices.gelC, ...(gelBand ?? []).map(({ temperatureC }) => temperatureC)];
  const ends = stones.flatMap((stoneExpansionPerK) =>
    laminates.flatMap((laminateExpansionPerK) =>
      gels.map((gelC) =>
        coolingMismatchMm(lengthMm, { ...choices, stoneExpansionPerK, laminateExpansionPerK, gelC }),
      ),
    ),
  );
  return [Math.min(...ends), Math.max(...ends)];
}

/** One scale for the whole print: the middle of what the axes ask for, so that the worst axis is off least. */
export function commonPrintScale(sizes: readonly AxisSize[]): number {
  const scales = sizes.map(({ printScale }) => printScale);
  return (Math.min(...scales) + Math.max(...scales)) / 2;
}

/** The same at the ends of the setting expansion: a stone that grows more wants a smaller print. */
export function printScaleBand(sizes: readonly AxisSize[]): readonly [number, number] {
  const at = (end: 0 | 1) =>
    commonPrintScale(
      sizes.map((one) => ({ ...one, printScale: (one.printScale * one.chain.finishedMm) / one.bandMm[end] })),
    );
  return [at(1), at(0)];
}

/** The rim as it will be when finished; null while it is not known. */
export function finishedRim(context: StepContext): FinishedRim | null {
  return chainedRim(context, context.mold?.rimOutlineMm ?? null);
}

/** The drawn outline taken through the size chain of its own project. */
export function chainedRim(
  context: Pick<StepContext, 'inputs'>,
  outlineMm: MoldGeometry['rimOutlineMm'],
): FinishedRim | null {
  if (outlineMm === null || outlineMm.length < 3) return null;
  const { drawnMm, finishedMm } = chainedLength(1, sizeChoices(context));
  const factor = finishedMm / drawnMm;
  return { outlineMm: outlineMm.map(([x, y]) => [x * factor, y * factor] as const) };
}
