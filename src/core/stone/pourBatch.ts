/** What one half takes to the scale: powder, water, free water and dry mass, and how many bowls it is mixed in. */
import { keepWithin } from '../counts';
import { Problem } from '../problem';
import type { StoneMix } from './stoneMix';

/** The stone that ends in one half; nothing lost. */
export interface HalfStone {
  readonly volumeMl: number;
  readonly powderG: number;
  readonly waterG: number;
  readonly wetG: number;
  readonly boundWaterG: number;
  readonly freeWaterG: number;
  /** Powder and bound water: the weight at which drying stops. */
  readonly dryG: number;
}

/** @throws Problem `stone.noVolume` */
export function halfStone(volumeMl: number, mix: StoneMix): HalfStone {
  if (!(volumeMl > 0))
    throw new Problem('stone.noVolume', 'This half has no stone to mix: its volume is zero.');
  const powderG = volumeMl / mix.slurryMlPerG;
  const boundWaterG = powderG * mix.boundWaterGPerG;
  const waterG = powderG * mix.waterPowderRatio;
  return {
    volumeMl,
    powderG,
    waterG,
    wetG: powderG + waterG,
    boundWaterG,
    freeWaterG: powderG * mix.freeWaterGPerG,
    dryG: powderG + boundWaterG,
  };
}

export interface MixingLimits {
  /** Slurry left in the bowl and spilled, % of what the half takes. */
  readonly lossPercent: number;
  readonly bowlMl: number;
  /** Share of the bowl that can be stirred without spilling, 0 to 1. */
  readonly bowlFillShare: number;
  /** From water meeting powder until the slurry no longer flows. */
  readonly workingMin: number;
  readonly mixingMin: number;
  readonly pouringMlPerMin: number;
}

export interface MixingPlan {
  /** To weigh out, losses included. */
  readonly powderG: number;
  readonly waterG: number;
  readonly slurryMl: number;
  readonly batches: number;
  readonly batchPowderG: number;
  readonly batchWaterG: number;
  readonly batchSlurryMl: number;
  /** The most slurry one bowl and one working time allow. */
  readonly largestBatchMl: number;
  readonly limitedBy: 'bowl' | 'working time';
  readonly pourMin: number;
  /**
   * Age of a layer's slurry when the next batch reaches it, min after its own water met powder: mixed one by one by one
   * person. 0 for a single batch. Layers join wet on wet while this is within the working time.
   */
  readonly joinAgeMin: number;
}

/**
 * Batches of equal size for `volumeMl` of mold.
 * @throws Problem `stone.noTimeToPour` when mixing alone takes the working time, `stone.tooManyBatches`
 */
export function mixingPlan(volumeMl: number, mix: StoneMix, limits: MixingLimits): MixingPlan {
  const { lossPercent, bowlMl, bowlFillShare, workingMin, mixingMin, pouringMlPerMin } = limits;
  const pourTimeMin = workingMin - mixingMin;
  if (!(pourTimeMin > 0))
    throw new Problem(
      'stone.noTimeToPour',
      `Mixing takes ${mixingMin} min of ${workingMin} min working time, so nothing can be poured. Mix faster, or take a stone that works longer.`,
    );
  const net = halfStone(volumeMl, mix);
  const factor = 1 + lossPercent / 100;
  const slurryMl = volumeMl * factor;
  const byBowlMl = bowlMl * bowlFillShare;
  const byTimeMl = pourTimeMin * pouringMlPerMin;
  const largestBatchMl = Math.min(byBowlMl, byTimeMl);
  const batches = Math.ceil(slurryMl / largestBatchMl - 1e-9);
  keepWithin(
    'batches',
    batches,
    'stone.tooManyBatches',
    `This half takes ${(volumeMl / 1000).toFixed(0)} L of stone, ${batches} bowls of it: more than can be poured. Check the unit of the file, its scale and the stone cover, or take a larger bowl.`,
  );
  const batchSlurryMl = slurryMl / batches;
  const pourMin = batchSlurryMl / pouringMlPerMin;
  return {
    powderG: net.powderG * factor,
    waterG: net.waterG * factor,
    slurryMl,
    batches,
    batchPowderG: (net.powderG * factor) / batches,
    batchWaterG: (net.waterG * factor) / batches,
    batchSlurryMl,
    largestBatchMl,
    limitedBy: byBowlMl <= byTimeMl ? 'bowl' : 'working time',
    pourMin,
    joinAgeMin: batches > 1 ? 2 * mixingMin + pourMin : 0,
  };
}
