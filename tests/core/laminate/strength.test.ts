import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  maximumStrainIndex,
  tsaiWuIndex,
  tsaiWuReserve,
  type PlyStrength,
} from '../../../src/core/laminate/failureIndex';
import { firstPlyFailure } from '../../../src/core/laminate/firstPlyFailure';
import { laminateOf } from '../../../src/core/laminate/lamination';
import { Problem } from '../../../src/core/problem';
import { propertySeed } from '../../support/propertySeed';
import { fabric, stackOf, unidirectional } from './arbitraryLaminate';

const strength: PlyStrength = {
  tension1Mpa: 1500,
  compression1Mpa: 1200,
  tension2Mpa: 40,
  compression2Mpa: 200,
  shear12Mpa: 70,
};

const stress = (size: number) =>
  fc.tuple(
    fc.double({ min: -10 * size, max: 10 * size, noNaN: true }),
    fc.double({ min: -size, max: size, noNaN: true }),
    fc.double({ min: -size, max: size, noNaN: true }),
  );

describe(`failure of one ply (seed ${propertySeed})`, () => {
  test('index 1 at each strength on its own', () => {
    const alone = [
      [1500, 0, 0],
      [-1200, 0, 0],
      [0, 40, 0],
      [0, -200, 0],
      [0, 0, 70],
      [0, 0, -70],
    ] as const;
    for (const one of alone) expect(tsaiWuIndex(one, strength)).toBeCloseTo(1, 12);
    expect(maximumStrainIndex([0.01, 0, 0], unidirectional, strength)).toBeCloseTo(1334 / 1500, 12);
    expect(maximumStrainIndex([0, -0.01, 0], unidirectional, strength)).toBeCloseTo(87.84 / 200, 12);
  });

  test('load times reserve, on top of the residual stress, is exactly at failure', () => {
    fc.assert(
      fc.property(stress(30), stress(10), (load, residual) => {
        fc.pre(Math.hypot(...load) > 0.01);
        const factor = tsaiWuReserve(load, residual, strength)!;
        expect(factor).toBeGreaterThan(0);
        const sum = [
          residual[0] + factor * load[0],
          residual[1] + factor * load[1],
          residual[2] + factor * load[2],
        ] as const;
        expect(tsaiWuIndex(sum, strength)).toBeCloseTo(1, 6);
      }),
    );
  });

  test('no load has no reserve to name; a ply that has failed already has none left', () => {
    expect(tsaiWuReserve([0, 0, 0], [0, 10, 0], strength)).toBeNull();
    expect(tsaiWuReserve([100, 0, 0], [0, 50, 0], strength)).toBe(0);
  });
});

describe('first ply failure', () => {
  const laminate = laminateOf(stackOf(unidirectional, 0, 90, 90, 0));
  const all = [strength, strength, strength, strength];
  const pull = { forceNPerMm: [50, 0, 0], momentN: [0, 0, 0] } as const;

  test('a pulled cross-ply cracks its 90 plies first, sooner with the stress that cooling leaves', () => {
    const cold = firstPlyFailure(laminate, all, pull, -100)!;
    const unstressed = firstPlyFailure(laminate, all, pull, 0)!;
    expect([1, 2]).toContain(unstressed.layer);
    expect(cold.reserveFactor!).toBeLessThan(unstressed.reserveFactor!);
    expect(unstressed.layersNotJudged).toEqual([]);
  });

  test('twice the load, half the reserve', () => {
    const double = { forceNPerMm: [100, 0, 0], momentN: [0, 0, 0] } as const;
    const once = firstPlyFailure(laminate, all, pull, 0)!.reserveFactor!;
    expect(firstPlyFailure(laminate, all, double, 0)!.reserveFactor!).toBeCloseTo(once / 2, 9);
  });

  test('bending strains the outer face most', () => {
    const bent = laminateOf(stackOf(fabric, 0, 0, 0));
    const even = { ...strength, compression1Mpa: 1500, tension2Mpa: 1500, compression2Mpa: 1500 };
    const bend = { forceNPerMm: [0, 0, 0], momentN: [20, 0, 0] } as const;
    const first = firstPlyFailure(bent, [even, even, even], bend, 0)!;
    expect([0, 2]).toContain(first.layer);
    // M z / (t³/12) at the outer face of a 0.75 mm plate.
    expect(first.maximumStrainIndex).toBeCloseTo((20 * 6) / 0.75 ** 2 / 1500, 9);
  });

  test('judges only plies with strengths, and says which it left out', () => {
    expect(firstPlyFailure(laminate, [strength, null, null, strength], pull, 0)).toMatchObject({
      layersNotJudged: [1, 2],
    });
    expect(firstPlyFailure(laminate, [null, null, null, null], pull, 0)).toBeNull();
  });

  test('refuses a strength that is not positive', () => {
    expect(() => firstPlyFailure(laminate, [{ ...strength, shear12Mpa: 0 }], pull, 0)).toThrow(Problem);
  });
});
