/** Somebody else's numbers: cured ply thickness rows, each with its own source and tolerance. */
import { describe, expect, test } from 'vitest';
import {
  curedPlyThicknessMm,
  fiberVolumeFraction,
  laminateDensityGCm3,
} from '../../src/core/laminate/plyThickness';
import rows from './laminate-rows.json';

/** |got - expected| <= rel × |expected|, the pass rule of the rows. */
function expectNear(got: number, expected: number, rel: number, what: string): void {
  expect(Math.abs(got - expected), `${what}: got ${got}, expected ${expected}`).toBeLessThanOrEqual(
    rel * Math.abs(expected),
  );
}

describe('cured ply thickness', () => {
  test.each(rows.map((row) => [row.id, row] as const))('%s', (_id, row) => {
    const { inputs, expected, tolerance, source } = row;
    const fiberFraction =
      inputs.Vf ??
      fiberVolumeFraction({
        resinMassFraction: inputs.resin_mass_fraction ?? Number.NaN,
        fiberDensityGCm3: inputs.rho_fiber_g_per_cm3,
        resinDensityGCm3: inputs.rho_resin_g_per_cm3 ?? Number.NaN,
      });
    const thicknessMm = curedPlyThicknessMm(inputs.faw_g_per_m2, inputs.rho_fiber_g_per_cm3, fiberFraction);
    expectNear(thicknessMm, expected.cpt_mm, tolerance.rel, source);
    if (expected.Vf !== undefined) expectNear(fiberFraction, expected.Vf, tolerance.rel, source);
    if (expected.rho_laminate_g_per_cm3 !== undefined && inputs.rho_resin_g_per_cm3 !== undefined)
      expectNear(
        laminateDensityGCm3(inputs.rho_fiber_g_per_cm3, inputs.rho_resin_g_per_cm3, fiberFraction),
        expected.rho_laminate_g_per_cm3,
        tolerance.rel,
        source,
      );
  });

  test('every row names its source and all of them ran', () => {
    expect(rows.length).toBe(15);
    for (const row of rows) expect(row.source.length).toBeGreaterThan(20);
  });
});
