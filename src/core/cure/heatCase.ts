/** Everything one prediction of the oven run needs, as plain data. */
import { Problem } from '../problem';
import { highestC, type Curve } from './curve';
import { checkDehydration, type DehydrationChoices } from './dehydration';
import type { SupplierCure } from './dose';
import { checkFreeWater, type FreeWaterChoices } from './freeWater';
import { checkKinetics, type CureKinetics } from './kinetics';
import { checkMaterials, type LaminateHeat, type StoneHeat } from './moldMaterials';
import { halfCode, leastLaminateShare, voxelCount, type MoldVoxels } from './moldVoxels';
import { checkSurface, type SurfaceChoices } from './surfaceChoices';

export interface HeatCase {
  readonly voxels: MoldVoxels;
  readonly stone: StoneHeat;
  readonly laminate: LaminateHeat;
  readonly surface: SurfaceChoices;
  readonly water: FreeWaterChoices;
  readonly dehydration: DehydrationChoices;
  /** Of the whole mold when the oven starts. */
  readonly startC: number;
  /** Air in the oven, predicted or logged. */
  readonly air: Curve;
  /** null: no dose is counted. */
  readonly supplier: SupplierCure | null;
  /** null: no degree of cure and no heat of reaction. */
  readonly kinetics: CureKinetics | null;
}

export interface HeatStop {
  readonly timeS: number;
  /** Least dose over the laminate, 0 without a supplier's cure. */
  readonly coldestDose: number;
  readonly hottestLaminateC: number;
  readonly coldestLaminateC: number;
}

export interface HeatOptions {
  readonly untilS: number;
  /** Longest step while the mold takes up heat, s. */
  readonly longestStepS: number;
  /** Longest step while next to nothing changes, s. */
  readonly longestQuietStepS: number;
  /** Change between what a step was expected to do and what it did, K; steps shrink to keep it. */
  readonly toleranceK: number;
  /** Laminate temperatures are kept at least this far apart, s. */
  readonly recordEveryS: number;
  /** Whole fields for slices; null keeps none. */
  readonly frameEveryS: number | null;
  /** A field is kept sooner where a voxel has moved by more than this since the last one, K. */
  readonly frameAfterK: number;
  /** Where more would be kept, every second one goes, and the later ones stand twice as far apart. */
  readonly mostFrames: number;
  /** Looked at after every step; true ends the run early. */
  readonly stopWhen?: (state: HeatStop) => boolean;
  /** Share done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
}

export const usualHeatOptions = {
  longestStepS: 120,
  longestQuietStepS: 360,
  toleranceK: 0.5,
  recordEveryS: 60,
  frameEveryS: null,
  frameAfterK: Infinity,
  mostFrames: Infinity,
} as const satisfies Omit<HeatOptions, 'untilS'>;

/** Hotter than this no law here was meant for, °C. */
const hottestCaseC = 250;

/**
 * @throws Problem `cure.noLaminate`, `cure.tooHot`, `cure.untilS`, and those of the parts
 */
export function checkHeatCase(one: HeatCase, options: HeatOptions): void {
  checkMaterials(one.stone, one.laminate);
  checkSurface(one.surface);
  checkFreeWater(one.water);
  checkDehydration(one.dehydration);
  const { half, laminateShare, filledShare } = one.voxels;
  const total = voxelCount(one.voxels);
  if ([half, laminateShare, filledShare].some(({ length }) => length !== total))
    throw new Problem('cure.voxels', 'The voxels of the mold do not fit their counts.');
  if (!laminateShare.some((share, at) => share >= leastLaminateShare && half[at] !== halfCode.outside))
    throw new Problem(
      'cure.noLaminate',
      'There is no laminate in the mold: its temperature cannot be worked out.',
    );
  const hottest = highestC(one.air);
  if (!(hottest <= hottestCaseC && one.startC > -40 && one.startC <= hottestCaseC))
    throw new Problem(
      'cure.tooHot',
      `The oven goes to ${hottest.toFixed(0)} °C; over ${hottestCaseC} °C neither stone nor laminate is described here.`,
    );
  if (one.kinetics !== null) checkKinetics(one.kinetics, hottest);
  if (!(options.untilS > 0) || !(options.longestStepS > 0) || !(options.toleranceK > 0))
    throw new Problem('cure.untilS', 'The prediction needs a time, a step and a tolerance above zero.');
}
