/**
 * Somebody else's numbers for heat: each row with its own source, status and tolerance. Exact series are held against the
 * rows, and the solver for real molds against the exact series.
 */
import { describe, expect, test } from 'vitest';
import { kelvin } from '../../src/core/cure/dose';
import { runHeat, type HeatRun } from '../../src/core/cure/heatRun';
import { heatState } from '../../src/core/cure/heatState';
import { heatKernel } from '../../src/core/cure/kernel/heatKernel';
import { halfCode, voxelCount, type MoldVoxels } from '../../src/core/cure/moldVoxels';
import { radiationWPerM2K } from '../../src/core/cure/surfaceChoices';
import { evaporation, evaporationJPerKg, saturationPa } from '../../src/core/cure/waterVapor';
import { bracketedRoot } from '../../src/core/numeric/roots';
import { options, uniformCase } from '../support/cureCases';
import {
  blockMean,
  blockTheta,
  cylinderCoefficient,
  cylinderRoots,
  cylinderTheta,
  erf,
  halfSpaceRise,
  slabCoefficient,
  slabMean,
  slabRoots,
  slabTheta,
  slabUnderSine,
  type UniformBlock,
} from '../support/exactHeat';
import { expectRow, inputOf as need, type CheckRow as Row, type RowResult } from '../support/checkRows';
import rows from './heat-rows.json';

const all = rows as unknown as readonly Row[];
const expectedOf = ({ id, expected }: Row, key: string): number => {
  const value = expected?.[key];
  if (typeof value !== 'number') throw new Error(`row ${id} expects no ${key}`);
  return value;
};

const blockOf = (row: Row): UniformBlock => ({
  sizeM: row.inputs['size_m'] as readonly number[],
  k: need(row, 'k_W_per_mK'),
  density: need(row, 'rho_kg_per_m3'),
  heat: need(row, 'cp_J_per_kgK'),
  film: need(row, 'h_W_per_m2K'),
});

/** What the exact solutions say for a row, by the row's own keys. */
const answers: readonly (readonly [RegExp, (row: Row) => Readonly<Record<string, RowResult>>])[] = [
  [
    /^HT-EIG-/u,
    (row) => {
      const wall = slabRoots(need(row, 'Bi'), 1)[0]!;
      const cylinder = cylinderRoots(need(row, 'Bi'), 1)[0]!;
      return {
        wall_zeta1: wall,
        wall_C1: slabCoefficient(wall),
        cylinder_zeta1: cylinder,
        cylinder_C1: cylinderCoefficient(cylinder),
      };
    },
  ],
  [
    /^HT-SLAB-/u,
    (row) => {
      const [biot, fourier] = [need(row, 'Bi'), need(row, 'Fo')];
      return {
        theta_mid: slabTheta(biot, fourier, 0),
        theta_surface: slabTheta(biot, fourier, 1),
        theta_mean: slabMean(biot, fourier),
      };
    },
  ],
  [
    /^HT-INCROPERA-PIPE$/u,
    (row) => {
      const [k, film, length] = [need(row, 'k_W_per_mK'), need(row, 'h_W_per_m2K'), need(row, 'L_m')];
      const diffusivity = k / (need(row, 'rho_kg_per_m3') * need(row, 'cp_J_per_kgK'));
      const biot = (film * length) / k;
      const fourier = (diffusivity * need(row, 't_s')) / length ** 2;
      const [startC, fluidC] = [need(row, 'T_initial_C'), need(row, 'T_fluid_C')];
      const at = (x: number) => fluidC + (startC - fluidC) * slabTheta(biot, fourier, x);
      return {
        Bi: biot,
        Fo: fourier,
        T_insulated_face_C: at(0),
        T_heated_face_C: at(1),
        heat_flux_W_per_m2: film * (at(1) - fluidC),
      };
    },
  ],
  [
    /^HT-CENGEL-SHORTCYL$/u,
    (row) => {
      const [k, diffusivity, film] = [
        need(row, 'k_W_per_mK'),
        need(row, 'alpha_m2_per_s'),
        need(row, 'h_W_per_m2K'),
      ];
      const [radius, half, timeS] = [
        need(row, 'diameter_m') / 2,
        need(row, 'height_m') / 2,
        need(row, 't_s'),
      ];
      const wall = (x: number) => slabTheta((film * half) / k, (diffusivity * timeS) / half ** 2, x);
      const axis = cylinderTheta((film * radius) / k, (diffusivity * timeS) / radius ** 2, 0);
      const [startC, fluidC] = [need(row, 'T_initial_C'), need(row, 'T_fluid_C')];
      return {
        theta_wall_mid: wall(0),
        theta_cylinder_axis: axis,
        T_center_C: fluidC + (startC - fluidC) * wall(0) * axis,
        T_top_center_C: fluidC + (startC - fluidC) * wall(1) * axis,
      };
    },
  ],
  [
    /^HT-WATERMAIN/u,
    (row) => {
      const [startC, faceC] = [need(row, 'T_initial_C'), need(row, 'T_surface_C')];
      const reach = 2 * Math.sqrt(need(row, 'alpha_m2_per_s') * need(row, 't_s'));
      return { depth_m: reach * bracketedRoot((a) => erf(a) - (0 - faceC) / (startC - faceC), 0, 3) };
    },
  ],
  [
    /^HT-SEMI-0$/u,
    (row) => ({
      theta_rise: halfSpaceRise(
        need(row, 'x_m'),
        need(row, 't_s'),
        need(row, 'alpha_m2_per_s'),
        need(row, 'k_W_per_mK'),
        need(row, 'h_W_per_m2K'),
      ),
    }),
  ],
  [
    /^HT-BLOCK-/u,
    (row) => {
      const block = blockOf(row);
      const timeS = need(row, 't_s');
      const [startC, ovenC] = [need(row, 'T_initial_C'), need(row, 'T_oven_C')];
      const [x, y, z] = block.sizeM.map((size) => size / 2) as [number, number, number];
      const at = (place: readonly number[]) => ovenC + (startC - ovenC) * blockTheta(block, timeS, place);
      return {
        T_center_C: at([0, 0, 0]),
        T_large_face_center_C: at([0, 0, z]),
        T_corner_C: at([x, y, z]),
        T_mean_C: ovenC + (startC - ovenC) * blockMean(block, timeS),
      };
    },
  ],
  [
    /^HT-NAFEMS-T3/u,
    (row) => ({
      T_C: slabUnderSine(
        need(row, 'x_m'),
        need(row, 't_s'),
        need(row, 'L_m'),
        need(row, 'k_W_per_mK') / (need(row, 'rho_kg_per_m3') * need(row, 'cp_J_per_kgK')),
        need(row, 'amplitude_C'),
        need(row, 'p_s'),
      ),
    }),
  ],
  [
    /^HT-RAD-PERSON$/u,
    (row) => {
      const bodyK = kelvin + need(row, 'T_body_C');
      const radiatedW = (wallsC: number) =>
        need(row, 'area_m2') *
        radiationWPerM2K(need(row, 'emissivity'), bodyK, kelvin + wallsC) *
        (bodyK - kelvin - wallsC);
      return { radiated_W: (row.inputs['T_walls_C'] as readonly number[]).map(radiatedW) };
    },
  ],
  [/^(?:STEAM-P-|IAPWS-300K$)/u, (row) => ({ pressure_MPa: saturationPa(need(row, 'T_C')) / 1e6 })],
  [/^STEAM-H-/u, (row) => ({ evaporation_kJ_per_kg: evaporationJPerKg(need(row, 'T_C')) / 1000 })],
  [
    /^IAPWS-0\.1MPa$/u,
    (row) => ({
      T_K: kelvin + bracketedRoot((atC) => saturationPa(atC) / 1e6 - need(row, 'pressure_MPa'), 0, 110),
    }),
  ],
  [
    /^WETBULB-/u,
    (row) => {
      // A wet face at the wet bulb gives the water as much heat as the film brings; the film itself cancels out.
      const [dryC, wetC] = [need(row, 'T_dry_C'), need(row, 'T_wet_C')];
      const surplusW = (vaporPa: number) =>
        evaporation(wetC, 1, vaporPa, { wPerM2: 0, perK: 0 }).wPerM2 - (dryC - wetC);
      const vaporPa = bracketedRoot(surplusW, 0, saturationPa(wetC) - 1);
      return { humidity_g_per_kg: (1000 * 0.622 * vaporPa) / (need(row, 'pressure_Pa') - vaporPa) };
    },
  ],
  [
    /^HT-RAD$/u,
    (row) => ({
      h_r_W_per_m2K: radiationWPerM2K(need(row, 'emissivity'), need(row, 'T1_K'), need(row, 'T2_K')),
    }),
  ],
];

describe('rows of the reference, exact solutions', () => {
  test.each(all.map((row) => [row.id, row.status, row] as const))('%s (%s)', (id, _, row) => {
    expectRow(row, answers.find(([pattern]) => pattern.test(id))?.[1](row));
  });
});

/** Voxels of a plain block, all of it laminate in name. */
function blockVoxels(sizeMm: readonly number[], counts: readonly [number, number, number]): MoldVoxels {
  const [nx, ny, nz] = counts;
  return {
    nx,
    ny,
    nz,
    sizeMm: [sizeMm[0]! / nx, sizeMm[1]! / ny, sizeMm[2]! / nz],
    originMm: [0, 0, 0],
    half: new Uint8Array(nx * ny * nz).fill(halfCode.positive),
    laminateShare: new Float32Array(nx * ny * nz).fill(1),
    filledShare: new Float32Array(nx * ny * nz).fill(1),
    faceAreaFactor: [1, 1, 1],
  };
}

/** Largest difference from the exact field over all voxel centers, K, at the end of a run. */
function worstOf(
  run: HeatRun,
  voxels: MoldVoxels,
  block: UniformBlock,
  timeS: number,
  startC: number,
  ovenC: number,
) {
  const field = run.laminate.temperatureC.at(-1)!;
  const along = ([voxels.nx, voxels.ny, voxels.nz] as const).map((count, axis) =>
    Array.from({ length: count }, (_, i) => {
      const place = [0, 0, 0];
      place[axis] = ((i + 0.5) * voxels.sizeMm[axis]!) / 1000 - block.sizeM[axis]! / 2;
      const alone = { ...block, sizeM: [block.sizeM[axis]!] };
      return blockTheta(alone, timeS, [place[axis]]);
    }),
  );
  let [worst, sum] = [0, 0];
  field.forEach((value, at) => {
    const i = at % voxels.nx;
    const j = Math.floor(at / voxels.nx) % voxels.ny;
    const k = Math.floor(at / (voxels.nx * voxels.ny));
    const exact = ovenC + (startC - ovenC) * along[0]![i]! * along[1]![j]! * along[2]![k]!;
    worst = Math.max(worst, Math.abs(value - exact));
    sum += value;
  });
  return { worst, mean: sum / field.length };
}

const blockRows = all.filter(({ id }) => id.startsWith('HT-BLOCK-'));

describe('the solver against the exact block', () => {
  const row = blockRows[0]!;
  const block = blockOf(row);
  const [startC, ovenC] = [need(row, 'T_initial_C'), need(row, 'T_oven_C')];

  test.each(blockRows.map((one) => [one.id, one] as const))(
    '%s: every voxel within 0.3 K at 2 mm',
    (_, one) => {
      const timeS = need(one, 't_s');
      const voxels = blockVoxels([120, 80, 60], [60, 40, 30]);
      const run = runHeat(uniformCase(block, voxels, startC, ovenC), options(timeS));
      const { worst, mean } = worstOf(run, voxels, block, timeS, startC, ovenC);
      expect(worst).toBeLessThan(0.3);
      expect(mean).toBeCloseTo(expectedOf(one, 'T_mean_C'), 1);
    },
  );

  test('halving the voxels takes the error down about four times', () => {
    const errors = [8, 4, 2].map((perCm) => {
      const voxels = blockVoxels(
        [120, 80, 60],
        [120 / perCm, 80 / perCm, 60 / perCm].map(Math.round) as [number, number, number],
      );
      const run = runHeat(
        uniformCase(block, voxels, startC, ovenC),
        options(1800, { longestStepS: 5, toleranceK: 0.01 }),
      );
      return worstOf(run, voxels, block, 1800, startC, ovenC).worst;
    });
    const orders = [Math.log2(errors[0]! / errors[1]!), Math.log2(errors[1]! / errors[2]!)];
    for (const order of orders) expect(order, `errors ${errors.join(', ')} K`).toBeGreaterThan(1.8);
  }, 60_000);
});

describe('the solver in its limits', () => {
  const slabRows = all.filter(({ id }) => id.startsWith('HT-SLAB-'));

  test.each(slabRows.map((row) => [row.id, row] as const))('%s: a very wide mold is a slab', (_, row) => {
    const [biot, fourier] = [need(row, 'Bi'), need(row, 'Fo')];
    // Half thickness 20 mm; sides so far away that nothing comes from them.
    const half = 0.02;
    const k = 0.8;
    const block: UniformBlock = {
      sizeM: [1000, 1000, 2 * half],
      k,
      density: 1800,
      heat: 1000,
      film: (biot * k) / half,
    };
    const timeS = (fourier * half * half * block.density * block.heat) / k;
    const voxels = blockVoxels([1e6, 1e6, 40], [1, 1, 80]);
    const run = runHeat(
      uniformCase(block, voxels, 0, 100),
      options(timeS, { longestStepS: 5, toleranceK: 0.02 }),
    );
    const field = run.laminate.temperatureC.at(-1)!;
    const theta = (at: number) => 1 - field[at]! / 100;
    const mean = 1 - field.reduce((sum, one) => sum + one, 0) / field.length / 100;
    expect(Math.abs((theta(39) + theta(40)) / 2 - expectedOf(row, 'theta_mid'))).toBeLessThan(1e-3);
    expect(Math.abs(1.5 * theta(0) - 0.5 * theta(1) - expectedOf(row, 'theta_surface'))).toBeLessThan(2e-3);
    expect(Math.abs(mean - expectedOf(row, 'theta_mean'))).toBeLessThan(1e-3);
  });

  test('a thin mold in a weak film warms as one lump', () => {
    const block: UniformBlock = { sizeM: [0.03, 0.03, 0.004], k: 0.8, density: 1800, heat: 1000, film: 1 };
    const voxels = blockVoxels([30, 30, 4], [15, 15, 2]);
    const areaM2 = 2 * (0.03 * 0.03 + 2 * 0.03 * 0.004);
    const capacity = 1800 * 1000 * 0.03 * 0.03 * 0.004;
    const timeS = capacity / areaM2;
    const run = runHeat(uniformCase(block, voxels, 20, 70), options(timeS));
    const exact = 70 - 50 * Math.exp(-1);
    for (const value of run.laminate.temperatureC.at(-1)!) expect(Math.abs(value - exact)).toBeLessThan(0.3);
  });

  test('HT-NAFEMS-T3: the conduction step between two ruled faces', () => {
    const row = all.find(({ id }) => id === 'HT-NAFEMS-T3')!;
    const count = 200;
    const lengthM = need(row, 'L_m');
    const voxels = blockVoxels([lengthM * 1000, 1000, 1000], [count, 1, 1]);
    const k = need(row, 'k_W_per_mK');
    const block: UniformBlock = {
      sizeM: [lengthM, 1, 1],
      k,
      density: need(row, 'rho_kg_per_m3'),
      heat: need(row, 'cp_J_per_kgK'),
      film: 0,
    };
    const kernel = heatKernel(voxelCount(voxels));
    const state = heatState(uniformCase(block, voxels, 0, 0), kernel.room);
    const work = kernel.workOn(state, null);
    const { system, temperatureC } = state;
    const stepS = 0.1;
    const voxelM = lengthM / count;
    system.mass.fill((block.density * block.heat * voxelM) / stepS);
    const toFace = k / (voxelM / 2);
    system.filmX[0] = toFace / 2;
    system.filmX[count - 1] = toFace / 2;
    const steps = Math.round(need(row, 't_s') / stepS);
    for (let step = 0; step < steps; step++) {
      const midS = (step + 0.5) * stepS;
      const faceC = need(row, 'amplitude_C') * Math.sin((Math.PI * midS) / need(row, 'p_s'));
      system.source[0] = toFace * (0 - temperatureC[0]!);
      system.source[count - 1] = toFace * (faceC - temperatureC[count - 1]!);
      work.conduct();
      temperatureC.forEach((value, at) => (temperatureC[at] = value + system.rise[at]!));
    }
    const at = (need(row, 'x_m') / lengthM) * count;
    const value = (temperatureC[at - 1]! + temperatureC[at]!) / 2;
    expect(Math.abs(value - expectedOf(row, 'T_C'))).toBeLessThan(row.tolerance.abs!);
  });

  test('HT-SEMI-0: the face of a deep mold', () => {
    const row = all.find(({ id }) => id === 'HT-SEMI-0')!;
    const k = need(row, 'k_W_per_mK');
    const block: UniformBlock = {
      sizeM: [1000, 1000, 0.2],
      k,
      density: k / need(row, 'alpha_m2_per_s') / 1000,
      heat: 1000,
      film: need(row, 'h_W_per_m2K'),
    };
    const voxels = blockVoxels([1e6, 1e6, 200], [1, 1, 400]);
    const run = runHeat(
      uniformCase(block, voxels, 0, 100),
      options(need(row, 't_s'), { longestStepS: 5, toleranceK: 0.05 }),
    );
    const field = run.laminate.temperatureC.at(-1)!;
    const face = 1.5 * field[0]! - 0.5 * field[1]!;
    expect(face / 100).toBeCloseTo(expectedOf(row, 'theta_rise'), 3);
  });
});

test('kelvin is what the rows say', () => {
  expect(kelvin).toBe(273.15);
});
