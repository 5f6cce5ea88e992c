/** What the closed mold is made of, as heat sees it. */
import { Problem } from '../problem';
import type { StoneMix } from '../stone/stoneMix';

export interface StoneHeat {
  /** Free water gone, crystal water kept. */
  readonly dryDensityKgM3: number;
  readonly dryHeatJPerKgK: number;
  readonly dryConductivityWPerMK: number;
  /** With all the free water that the mix leaves. */
  readonly wetConductivityWPerMK: number;
  /** That the mix leaves when nothing has dried, kg per m³ of stone. */
  readonly freeWaterKgM3: number;
  /** Share of the dry stone that is dihydrate, by mass; 1 for a mix that has set through. */
  readonly dihydrateShare: number;
}

export interface LaminateHeat {
  readonly densityKgM3: number;
  readonly heatJPerKgK: number;
  /** One value for all directions: the fibers conduct several times better along the ply, which evens the part out. */
  readonly conductivityWPerMK: number;
  readonly resinMassFraction: number;
}

/** J/(kg K). */
export const waterHeatJPerKgK = 4180;

/** Constants of dry stone from memory (`stoneHeatFromMemory` in core/sources); plausible conductivities 0.7 to 1.0. */
export const stoneHeatDefaults = {
  dryHeatJPerKgK: 1080,
  dryConductivityWPerMK: 0.8,
  wetConductivityWPerMK: 1.0,
} as const;

/** Carbon and epoxy at about 55 % of fiber, from memory. */
export const laminateHeatDefaults: LaminateHeat = {
  densityKgM3: 1500,
  heatJPerKgK: 1000,
  conductivityWPerMK: 0.7,
  resinMassFraction: 0.4,
};

/** Density and free water as the mix gives them; conductivities and heat as given or by default. */
export function stoneHeatOf(mix: StoneMix, constants: Partial<typeof stoneHeatDefaults> = {}): StoneHeat {
  return {
    ...stoneHeatDefaults,
    ...constants,
    dryDensityKgM3: 1000 * mix.dryDensityGMl,
    freeWaterKgM3: (1000 * mix.wetDensityGMl * mix.freeWaterPercentOfWet) / 100,
    dihydrateShare: 1,
  };
}

/** @throws Problem `cure.materials` */
export function checkMaterials(stone: StoneHeat, laminate: LaminateHeat): void {
  const positive = [
    stone.dryDensityKgM3,
    stone.dryHeatJPerKgK,
    stone.dryConductivityWPerMK,
    stone.wetConductivityWPerMK,
    laminate.densityKgM3,
    laminate.heatJPerKgK,
    laminate.conductivityWPerMK,
  ];
  if (!positive.every((value) => value > 0 && Number.isFinite(value)) || !(stone.freeWaterKgM3 >= 0))
    throw new Problem(
      'cure.materials',
      'Density, heat capacity and conductivity of stone and laminate must be above zero, free water not below.',
    );
}
