/**
 * Somebody else's numbers: stiffness, thermal curvature, two-layer strip and spring-in, each row with its own source,
 * status and tolerance. Rows are in Pa and m; the unit conversion stands here, not in the core.
 */
import { describe, expect, test } from 'vitest';
import { withCoat } from '../../src/core/laminate/coat';
import { effectiveModuli } from '../../src/core/laminate/effectiveModuli';
import { maximumStrainIndex, tsaiWuReserve } from '../../src/core/laminate/failureIndex';
import { laminateOf, type LaminateLayer } from '../../src/core/laminate/lamination';
import { loadStates, residualStates } from '../../src/core/laminate/plyStresses';
import { reducedStiffnessMpa, turnedStiffnessMpa } from '../../src/core/laminate/plyStiffness';
import { springInDeg } from '../../src/core/laminate/springIn';
import { thermalResponse } from '../../src/core/laminate/thermalResponse';
import { twoLayerCurvaturePerM } from '../../src/core/laminate/twoLayerStrip';
import rows from './lamination-rows.json';

type Result = number | readonly number[] | readonly (readonly number[])[];
type Inputs = Readonly<Record<string, number | readonly number[] | undefined>>;

interface Row {
  readonly id: string;
  readonly inputs: Inputs;
  readonly expected: Readonly<Record<string, Result>>;
  readonly tolerance: { readonly rel?: number; readonly abs?: number };
  readonly source: string;
  readonly status: string;
}

/** The rows as one type: each holds only the keys it needs. */
const cases = rows as unknown as readonly Row[];

const paPerMpa = 1e6;
const scaled = (result: Result, factor: number): Result => {
  if (typeof result === 'number') return result * factor;
  return result.map((entry) =>
    typeof entry === 'number' ? entry * factor : entry.map((value) => value * factor),
  ) as Result;
};
const flat = (result: Result): readonly number[] =>
  typeof result === 'number' ? [result] : result.flatMap((entry) => entry);

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

function resultsOf({ id, inputs }: Row): Readonly<Record<string, Result>> {
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
    return { kappa_per_m: twoLayerCurvaturePerM(layer(1), layer(2), number(inputs, 'dT_K')) };
  }
  if (id.startsWith('LAMINA-')) return laminaStrength(inputs);
  if (inputs['ply_thickness_m'] !== undefined) return stackResults(inputs);
  const angleDeg = inputs['angle_deg'] === undefined ? 0 : number(inputs, 'angle_deg');
  return {
    Q_Pa: scaled(reducedStiffnessMpa(elasticOf(inputs)), paPerMpa),
    Qbar_Pa: scaled(turnedStiffnessMpa(elasticOf(inputs), angleDeg), paPerMpa),
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
    const results = resultsOf(row);
    for (const [key, expected] of Object.entries(row.expected)) {
      const got = flat(results[key] ?? []);
      const wanted = flat(expected);
      expect(got.length, `${key}: number of entries`).toBe(wanted.length);
      const largest = Math.max(...wanted.map(Math.abs));
      const allowed = Math.max(row.tolerance.abs ?? 0, (row.tolerance.rel ?? 0) * largest);
      wanted.forEach((value, i) => {
        const error = Math.abs(got[i]! - value);
        expect(error, `${key}[${i}]: got ${got[i]}, expected ${value}; ${row.source}`).toBeLessThanOrEqual(
          allowed,
        );
      });
    }
  });

  test('every row names its source and all of them ran', () => {
    expect(cases.length).toBe(15);
    for (const row of cases) expect(row.source.length).toBeGreaterThan(20);
  });
});
