/** Somebody else's numbers: fiber beds, flow, moisture, rigid strokes and clamps, each row with its source and tolerance. */
import { describe, test } from 'vitest';
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
import { expectRow, inputOf as input, type CheckRow as Row } from '../support/checkRows';
import rows from './closing-rows.json';

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
    expectRow(row, gets.find(([prefix]) => id.startsWith(prefix))?.[1](row));
  });
});
