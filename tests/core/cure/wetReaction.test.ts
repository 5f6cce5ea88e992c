/** Heat of reaction in stone that keeps its water until it boils: what boils, stops boiling or dries must not run off. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dehydrationTreatments } from '../../../src/core/cure/dehydration';
import { adiabaticRiseK, checkWithin, heatBounds } from '../../../src/core/cure/heatBounds';
import type { HeatCase } from '../../../src/core/cure/heatCase';
import { imbalance } from '../../../src/core/cure/heatLedger';
import { runHeat } from '../../../src/core/cure/heatRun';
import { heatState } from '../../../src/core/cure/heatState';
import { boxMoldVoxels } from '../../../src/core/cure/moldVoxels';
import { options, programEndS, stoneCase, type CaseChoices } from '../../support/cureCases';
import { plainRoom } from '../../support/plainHeatWork';
import { propertySeed } from '../../support/propertySeed';

const ovenC = 120;

const constant = (perS: number) => ({ perS, energyJPerMol: 70_000 });

function reacting(choices: CaseChoices, heatJPerG: number): HeatCase {
  const law = { form: 'autocatalytic', k1: constant(4e4), k2: constant(8e6), m: 1, n: 1.5 } as const;
  return { ...stoneCase(choices), kinetics: { law, startCure: 0.01, heatJPerG } };
}

/** @returns hottest place of the laminate, °C */
function expectFollowed(one: HeatCase): number {
  const run = runHeat(one, options(programEndS));
  const hottestC = Math.max(...run.laminate.peakC, ...run.peakC);
  expect(hottestC).toBeLessThan(ovenC + 0.5 + adiabaticRiseK(one, heatState(one, plainRoom)));
  expect(Math.abs(imbalance(run.ledger))).toBeLessThan(1e-3);
  return Math.max(...run.laminate.peakC);
}

describe('the stone keeps its water and the resin gives heat', () => {
  const small = { blockMm: [60, 40, 30], laminateMm: [44, 26, 0.7] } as const;

  test.each([0.01, 0.5, 1])('voxels of 2 mm, %f of the free water left', (heldShare) => {
    expectFollowed(reacting({ ...small, voxelMm: 2, rule: 'stays', heldShare }, 400));
  });

  test('voxels of 3 mm and half the water: as hot as dried, not 153 °C', () => {
    const dryC = expectFollowed(reacting({ voxelMm: 3, heldShare: 0 }, 400));
    const dampC = expectFollowed(reacting({ voxelMm: 3, rule: 'stays', heldShare: 0.5 }, 400));
    expect(dryC).toBeCloseTo(120, 0);
    expect(dampC).toBeLessThan(dryC + 0.5);
  });
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test(`any damp mold with a reaction stays within oven and reaction, and its books balance (seed ${propertySeed})`, () => {
  const anyCase = fc.record({
    blockMm: fc.tuple(number(15, 60), number(15, 60), number(15, 40)),
    voxelMm: number(2.5, 6),
    thickMm: number(0.3, 3),
    heldShare: number(0.005, 1),
    heatJPerG: number(50, 500),
    rule: fc.constantFrom('wicks' as const, 'stays' as const),
    treatment: fc.constantFrom(...dehydrationTreatments),
  });
  fc.assert(
    fc.property(anyCase, ({ blockMm, voxelMm, thickMm, heatJPerG, ...choices }) => {
      const laminateMm = [0.7 * blockMm[0], 0.7 * blockMm[1], thickMm] as const;
      const voxels = boxMoldVoxels({ blockMm, laminateMm, voxelMm });
      expectFollowed(reacting({ ...choices, voxels }, heatJPerG));
    }),
    { seed: propertySeed, numRuns: 15 },
  );
});

describe('a run that came apart is not shown', () => {
  const one = reacting({ voxelMm: 5, rule: 'stays', heldShare: 0.5 }, 400);
  const bounds = heatBounds(one, heatState(one, plainRoom));

  test('the bounds are oven and start, reaction and drying', () => {
    const resinShare = one.laminate.resinMassFraction;
    const allLaminateK = (400 * 0.99 * 1000 * resinShare) / one.laminate.heatJPerKgK;
    expect(bounds.hottestC).toBeGreaterThan(ovenC);
    expect(bounds.hottestC).toBeLessThanOrEqual(ovenC + 0.5 + allLaminateK);
    expect(bounds.coldestC).toBeLessThan(20);
    const inert = { ...one, kinetics: null };
    expect(heatBounds(inert, heatState(inert, plainRoom)).hottestC).toBe(ovenC + 0.5);
  });

  test.each([899, -102, Number.NaN])('%f °C is said to be none', (temperatureC) => {
    expect(() => checkWithin(bounds, 100, temperatureC)).toThrow(
      expect.objectContaining({ code: 'cure.notFollowed' }),
    );
    expect(() => checkWithin(bounds, 100, ovenC)).not.toThrow();
  });
});
