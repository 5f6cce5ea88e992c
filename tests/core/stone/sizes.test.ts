import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { matchRims } from '../../../src/core/stone/rimMatch';
import { chainedLength, printScaleFor, type SizeChainChoices } from '../../../src/core/stone/sizeChain';
import { propertySeed } from '../../support/propertySeed';

const choices: SizeChainChoices = {
  printScale: 1,
  printShrinkPercent: 0,
  settingExpansionPercent: 0.1,
  stoneExpansionPerK: 16e-6,
  laminateExpansionPerK: 3e-6,
  roomC: 20,
  gelC: 70,
};

describe(`the size chain (seed ${propertySeed})`, () => {
  test('by hand: 120 mm over stone that grows 0.1 % and gels at 70 °C', () => {
    const chain = chainedLength(120, choices);
    expect(chain.printedMm).toBe(120);
    expect(chain.stoneMm).toBeCloseTo(120.12, 9);
    expect(chain.stoneAtGelMm).toBeCloseTo(120.12 * 1.0008, 9);
    expect(chain.finishedMm).toBeCloseTo(120.12 * 1.0008 * 0.99985, 9);
  });

  test('a caliper on the print replaces scale and shrinkage', () => {
    const chain = chainedLength(120, { ...choices, printScale: 1.1, printShrinkPercent: 3 }, 119.8);
    expect(chain.printedMm).toBe(119.8);
  });

  test('the print scale hits the wanted length', () => {
    const length = fc.double({ min: 1, max: 1000, noNaN: true });
    const anyChoices = fc.record({
      printScale: fc.constant(1),
      printShrinkPercent: fc.double({ min: -2, max: 2, noNaN: true }),
      settingExpansionPercent: fc.double({ min: 0, max: 0.5, noNaN: true }),
      stoneExpansionPerK: fc.double({ min: 0, max: 30e-6, noNaN: true }),
      laminateExpansionPerK: fc.double({ min: -2e-6, max: 30e-6, noNaN: true }),
      roomC: fc.constant(20),
      gelC: fc.double({ min: 20, max: 150, noNaN: true }),
    });
    fc.assert(
      fc.property(length, length, anyChoices, (drawnMm, wantedMm, any) => {
        const printScale = printScaleFor(drawnMm, wantedMm, any);
        const { finishedMm } = chainedLength(drawnMm, { ...any, printScale });
        expect(Math.abs(finishedMm / wantedMm - 1)).toBeLessThan(1e-12);
      }),
    );
    expect(() => printScaleFor(0, 100, choices)).toThrow('above zero');
  });
});

const rectangle = (length: number, width: number, x = 0, y = 0) => ({
  outlineMm: [
    [x, y],
    [x + length, y],
    [x + length, y + width],
    [x, y + width],
  ] as const,
});

describe('two rims', () => {
  test('the same rim elsewhere fits without a step', () => {
    expect(matchRims(rectangle(120, 64), rectangle(120, 64, 50, -3))).toMatchObject({
      lengthMm: 0,
      widthMm: 0,
      outlineMm: 0,
    });
  });

  test('one longer by 0.4 and narrower by 0.2: half of each at every corner', () => {
    const match = matchRims(rectangle(120.4, 63.8), rectangle(120, 64));
    expect(match.lengthMm).toBeCloseTo(0.4, 9);
    expect(match.widthMm).toBeCloseTo(-0.2, 9);
    expect(match.outlineMm).toBeCloseTo(0.2, 9);
  });

  test('a cut corner fits only when the other half is turned as it is seen from behind', () => {
    const cut = {
      outlineMm: [
        [0, 0],
        [100, 0],
        [100, 40],
        [80, 60],
        [0, 60],
      ] as const,
    };
    const mirrored = { outlineMm: cut.outlineMm.map(([x, y]) => [-x, y] as const) };
    const match = matchRims(cut, mirrored);
    expect(match.outlineMm).toBeCloseTo(0, 9);
    expect(match.turned).toBe('first axis turned round');
  });

  test('an outline of two points is no rim', () => {
    expect(() =>
      matchRims(rectangle(1, 1), {
        outlineMm: [
          [0, 0],
          [1, 0],
        ],
      }),
    ).toThrow('three points');
  });
});
