/** Somebody else's numbers: fiber fraction and cured ply thickness, each row with its own source and tolerance. */
import { describe, test } from 'vitest';
import {
  curedPlyThicknessMm,
  fiberVolumeFraction,
  laminateDensityGCm3,
} from '../../src/core/laminate/plyThickness';
import { expectRow, inputOf, type CheckRow } from '../support/checkRows';
import rows from './laminate-rows.json';

function answerTo(row: CheckRow): Readonly<Record<string, number>> {
  const fiberDensityGCm3 = inputOf(row, 'rho_fiber_g_per_cm3');
  const thickness = (fiberFraction: number) =>
    row.inputs['faw_g_per_m2'] === undefined
      ? {}
      : { cpt_mm: curedPlyThicknessMm(inputOf(row, 'faw_g_per_m2'), fiberDensityGCm3, fiberFraction) };
  if (row.inputs['Vf'] !== undefined) return thickness(inputOf(row, 'Vf'));
  const resinDensityGCm3 = inputOf(row, 'rho_resin_g_per_cm3');
  const fiberFraction = fiberVolumeFraction({
    resinMassFraction: inputOf(row, 'resin_mass_fraction'),
    fiberDensityGCm3,
    resinDensityGCm3,
  });
  return {
    Vf: fiberFraction,
    rho_laminate_g_per_cm3: laminateDensityGCm3(fiberDensityGCm3, resinDensityGCm3, fiberFraction),
    ...thickness(fiberFraction),
  };
}

describe('fiber fraction and cured ply thickness', () => {
  test.each((rows as unknown as readonly CheckRow[]).map((row) => [row.id, row] as const))(
    '%s',
    (_id, row) => {
      expectRow(row, answerTo(row));
    },
  );
});
