/**
 * Densities and free water of a stone mix, by mass and volume balance. Per gram of powder everywhere; the pour of a
 * given volume is `pourBatch`.
 */
import { Problem } from '../problem';
import { dihydrateDensityGCm3, settingWaterRatio, waterDensityGCm3 } from './gypsum';

export interface MixChoices {
  /** Grams of water per gram of powder. */
  readonly waterPowderRatio: number;
  /** Linear setting expansion, %. */
  readonly settingExpansionPercent: number;
  readonly powderDensityGCm3: number;
  /** Share of the powder that sets, 0 to 1; 1 when left out. */
  readonly degreeOfReaction?: number;
  /** Weighed slurry, g/mL; holds the air that the balance does not know of. null or left out: from the balance. */
  readonly weighedSlurryGMl?: number | null;
}

export interface StoneMix {
  readonly waterPowderRatio: number;
  /** Slurry per gram of powder, mL. */
  readonly slurryMlPerG: number;
  readonly slurryDensityGMl: number;
  /** Set, nothing dried yet. */
  readonly wetDensityGMl: number;
  /** Free water gone, crystal water kept. */
  readonly dryDensityGMl: number;
  /** Pores of the dry stone, share of its volume. */
  readonly porosity: number;
  /** Water bound, grams per gram of powder. */
  readonly boundWaterGPerG: number;
  readonly freeWaterGPerG: number;
  readonly freeWaterPercentOfWet: number;
}

/** W/P under which the water does not suffice for all powder to set. */
export const leastWaterPowderRatio = settingWaterRatio;

/**
 * @throws Problem `stone.tooLittleWater` when the water does not suffice for the powder that is to set,
 * `stone.mixNumbers` for numbers that are no mix
 */
export function stoneMix(choices: MixChoices): StoneMix {
  const {
    waterPowderRatio,
    settingExpansionPercent,
    powderDensityGCm3,
    degreeOfReaction = 1,
    weighedSlurryGMl = null,
  } = choices;
  if (!(waterPowderRatio > 0) || !(powderDensityGCm3 > 0) || !(degreeOfReaction > 0 && degreeOfReaction <= 1))
    throw new Problem(
      'stone.mixNumbers',
      'A mix needs water, a powder density above zero, and a share of set powder from 0 to 1.',
    );
  const boundWaterGPerG = degreeOfReaction * settingWaterRatio;
  if (waterPowderRatio < boundWaterGPerG)
    throw new Problem(
      'stone.tooLittleWater',
      `At W/P ${waterPowderRatio.toFixed(3)} there is less water than the ${boundWaterGPerG.toFixed(3)} g per gram that the powder binds. Add water up to the bag's own ratio.`,
    );
  const slurryMlPerG =
    weighedSlurryGMl === null
      ? 1 / powderDensityGCm3 + waterPowderRatio / waterDensityGCm3
      : (1 + waterPowderRatio) / weighedSlurryGMl;
  const setMlPerG = slurryMlPerG * (1 + settingExpansionPercent / 100) ** 3;
  const solidMlPerG =
    (degreeOfReaction + boundWaterGPerG) / dihydrateDensityGCm3 + (1 - degreeOfReaction) / powderDensityGCm3;
  const freeWaterGPerG = waterPowderRatio - boundWaterGPerG;
  return {
    waterPowderRatio,
    slurryMlPerG,
    slurryDensityGMl: (1 + waterPowderRatio) / slurryMlPerG,
    wetDensityGMl: (1 + waterPowderRatio) / setMlPerG,
    dryDensityGMl: (1 + boundWaterGPerG) / setMlPerG,
    porosity: 1 - solidMlPerG / setMlPerG,
    boundWaterGPerG,
    freeWaterGPerG,
    freeWaterPercentOfWet: (100 * freeWaterGPerG) / (1 + waterPowderRatio),
  };
}
