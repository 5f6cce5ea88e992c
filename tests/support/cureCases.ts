/** Molds and ovens for tests of heat and cure. */
import { curveOf, type Curve } from '../../src/core/cure/curve';
import type { DehydrationTreatment } from '../../src/core/cure/dehydration';
import { supplierCure } from '../../src/core/cure/dose';
import { freeWaterDefaults, type DryingRule } from '../../src/core/cure/freeWater';
import { usualHeatOptions, type HeatCase, type HeatOptions } from '../../src/core/cure/heatCase';
import { laminateHeatDefaults, stoneHeatOf } from '../../src/core/cure/moldMaterials';
import { boxMoldVoxels, type MoldVoxels } from '../../src/core/cure/moldVoxels';
import { surfaceDefaults } from '../../src/core/cure/surfaceChoices';
import type { Vec3 } from '../../src/core/mesh/types';
import { stoneMix } from '../../src/core/stone/stoneMix';
import type { UniformBlock } from './exactHeat';

/** Dental stone at W/P 0.30. */
export const stone = stoneHeatOf(
  stoneMix({ waterPowderRatio: 0.3, settingExpansionPercent: 0, powderDensityGCm3: 2.757 }),
);

/** 16 h at 70 °C (from memory), 25 min at 120 °C (a data sheet). */
export const supplier = supplierCure([
  { hours: 16, temperatureC: 70 },
  { hours: 25 / 60, temperatureC: 120 },
]);

/** 70 °C 3 h, then 120 °C 1.5 h, as ideal steps. */
export const idealProgram = curveOf([
  [0, 70],
  [10_800, 70],
  [10_800, 120],
  [16_200, 120],
]);
export const programEndS = 16_200;

export const options = (untilS: number, more: Partial<HeatOptions> = {}): HeatOptions => ({
  ...usualHeatOptions,
  untilS,
  ...more,
});

export interface CaseChoices {
  readonly voxelMm?: number;
  readonly blockMm?: Vec3;
  readonly laminateMm?: Vec3;
  readonly voxels?: MoldVoxels;
  readonly air?: Curve;
  readonly heldShare?: number;
  readonly rule?: DryingRule;
  readonly treatment?: DehydrationTreatment;
}

/** The damp 90 × 60 × 40 mm block with a flat laminate in its middle. */
export function stoneCase(choices: CaseChoices = {}): HeatCase {
  const { voxelMm = 4, blockMm = [90, 60, 40], laminateMm = [70, 40, 0.7] } = choices;
  return {
    voxels: choices.voxels ?? boxMoldVoxels({ blockMm, laminateMm, voxelMm }),
    stone,
    laminate: laminateHeatDefaults,
    surface: surfaceDefaults,
    water: { ...freeWaterDefaults, heldShare: choices.heldShare ?? 1, rule: choices.rule ?? 'wicks' },
    dehydration: { treatment: choices.treatment ?? 'none', rateFactor: 1 },
    startC: 20,
    air: choices.air ?? idealProgram,
    supplier,
    kinetics: null,
  };
}

/** Stone and laminate of one and the same material, dry, air film alone: what the exact series describe. */
export function uniformCase(
  block: UniformBlock,
  voxels: MoldVoxels,
  startC: number,
  ovenC: number,
): HeatCase {
  return {
    ...stoneCase({
      voxels,
      heldShare: 0,
      air: curveOf([
        [0, ovenC],
        [1e6, ovenC],
      ]),
    }),
    stone: {
      dryDensityKgM3: block.density,
      dryHeatJPerKgK: block.heat,
      dryConductivityWPerMK: block.k,
      wetConductivityWPerMK: block.k,
      freeWaterKgM3: 0,
      dihydrateShare: 1,
    },
    laminate: {
      densityKgM3: block.density,
      heatJPerKgK: block.heat,
      conductivityWPerMK: block.k,
      resinMassFraction: 0.4,
    },
    surface: { ...surfaceDefaults, filmWPerM2K: block.film, emissivity: 0 },
    startC,
  };
}
