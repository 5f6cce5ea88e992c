/**
 * What dental stone is made of: calcium sulfate hemihydrate that binds water and becomes dihydrate. Molar masses, the
 * water bound, and the heats of going there and back. Enthalpies and the density of the powder as `gypsumEnthalpies` in
 * core/sources has them, dihydrate from a published guide.
 */

export interface GypsumMolarMassesGPerMol {
  readonly hemihydrate: number;
  readonly dihydrate: number;
  readonly water: number;
}

/** Ca 40.078, S 32.06, O 15.999, H 1.008. */
export const gypsumMolarMassesGPerMol: GypsumMolarMassesGPerMol = {
  hemihydrate: 145.1415,
  dihydrate: 172.164,
  water: 18.015,
};

/** Grams of water that one gram of hemihydrate binds: CaSO4·½H2O + 1½ H2O -> CaSO4·2H2O. */
export function settingWaterPerPowder(masses: GypsumMolarMassesGPerMol = gypsumMolarMassesGPerMol): number {
  return (1.5 * masses.water) / masses.hemihydrate;
}

/** 0.18618 g/g. */
export const settingWaterRatio = settingWaterPerPowder();

/** Crystal water of set stone, and what leaves on going back to hemihydrate, % of its dry mass. */
export function crystalWaterPercent(masses: GypsumMolarMassesGPerMol = gypsumMolarMassesGPerMol): {
  readonly whole: number;
  readonly toHemihydrate: number;
} {
  return {
    whole: (200 * masses.water) / masses.dihydrate,
    toHemihydrate: (150 * masses.water) / masses.dihydrate,
  };
}

/** The two forms of hemihydrate: alpha is dense (dental stone, die stone), beta is plaster. */
export type PowderForm = 'alpha' | 'beta';

/** g/cm3. alpha within 0.7 % of two published tables (`gypsumEnthalpies`); beta read on a secondary page. */
export const powderDensityGCm3: Readonly<Record<PowderForm, number>> = { alpha: 2.757, beta: 2.64 };

/** Dihydrate crystal, g/cm3 (published guide to chemical hazards). */
export const dihydrateDensityGCm3 = 2.32;

/** At about 20 °C, g/cm3. */
export const waterDensityGCm3 = 0.9982;

/** Heat to evaporate water at 45 °C, kJ/kg (`steamTables` in core/sources). */
export const evaporationHeatKJPerKg = 2394;

/** kJ/mol, of formation at 25 °C (`gypsumEnthalpies` in core/sources; those of water from memory). */
export interface GypsumEnthalpiesKJPerMol {
  readonly dihydrate: number;
  readonly alphaHemihydrate: number;
  readonly betaHemihydrate: number;
  readonly waterLiquid: number;
}

export const gypsumEnthalpiesKJPerMol: GypsumEnthalpiesKJPerMol = {
  dihydrate: -2022.69,
  alphaHemihydrate: -1576.89,
  betaHemihydrate: -1574.8,
  waterLiquid: -285.83,
};

/** Heat given off on setting, J per gram of powder. */
export function settingHeatJPerG(
  form: PowderForm,
  enthalpies: GypsumEnthalpiesKJPerMol = gypsumEnthalpiesKJPerMol,
  masses: GypsumMolarMassesGPerMol = gypsumMolarMassesGPerMol,
): number {
  const powder = form === 'alpha' ? enthalpies.alphaHemihydrate : enthalpies.betaHemihydrate;
  return (1000 * (powder + 1.5 * enthalpies.waterLiquid - enthalpies.dihydrate)) / masses.hemihydrate;
}
