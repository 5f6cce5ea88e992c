/**
 * Somebody else's numbers: stiffness, thermal curvature, two-layer strip and spring-in, each row with its own source,
 * status and tolerance. Rows are in Pa and m; the unit conversion stands here, not in the core.
 */
import { describe, test } from 'vitest';
import { withCoat } from '../../src/core/laminate/coat';
import { effectiveModuli } from '../../src/core/laminate/effectiveModuli';
import { maximumStrainIndex, tsaiWuReserve } from '../../src/core/laminate/failureIndex';
import { laminateOf, type LaminateLayer } from '../../src/core/laminate/lamination';
import { loadStates, residualStates } from '../../src/core/laminate/plyStresses';
import { reducedStiffnessMpa, turnedStiffnessMpa } from '../../src/core/laminate/plyStiffness';
import { springInDeg } from '../../src/core/laminate/springIn';
import { thermalResponse } from '../../src/core/laminate/thermalResponse';
import { twoLayerCurvaturePerM } from '../../src/core/laminate/twoLayerStrip';
import { expectRow, type CheckRow, type RowResult as Result } from '../support/checkRows';
import rows from './lamination-rows.json';

type Inputs = CheckRow['inputs'];

/** The rows as one type: each holds only the keys it needs. */
const cases = rows as unknown as readonly CheckRow[];

const paPerMpa = 1e6;
const scaled = (result: Result, factor: number): Result => {
  if (typeof result === 'number') return result * factor;
  return result.map((entry) =>
    typeof entry === 'number' ? entry * factor : entry.map((value) => value * factor),
  ) as Result;
};
/** 11, 12, 16, 22, 26, 66 of a symmetric matrix, as books print it. */
const upper = (matrix: readonly (readonly number[])[]): readonly number[] =>
  matrix.flatMap((line, i) => line.slice(i));

function number(inputs: Inputs, key: string): number {
  const value = inputs[key];
  if (typeof value !== 'number') throw new Error(`row without ${key}`);
  return value;
}

function elasticOf(inputs: Inputs) {
  return {
    e1GPa: number(inputs, 'E1_Pa') / 1e9,
    e2GPa: number(inputs, 'E2_Pa') / 1e9,
    g12GPa: number(inputs, 'G12_Pa') / 1e9,
    nu12: number(inputs, 'nu12'),
    expansion1PerK: inputs['alpha1_per_K'] === undefined ? 0 : number(inputs, 'alpha1_per_K'),
    expansion2PerK: inputs['alpha2_per_K'] === undefined ? 0 : number(inputs, 'alpha2_per_K'),
  };
}

function layersOf(inputs: Inputs): readonly LaminateLayer[] {
  const thicknessMm = 1000 * number(inputs, 'ply_thickness_m');
  if (inputs['n_plies'] !== undefined) {
    const eGPa = number(inputs, 'ply_E_Pa') / 1e9;
    const expansionPerK = number(inputs, 'ply_alpha_per_K');
    const elastic = {
      e1GPa: eGPa,
      e2GPa: eGPa,
      g12GPa: number(inputs, 'ply_G_Pa') / 1e9,
      nu12: number(inputs, 'ply_nu'),
      expansion1PerK: expansionPerK,
      expansion2PerK: expansionPerK,
    };
    const plies = Array.from({ length: number(inputs, 'n_plies') }, () => ({
      elastic,
      angleDeg: 0,
      thicknessMm,
    }));
    const coat = {
      eGPa: number(inputs, 'coat_E_Pa') / 1e9,
      nu: number(inputs, 'coat_nu'),
      expansionPerK: number(inputs, 'coat_alpha_per_K'),
      thicknessMm: 1000 * number(inputs, 'coat_thickness_m'),
    };
    return withCoat(plies, coat, 'core');
  }
  const elastic = elasticOf(inputs);
  return (inputs['angles_deg'] as readonly number[]).map((angleDeg) => ({ elastic, angleDeg, thicknessMm }));
}

/** Every result name that a stack row may ask for, in the row's own units. */
function stackResults(inputs: Inputs): Readonly<Record<string, Result>> {
  const laminate = laminateOf(layersOf(inputs));
  const { heldFlat } = effectiveModuli(laminate);
  const change = inputs['dT_K'] === undefined ? 0 : number(inputs, 'dT_K');
  const thermal = thermalResponse(laminate, change);
  const perKelvin = thermalResponse(laminate, 1);
  const outer = residualStates(laminate, change).at(-1)!;
  const d = scaled(laminate.dNmm, 1e-3) as readonly (readonly number[])[];
  return {
    A_N_per_m: scaled(laminate.aNPerMm, 1e3),
    B_N: laminate.bN,
    D_Nm: d,
    A_upper_N_per_m: scaled(upper(laminate.aNPerMm), 1e3),
    B_upper_N: upper(laminate.bN),
    D_upper_Nm: upper(d),
    B11_N: laminate.bN[0][0],
    D11_Nm: d[0]![0]!,
    D12_Nm: d[0]![1]!,
    D66_Nm: d[2]![2]!,
    Ex_Pa: heldFlat.exGPa * 1e9,
    Gxy_Pa: heldFlat.gxyGPa * 1e9,
    nu_xy: heldFlat.nuXy,
    N_thermal_N_per_m: scaled(thermal.forceNPerMm, 1e3),
    M_thermal_N: thermal.momentN,
    N_thermal_N_per_mK: scaled(perKelvin.forceNPerMm, 1e3),
    M_thermal_N_per_K: perKelvin.momentN,
    // The last ply of the row that asks lies at 90: its own axes are the laminate's, exchanged.
    outer_stress_x_MPa: outer.stressMpa[1],
    outer_stress_y_MPa: outer.stressMpa[0],
    eps0: thermal.midplaneStrain,
    kappa_per_m: thermal.curvaturePerM,
  };
}

function resultsOf({ id, inputs }: CheckRow): Readonly<Record<string, Result>> {
  if (id.startsWith('SPRINGIN'))
    return {
      spring_in_deg: springInDeg({
        arcAngleDeg: number(inputs, 'corner_arc_angle_deg'),
        expansionInPlanePerK: number(inputs, 'alpha_in_plane_per_K'),
        expansionThroughPerK: number(inputs, 'alpha_through_per_K'),
        temperatureChangeK: number(inputs, 'dT_K'),
        cureStrainInPlane: number(inputs, 'cure_strain_in_plane'),
        cureStrainThrough: number(inputs, 'cure_strain_through'),
      }),
    };
  if (id.startsWith('BIMETAL')) {
    const layer = (n: 1 | 2) => ({
      eGPa: number(inputs, `E${n}_Pa`) / 1e9,
      thicknessMm: 1000 * number(inputs, `t${n}_m`),
      expansionPerK: number(inputs, `alpha${n}_per_K`),
    });
    const curvaturePerM = twoLayerCurvaturePerM(layer(1), layer(2), number(inputs, 'dT_K'));
    if (inputs['length_m'] === undefined) return { kappa_per_m: curvaturePerM };
    return { tip_mm: 1000 * (curvaturePerM / 2) * number(inputs, 'length_m') ** 2 };
  }
  if (id.startsWith('LAMINA-')) return laminaStrength(inputs);
  if (inputs['ply_thickness_m'] !== undefined) return stackResults(inputs);
  const angleDeg = inputs['angle_deg'] === undefined ? 0 : number(inputs, 'angle_deg');
  const reduced = reducedStiffnessMpa(elasticOf(inputs));
  const turned = turnedStiffnessMpa(elasticOf(inputs), angleDeg);
  return {
    Q_Pa: scaled(reduced, paPerMpa),
    Qbar_Pa: scaled(turned, paPerMpa),
    Q11_GPa: reduced[0][0] / 1000,
    Q12_GPa: reduced[0][1] / 1000,
    Q22_GPa: reduced[1][1] / 1000,
    Q66_GPa: reduced[2][2] / 1000,
    Qbar_upper_GPa: scaled(upper(turned), 1e-3),
  };
}

function laminaStrength(inputs: Inputs): Readonly<Record<string, Result>> {
  const elastic = elasticOf(inputs);
  const laminate = laminateOf([{ elastic, angleDeg: number(inputs, 'angle_deg'), thicknessMm: 1 }]);
  const forceNPerMm = [
    number(inputs, 'stress_x_MPa'),
    number(inputs, 'stress_y_MPa'),
    number(inputs, 'stress_xy_MPa'),
  ] as const;
  const [state] = loadStates(laminate, { forceNPerMm, momentN: [0, 0, 0] });
  const strength = {
    tension1Mpa: number(inputs, 'tension1_MPa'),
    compression1Mpa: number(inputs, 'compression1_MPa'),
    tension2Mpa: number(inputs, 'tension2_MPa'),
    compression2Mpa: number(inputs, 'compression2_MPa'),
    shear12Mpa: number(inputs, 'shear12_MPa'),
  };
  return {
    tsai_wu_factor: tsaiWuReserve(state!.stressMpa, [0, 0, 0], strength) ?? Number.NaN,
    maximum_strain_factor: 1 / maximumStrainIndex(state!.strain, elastic, strength),
  };
}

describe('lamination theory, thermal curvature and spring-in', () => {
  test.each(cases.map((row) => [`${row.id} (${row.status})`, row] as const))('%s', (_title, row) => {
    expectRow(row, resultsOf(row));
  });
});
