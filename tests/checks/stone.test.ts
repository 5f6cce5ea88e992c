/** Somebody else's numbers for stone: each row with its own source, status and tolerance. */
import { describe, test } from 'vitest';
import {
  depthByConductionMm,
  depthBySupplyMm,
  dehydrationHeatKJPerKg,
} from '../../src/core/stone/dehydration';
import { netUpliftN, gravityMPerS2 } from '../../src/core/stone/floatUp';
import {
  crystalWaterPercent,
  gypsumEnthalpiesKJPerMol,
  powderDensityGCm3,
  settingHeatJPerG,
  settingWaterPerPowder,
} from '../../src/core/stone/gypsum';
import { dryFilmUm, spreadingRateM2PerL } from '../../src/core/stone/coatPlan';
import { halfStone } from '../../src/core/stone/pourBatch';
import { coolingMismatchMm } from '../../src/core/stone/sizeChain';
import { stoneCards, type StoneType } from '../../src/core/stone/stoneCards';
import { stoneMix } from '../../src/core/stone/stoneMix';
import { expectRow, inputOf, type CheckRow } from '../support/checkRows';
import rows from './stone-rows.json';

const all = rows as unknown as readonly CheckRow[];

/** Kilograms per cubic meter of one pound per cubic foot. */
const kgM3PerLbFt3 = 16.018463;
const mmPerInch = 25.4;

const inputOr = (row: CheckRow, key: string, other: number): number =>
  row.inputs[key] === undefined ? other : inputOf(row, key);

function mixOf(row: CheckRow) {
  return stoneMix({
    waterPowderRatio: inputOf(row, 'W_P'),
    settingExpansionPercent: inputOr(row, 'setting_expansion_linear_pct', 0),
    powderDensityGCm3: inputOr(row, 'rho_hemihydrate_g_per_cm3', powderDensityGCm3.alpha),
  });
}

const massesOf = (row: CheckRow) => ({
  hemihydrate: inputOr(row, 'M_hemihydrate_g_per_mol', 145.1415),
  dihydrate: inputOr(row, 'M_dihydrate_g_per_mol', 172.164),
  water: inputOr(row, 'M_water_g_per_mol', 18.015),
});

const enthalpiesOf = (row: CheckRow) => ({
  dihydrate: inputOf(row, 'dHf_dihydrate_kJ_per_mol'),
  alphaHemihydrate: inputOf(row, 'dHf_alpha_hemihydrate_kJ_per_mol'),
  betaHemihydrate: inputOf(row, 'dHf_beta_hemihydrate_kJ_per_mol'),
  waterLiquid: inputOr(row, 'dHf_water_liquid_kJ_per_mol', gypsumEnthalpiesKJPerMol.waterLiquid),
});

const frontOf = (row: CheckRow) => ({
  excessK: inputOf(row, 'dT_K'),
  timeS: inputOf(row, 't_s'),
  dryDensityKgM3: inputOf(row, 'rho_dry_kg_per_m3'),
  latentHeatJPerKg: inputOf(row, 'L_J_per_kg'),
});

/** What our code says for a row, by the row's own keys. */
const answers: readonly (readonly [RegExp, (row: CheckRow) => Readonly<Record<string, number>>])[] = [
  [/^GYP-WATER$/u, (row) => ({ water_g_per_100g: 100 * settingWaterPerPowder(massesOf(row)) })],
  [
    /^GYP-(?:CRYSTW|MINERAL)$/u,
    (row) => {
      const { whole, toHemihydrate } = crystalWaterPercent(massesOf(row));
      return { crystal_water_pct: whole, loss_to_hemihydrate_pct: toHemihydrate };
    },
  ],
  [
    /^GYP-MIX-/u,
    (row) => {
      const mix = mixOf(row);
      return {
        slurry_g_per_cm3: mix.slurryDensityGMl,
        set_wet_g_per_cm3: mix.wetDensityGMl,
        dry_g_per_cm3: mix.dryDensityGMl,
        porosity: mix.porosity,
        free_water_g_per_g_powder: mix.freeWaterGPerG,
        free_water_pct_of_wet: mix.freeWaterPercentOfWet,
      };
    },
  ],
  [
    /^GYP-(?:PUB|DRY|WET)-/u,
    (row) => {
      const mix = mixOf(row);
      const [wet, dry] = [1000 * mix.wetDensityGMl, 1000 * mix.dryDensityGMl];
      return {
        wet_kg_per_m3: wet,
        dry_kg_per_m3: dry,
        wet_lb_per_ft3: wet / kgM3PerLbFt3,
        dry_lb_per_ft3: dry / kgM3PerLbFt3,
      };
    },
  ],
  [
    /^STONE-(?:ISO|WP)-/u,
    (row) => {
      const card = stoneCards[inputOf(row, 'type') as StoneType];
      const { settingExpansionPercent, strengthMPa, initialSetMin, waterPowderRatio } = card;
      return {
        expansion_low_pct: settingExpansionPercent.low,
        expansion_high_pct: settingExpansionPercent.high,
        least_strength_MPa: strengthMPa.low,
        set_low_min: initialSetMin.low,
        set_high_min: initialSetMin.high,
        water_low_g: 100 * waterPowderRatio.low,
        water_high_g: 100 * waterPowderRatio.high,
      };
    },
  ],
  [
    /^COAT-SPREAD-/u,
    (row) => ({
      coverage_m2_per_L: spreadingRateM2PerL(inputOf(row, 'solids_pct'), inputOf(row, 'dry_film_um')),
    }),
  ],
  [
    /^COAT-FILM-/u,
    (row) => ({ dry_film_um: dryFilmUm(inputOf(row, 'solids_pct'), inputOf(row, 'coverage_m2_per_L')) }),
  ],
  [
    /^GYP-HYD$/u,
    (row) => {
      const heat = (form: 'alpha' | 'beta') => settingHeatJPerG(form, enthalpiesOf(row), massesOf(row));
      return { heat_alpha_J_per_g: heat('alpha'), heat_beta_J_per_g: heat('beta') };
    },
  ],
  [
    /^GYP-DEHYD$/u,
    (row) => {
      const heat = (form: 'alpha' | 'beta') =>
        dehydrationHeatKJPerKg(
          form,
          enthalpiesOf(row),
          inputOf(row, 'dHf_water_vapor_kJ_per_mol'),
          massesOf(row).dihydrate,
        );
      return { to_alpha_kJ_per_kg: heat('alpha'), to_beta_kJ_per_kg: heat('beta') };
    },
  ],
  [
    /^GYP-FRONT-SUPPLY$/u,
    (row) => ({ depth_mm: depthBySupplyMm(frontOf(row), inputOf(row, 'h_total_W_per_m2K')) }),
  ],
  [
    /^GYP-FRONT-CONDUCTION$/u,
    (row) => ({ depth_mm: depthByConductionMm(frontOf(row), inputOf(row, 'k_W_per_mK')) }),
  ],
  [
    /^GYP-BATCH-/u,
    (row) => {
      const half = halfStone(inputOf(row, 'mold_volume_cm3'), mixOf(row));
      return {
        powder_g: half.powderG,
        water_g: half.waterG,
        dry_mass_g: half.dryG,
        free_water_g: half.freeWaterG,
        evaporation_kJ: (half.freeWaterG / 1000) * inputOf(row, 'latent_heat_kJ_per_kg'),
      };
    },
  ],
  [
    /^GYP-BUOY-/u,
    (row) => {
      const slurry = mixOf(row).slurryDensityGMl;
      const up = netUpliftN(slurry, inputOf(row, 'submerged_volume_cm3'), inputOf(row, 'pattern_mass_g'));
      return {
        slurry_g_per_cm3: slurry,
        net_uplift_N: up,
        hold_down_g: (1000 * up) / gravityMPerS2,
      };
    },
  ],
  [
    /^STONE-(?:MISMATCH-|MOVES)/u,
    (row) => {
      const mismatchMm = coolingMismatchMm(inputOf(row, 'length_mm'), {
        stoneExpansionPerK: inputOf(row, 'alpha_stone_per_K'),
        laminateExpansionPerK: inputOf(row, 'alpha_laminate_per_K'),
        roomC: 20,
        gelC: 20 + inputOf(row, 'cooling_K'),
      });
      return { mismatch_mm: mismatchMm, mismatch_in: mismatchMm / mmPerInch };
    },
  ],
];

describe('stone', () => {
  test.each(all.map((row) => [`${row.id} (${row.status})`, row] as const))('%s', (_id, row) => {
    expectRow(row, answers.find(([pattern]) => pattern.test(row.id))?.[1](row));
  });
});
