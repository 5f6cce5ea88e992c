/** What stacks fill and what walls they accept, against volume balances worked out by hand. */
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { describe, expect, test } from 'vitest';
import { acceptedWalls, filledWall, wallWord } from '../../src/core/laminate/acceptedWalls';
import { stackVolume } from '../../src/core/laminate/stackVolume';
import { fiberGaps, wallLimits } from '../../src/steps/shared/band';
import { closingReport } from '../../src/steps/closing/report';
import { trayContext } from '../steps/contexts';
import { figureOf } from '../steps/reportHelpers';
import { histogramOf, plate } from '../support/closingHands';
import rows from './wall-volume-rows.json';

const got = ({ inputs }: (typeof rows)[number]) => {
  const card = {
    weave: 'woven' as const,
    arealWeightGsm: inputs.faw_g_per_m2,
    fiberDensityGCm3: inputs.rho_f_g_per_cm3,
    resinDensityGCm3: inputs.rho_r_g_per_cm3,
    resinMassFraction: inputs.resin_mass_fraction,
    laidThicknessMm: null,
  };
  const plies = Array.from({ length: inputs.plies }, () => card);
  const walls = acceptedWalls(
    stackVolume(plies),
    fiberGaps(plies, defaultProjectInputs.walls),
    wallLimits(defaultProjectInputs.walls),
  );
  return { walls, ...filledWall(walls, inputs.wall_mm), word: wallWord(walls, inputs.wall_mm) };
};

const near = (value: number, expected: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-6);

describe('walls from 0.60 to 0.95 mm, 2 to 8 plies of three cards', () => {
  test('every row of the table ran', () => expect(rows).toHaveLength(168));

  test.each(rows.map((row) => [row.id, row] as const))('%s', (_id, row) => {
    const { walls, voidShare, fiberFraction, word } = got(row);
    const { t0_mm, wanted_mm, void_fraction, Vf } = row.expected;
    near(walls.voidFreeMm, t0_mm);
    near(walls.wantedMm, wanted_mm);
    near(voidShare, void_fraction);
    near(fiberFraction, Math.min(1, Vf));
    expect(word).toBe(row.word);
  });
});

const scaled = (values: ArrayLike<number>, factor: number) =>
  Float32Array.from(values, (one) => one * factor);

/**
 * A part of 148.7 cm² mid-area over 104 cm² of plan, sloped alike all over, under 8 clamps of 150 N: 115 kPa over the plan.
 * It stands off by (t0 − w) A / A plan, so that every gap is t0, where the woven bed takes 14 kPa.
 */
describe('a mold that stands on resin that is held in', () => {
  const areaMm2 = 14_870;
  const planMm2 = 10_400;
  const slope = planMm2 / areaMm2;
  const flat = plate(130, 80, 20, () => 1);
  const partOf = (wallMm: number) => {
    const { samples, centerMm } = flat;
    return histogramOf({
      centerMm,
      samples: {
        ...samples,
        areaMm2: scaled(samples.areaMm2, 1 / slope),
        wallMm: scaled(samples.wallMm, wallMm),
        pullCosine: scaled(samples.pullCosine, slope),
        armUMm: scaled(samples.armUMm, slope),
        armVMm: scaled(samples.armVMm, slope),
      },
    });
  };

  test.each([
    [0.68, 0.03],
    [0.67, 0.044],
    [0.64, 0.087],
  ])('wall %d mm: stand-off %d mm, resin 100 to 101 of 115 kPa', (wallMm, standOffMm) => {
    const report = closingReport(trayContext({ summary: { closing: partOf(wallMm) } }));
    const value = (id: string) => Number(figureOf(report, id).value);
    expect(value('closing.trappedStandOffMm')).toBeCloseTo(standOffMm, 3);
    expect(value('closing.clampPressureKpa')).toBeGreaterThan(114.5);
    expect(value('closing.clampPressureKpa')).toBeLessThan(116.5);
    expect(value('closing.trappedResinKpa')).toBeGreaterThanOrEqual(99.5);
    expect(value('closing.trappedResinKpa')).toBeLessThanOrEqual(101.5);
    expect(value('closing.voidPercent')).toBe(0);
  });
});
