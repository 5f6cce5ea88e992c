/**
 * From the drawn length to the finished one: print scale, the print's own shrinkage, setting expansion of the stone,
 * the stone's growth to the temperature at which the laminate gels, and the laminate's way back to room. Drying shrinkage
 * of the stone and cure shrinkage across the plies are left out: both are small against the setting expansion.
 */
import { Problem } from '../problem';

export interface SizeChainChoices {
  /** Factor on the drawn size that the print is made with. */
  readonly printScale: number;
  /** By which the print comes out smaller than it was asked for, %. */
  readonly printShrinkPercent: number;
  /** Linear, %. */
  readonly settingExpansionPercent: number;
  readonly stoneExpansionPerK: number;
  readonly laminateExpansionPerK: number;
  readonly roomC: number;
  /** At which the laminate gels and takes the mold's size for good. */
  readonly gelC: number;
}

/** Where the two thermal expansions may lie while nobody has measured them, per K (`expansionsFromMemory` in core/sources). */
export const usualExpansionsPerK = {
  stone: [15e-6, 18e-6],
  laminate: [2e-6, 4e-6],
} as const;

/** One length on its way, mm. */
export interface ChainedLength {
  readonly drawnMm: number;
  readonly printedMm: number;
  readonly stoneMm: number;
  readonly stoneAtGelMm: number;
  readonly finishedMm: number;
}

/** Finished length over printed length, the stone and the laminate together. */
function afterPrint(choices: SizeChainChoices): number {
  const warmK = choices.gelC - choices.roomC;
  return (
    (1 + choices.settingExpansionPercent / 100) *
    (1 + choices.stoneExpansionPerK * warmK) *
    (1 - choices.laminateExpansionPerK * warmK)
  );
}

/** `printedMm` by caliper replaces scale and shrinkage; null when not measured. */
export function chainedLength(
  drawnMm: number,
  choices: SizeChainChoices,
  measuredPrintMm: number | null = null,
): ChainedLength {
  const printedMm = measuredPrintMm ?? drawnMm * choices.printScale * (1 - choices.printShrinkPercent / 100);
  const stoneMm = printedMm * (1 + choices.settingExpansionPercent / 100);
  const stoneAtGelMm = stoneMm * (1 + choices.stoneExpansionPerK * (choices.gelC - choices.roomC));
  return { drawnMm, printedMm, stoneMm, stoneAtGelMm, finishedMm: printedMm * afterPrint(choices) };
}

/**
 * The print scale at which a drawn length ends at the wanted one.
 * @throws Problem `stone.noLength`
 */
export function printScaleFor(drawnMm: number, wantedMm: number, choices: SizeChainChoices): number {
  if (!(drawnMm > 0) || !(wantedMm > 0))
    throw new Problem('stone.noLength', 'A print scale needs a drawn and a wanted length above zero.');
  return wantedMm / (drawnMm * (1 - choices.printShrinkPercent / 100) * afterPrint(choices));
}

/**
 * By how much the mold ends smaller than the part on cooling from gel to room, mm over `lengthMm`: the part jams in the
 * negative and comes loose on the positive. (alpha_stone - alpha_laminate) dT L.
 */
export function coolingMismatchMm(
  lengthMm: number,
  choices: Pick<SizeChainChoices, 'stoneExpansionPerK' | 'laminateExpansionPerK' | 'roomC' | 'gelC'>,
): number {
  return (
    (choices.stoneExpansionPerK - choices.laminateExpansionPerK) * (choices.gelC - choices.roomC) * lengthMm
  );
}
