/**
 * Free water in the stone of each half, and how it leaves. At 100 °C it boils where it is and holds the stone there. Below,
 * two bounds: 'wicks' takes pores that carry it to every open face as fast as the oven dries that face (it cools toward the
 * wet bulb), 'stays' lets none leave before it boils (sealed faces, or pores that do not carry).
 */
import { Problem } from '../problem';
import { halfCode } from './moldVoxels';

export type DryingRule = 'wicks' | 'stays';

export interface FreeWaterChoices {
  readonly rule: DryingRule;
  /** Share of the mix's free water still held when the oven starts: 0 dry, 1 as poured. */
  readonly heldShare: number;
  /** Under this share of the mix's free water the faces no longer stay wet, and drying slows in proportion (assumption). */
  readonly fallingRateUnder: number;
}

export const freeWaterDefaults: FreeWaterChoices = { rule: 'wicks', heldShare: 1, fallingRateUnder: 0.1 };

/** @throws Problem `cure.dampness` */
export function checkFreeWater({ heldShare, fallingRateUnder }: FreeWaterChoices): void {
  if (!(heldShare >= 0 && heldShare <= 1) || !(fallingRateUnder >= 0.01 && fallingRateUnder <= 1))
    throw new Problem(
      'cure.dampness',
      'The share of free water still in the stone must be from 0 (dry) to 1 (as poured).',
    );
}

/**
 * Takes water out of both halves in proportion to what each voxel holds, as if it wicked without delay.
 * @param heldKg per voxel, changed in place
 * @param takeKg per half code, what its faces have lost
 * @returns what both held before, and per half code what could not be taken because the half held less
 */
export function takeFromHalves(
  heldKg: Float64Array,
  half: Uint8Array,
  takeKg: readonly [number, number, number],
): { readonly hadKg: number; readonly short: readonly [number, number, number] } {
  const { negative, positive } = halfCode;
  let [inNegative, inPositive] = [0, 0];
  for (let at = 0; at < heldKg.length; at++) {
    if (half[at] === negative) inNegative += heldKg[at]!;
    else inPositive += heldKg[at]!;
  }
  const left = (hadKg: number, code: 1 | 2) => (hadKg > 0 ? Math.max(0, 1 - takeKg[code] / hadKg) : 0);
  const leftOfNegative = left(inNegative, negative);
  const leftOfPositive = left(inPositive, positive);
  for (let at = 0; at < heldKg.length; at++)
    heldKg[at]! *= half[at] === negative ? leftOfNegative : leftOfPositive;
  return {
    hadKg: inNegative + inPositive,
    short: [0, Math.max(0, takeKg[1] - inNegative), Math.max(0, takeKg[2] - inPositive)],
  };
}
