/** Somebody else's numbers: fiber beds, flow, moisture, rigid strokes and clamps, each row with its source and tolerance. */
import { describe, expect, test } from 'vitest';
import { meanPressureKpa, springForceAfterThinning, vacuumBagKpa } from '../../src/core/closing/clamps';
import {
  alignedSpringPa,
  bedPressurePa,
  fractionAtPressure,
  wovenBed,
  type AlignedBed,
} from '../../src/core/closing/fiberBed';
import { flowTimeS, leastVoidFreeAtm, permeabilityM2, viscosityPaS } from '../../src/core/closing/flow';
import { gapChangeMm } from '../../src/core/closing/sliding';
import rows from './closing-rows.json';

interface Row {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number | undefined>>;
  readonly expected: Readonly<Record<string, number | undefined>>;
  readonly tolerance: { readonly rel?: number; readonly abs?: number };
  readonly source: string;
  readonly status: string;
}

/** An input that the row must have. */
const input = ({ id, inputs }: Row, name: string): number => {
  const value = inputs[name];
  if (value === undefined) throw new Error(`row ${id} has no ${name}`);
  return value;
};

const alignedOf = (row: Row): AlignedBed => ({
  kind: 'aligned',
  springPa: input(row, 'As_Pa'),
  unloadedFraction: input(row, 'V0'),
  limitFraction: input(row, 'Va'),
});

const viscosityOf = (row: Row) =>
  viscosityPaS(
    {
      floorPaS: input(row, 'mu_inf_Pa_s'),
      activationJMol: input(row, 'U_J_per_mol'),
      cureFactor: input(row, 'Kv'),
    },
    input(row, 'T_C'),
    input(row, 'alpha'),
  );

/** What we get for a row, by the start of its id. */
const gets: readonly (readonly [prefix: string, got: (row: Row) => Record<string, number>])[] = [
  ['COMP-AS', (row) => ({ As_Pa: alignedSpringPa(input(row, 'E_fiber_Pa'), input(row, 'beta')) })],
  ['COMP-GUT-INV', (row) => ({ Vf: fractionAtPressure(alignedOf(row), input(row, 'fiber_stress_Pa')) })],
  ['COMP-GUT', (row) => ({ fiber_stress_Pa: bedPressurePa(alignedOf(row), input(row, 'Vf')) })],
  ['COMP-LOMOV', (row) => ({ Vf: fractionAtPressure(wovenBed, 1e6 * input(row, 'pressure_MPa')) })],
  [
    'PERM',
    (row) => ({ K_m2: permeabilityM2(input(row, 'fiber_radius_m'), input(row, 'Vf'), input(row, 'k0')) }),
  ],
  ['VISC', (row) => ({ viscosity_Pa_s: viscosityOf(row) })],
  ['VOID', (row) => ({ p_min_atm: leastVoidFreeAtm(input(row, 'T_C'), input(row, 'RH_percent')) })],
  ['MOLD-GAP', (row) => ({ gap_change_mm: gapChangeMm(input(row, 'stroke_mm'), input(row, 'draft_deg')) })],
  [
    'FLOW-TIME',
    (row) => ({
      t_s: flowTimeS(
        input(row, 'viscosity_Pa_s'),
        input(row, 'Vf'),
        input(row, 'length_m'),
        input(row, 'K_m2'),
        input(row, 'dp_Pa'),
      ),
    }),
  ],
  [
    'CLAMP-SPRING',
    (row) => {
      const force = springForceAfterThinning(
        input(row, 'spring_rate_N_per_mm'),
        input(row, 'preload_travel_mm'),
        input(row, 'thinning_mm'),
      );
      return {
        force_per_clamp_N: force,
        pressure_kPa: meanPressureKpa(force * input(row, 'n_clamps'), input(row, 'area_mm2')),
      };
    },
  ],
  [
    'CLAMP-',
    (row) => ({
      pressure_kPa: meanPressureKpa(
        input(row, 'n_clamps') * input(row, 'force_per_clamp_N'),
        input(row, 'length_mm') * input(row, 'width_mm'),
      ),
    }),
  ],
  [
    'VACUUM',
    (row) => ({ pressure_kPa: vacuumBagKpa(input(row, 'vacuum_fraction'), input(row, 'atmosphere_kPa')) }),
  ],
];

const checked = rows as unknown as readonly Row[];

describe('closing, clamps and flow', () => {
  test.each(checked.map((row) => [row.id, row] as const))('%s', (id, row) => {
    const got = gets.find(([prefix]) => id.startsWith(prefix))?.[1](row);
    const { rel = 0, abs = 0 } = row.tolerance;
    const wanted = Object.entries(row.expected);
    expect(wanted.length).toBeGreaterThan(0);
    for (const [name, expected] of wanted) {
      const value = got?.[name] ?? Number.NaN;
      const allowed = abs + rel * Math.abs(expected ?? Number.NaN);
      const miss = Math.abs(value - (expected ?? Number.NaN));
      expect(miss, `${row.source}: got ${value}, expected ${expected}`).toBeLessThanOrEqual(allowed);
    }
  });

  test('every row names its source and status, and all of them ran', () => {
    expect(checked.length).toBe(25);
    for (const row of checked) {
      expect(row.source.length).toBeGreaterThan(15);
      expect(['published', 'computed', 'from memory']).toContain(row.status);
    }
  });
});
