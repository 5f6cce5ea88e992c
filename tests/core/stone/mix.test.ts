import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { powderDensityGCm3, settingWaterRatio, waterDensityGCm3 } from '../../../src/core/stone/gypsum';
import { halfStone, mixingPlan, type MixingLimits } from '../../../src/core/stone/pourBatch';
import { stoneCards } from '../../../src/core/stone/stoneCards';
import { leastWaterPowderRatio, stoneMix } from '../../../src/core/stone/stoneMix';
import { propertySeed } from '../../support/propertySeed';

const limits: MixingLimits = {
  lossPercent: 10,
  bowlMl: 500,
  bowlFillShare: 0.6,
  workingMin: 4,
  mixingMin: 1,
  pouringMlPerMin: 200,
};
const dieStone = stoneMix({
  waterPowderRatio: 0.24,
  settingExpansionPercent: 0.1,
  powderDensityGCm3: powderDensityGCm3.alpha,
});

const near = (got: number, expected: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(1e-9 * Math.abs(expected));
const alphaMix = (waterPowderRatio: number) =>
  stoneMix({ waterPowderRatio, settingExpansionPercent: 0, powderDensityGCm3: powderDensityGCm3.alpha });

const anyMix = fc
  .record({
    waterPowderRatio: fc.double({ min: 0.19, max: 0.8, noNaN: true }),
    settingExpansionPercent: fc.double({ min: 0, max: 0.5, noNaN: true }),
    powderDensityGCm3: fc.double({ min: 2.6, max: 2.8, noNaN: true }),
    degreeOfReaction: fc.double({ min: 0.5, max: 1, noNaN: true }),
    weighedSlurryGMl: fc.option(fc.double({ min: 1.4, max: 2.2, noNaN: true })),
  })
  .map(stoneMix);
const anyVolumeMl = fc.double({ min: 1, max: 50_000, noNaN: true });

describe(`the mix (seed ${propertySeed})`, () => {
  test('neither water nor powder is lost or made, to 1e-9', () => {
    fc.assert(
      fc.property(anyMix, anyVolumeMl, (mix, volumeMl) => {
        const half = halfStone(volumeMl, mix);
        near(half.waterG, half.boundWaterG + half.freeWaterG);
        near(half.wetG, half.powderG + half.waterG);
        near(half.dryG + half.freeWaterG, half.wetG);
        near(half.wetG, volumeMl * mix.slurryDensityGMl);
        // The set stone has grown; its mass over its volume is its density.
        const grown = mix.slurryDensityGMl / mix.wetDensityGMl;
        near(half.wetG, volumeMl * grown * mix.wetDensityGMl);
        near(half.dryG, volumeMl * grown * mix.dryDensityGMl);
      }),
    );
  });

  test('the batches add up to the half and its loss, and none is larger than bowl and time allow', () => {
    fc.assert(
      fc.property(
        anyMix,
        anyVolumeMl,
        fc.double({ min: 0, max: 50, noNaN: true }),
        (mix, volumeMl, lossPercent) => {
          const half = halfStone(volumeMl, mix);
          const plan = mixingPlan(volumeMl, mix, { ...limits, lossPercent });
          const factor = 1 + lossPercent / 100;
          expect(plan.batches * plan.batchPowderG).toBeCloseTo(half.powderG * factor, 6);
          expect(plan.batches * plan.batchWaterG).toBeCloseTo(half.waterG * factor, 6);
          expect(plan.batchSlurryMl).toBeLessThanOrEqual(plan.largestBatchMl * (1 + 1e-8));
          // One batch less would not fit.
          if (plan.batches > 1)
            expect(plan.slurryMl / (plan.batches - 1)).toBeGreaterThan(plan.largestBatchMl);
          expect(plan.waterG / plan.powderG).toBeCloseTo(mix.waterPowderRatio, 12);
        },
      ),
    );
  });

  test('more water makes a lighter slurry and a weaker, more porous stone', () => {
    expect(alphaMix(0.3).slurryDensityGMl).toBeLessThan(alphaMix(0.24).slurryDensityGMl);
    expect(alphaMix(0.3).dryDensityGMl).toBeLessThan(alphaMix(0.24).dryDensityGMl);
    expect(alphaMix(0.3).porosity).toBeGreaterThan(alphaMix(0.24).porosity);
  });

  test('at the setting water nothing stays free, and below it not all powder can set', () => {
    const all = stoneMix({
      waterPowderRatio: leastWaterPowderRatio,
      settingExpansionPercent: 0,
      powderDensityGCm3: powderDensityGCm3.alpha,
    });
    expect(all.freeWaterGPerG).toBe(0);
    expect(all.wetDensityGMl).toBe(all.dryDensityGMl);
    expect(() =>
      stoneMix({
        waterPowderRatio: 0.18,
        settingExpansionPercent: 0,
        powderDensityGCm3: powderDensityGCm3.alpha,
      }),
    ).toThrow(/0\.180 there is less water than the 0\.186/u);
    expect(() =>
      stoneMix({ waterPowderRatio: 0, settingExpansionPercent: 0, powderDensityGCm3: 2.7 }),
    ).toThrow('A mix needs water');
  });

  test('powder that does not set keeps its own density and leaves its water free', () => {
    const half = stoneMix({
      waterPowderRatio: 0.3,
      settingExpansionPercent: 0,
      powderDensityGCm3: 2.757,
      degreeOfReaction: 0.5,
    });
    expect(half.freeWaterGPerG).toBeCloseTo(0.3 - settingWaterRatio / 2, 12);
    // By hand: solids 0.5 x 1.18618/2.32 + 0.5/2.757 = 0.43698 mL of 1/2.757 + 0.3/0.9982 = 0.66325 mL.
    expect(half.porosity).toBeCloseTo(1 - 0.43698 / 0.66325, 4);
  });

  test('a weighed slurry tells how much air is in it', () => {
    const airy = stoneMix({
      waterPowderRatio: 0.24,
      settingExpansionPercent: 0.1,
      powderDensityGCm3: powderDensityGCm3.alpha,
      weighedSlurryGMl: 2,
    });
    expect(airy.slurryDensityGMl).toBeCloseTo(2, 12);
    expect(halfStone(500, airy).powderG).toBeCloseTo(1000 / 1.24, 9);
    expect(airy.porosity).toBeGreaterThan(dieStone.porosity);
  });
});

describe('batches', () => {
  test('by hand: 500 mL of mold, 10 % lost, in bowls of 300 mL', () => {
    const plan = mixingPlan(500, dieStone, limits);
    expect(plan).toMatchObject({ batches: 2, limitedBy: 'bowl', largestBatchMl: 300 });
    expect(plan.slurryMl).toBeCloseTo(550, 9);
    expect(plan.batchSlurryMl).toBeCloseTo(275, 9);
    expect(plan.pourMin).toBeCloseTo(1.375, 12);
    // Its own mixing, its pour, the mixing of the next.
    expect(plan.joinAgeMin).toBeCloseTo(3.375, 12);
    const perG = 1 / 2.757 + 0.24 / waterDensityGCm3;
    expect(plan.powderG).toBeCloseTo((1.1 * 500) / perG, 9);
  });

  test('a short working time limits the batch before the bowl does', () => {
    const plan = mixingPlan(500, dieStone, { ...limits, workingMin: 2 });
    expect(plan).toMatchObject({ limitedBy: 'working time', largestBatchMl: 200, batches: 3 });
  });

  test('one batch has nothing to join', () => {
    expect(mixingPlan(200, dieStone, limits)).toMatchObject({ batches: 1, joinAgeMin: 0 });
  });

  test('no time to pour and no volume are told', () => {
    expect(() => mixingPlan(500, dieStone, { ...limits, workingMin: 1 })).toThrow('nothing can be poured');
    expect(() => halfStone(0, dieStone)).toThrow('no stone to mix');
  });
});

describe('the cards', () => {
  test.each(Object.values(stoneCards).map((card) => [card.name, card] as const))(
    '%s: every number lies between its ends and can be mixed',
    (_name, card) => {
      for (const number of [
        card.waterPowderRatio,
        card.workingMin,
        card.initialSetMin,
        card.finalSetMin,
        card.demoldMin,
        card.settingExpansionPercent,
        card.strengthMPa,
        card.detailUm,
      ]) {
        expect(number.low).toBeLessThanOrEqual(number.usual);
        expect(number.usual).toBeLessThanOrEqual(number.high);
        expect(number.source).not.toBeNull();
        expect(['published', 'from memory']).toContain(number.status);
      }
      expect(card.waterPowderRatio.low).toBeGreaterThan(leastWaterPowderRatio);
      expect(card.workingMin.high).toBeLessThanOrEqual(card.initialSetMin.low);
    },
  );
});
