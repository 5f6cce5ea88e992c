import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { curveOf } from '../../../src/core/cure/curve';
import { doseAlong, isExtrapolated, requiredS, supplierCure } from '../../../src/core/cure/dose';
import { bandVerdict } from '../../../src/core/cure/dehydrationBand';
import { glassTransitionC } from '../../../src/core/cure/glassTransition';
import { measuredDose, misfitK, stillNeededS } from '../../../src/core/cure/measuredDose';
import { supplier } from '../../support/cureCases';
import { propertySeed } from '../../support/propertySeed';

describe('supplier dose', () => {
  test('each supplier cure is a dose of one', () => {
    for (const { hours, temperatureC } of supplier.points)
      expect(requiredS(supplier, temperatureC) / 3600).toBeCloseTo(hours, 9);
  });

  test('three points keep an energy for each pair (published schedule: 46.4 and 91.3 kJ/mol)', () => {
    const three = supplierCure([
      { hours: 4, temperatureC: 120 },
      { hours: 20, temperatureC: 80 },
      { hours: 2, temperatureC: 130 },
    ]);
    expect(three.energiesJPerMol.map((one) => Math.round(one / 100) / 10)).toEqual([46.4, 91.3]);
    for (const { hours, temperatureC } of three.points)
      expect(requiredS(three, temperatureC) / 3600).toBeCloseTo(hours, 9);
    expect(isExtrapolated(three, 70)).toBe(true);
    expect(isExtrapolated(three, 125)).toBe(false);
  });

  test('a single point is never carried to lower temperatures', () => {
    const one = supplierCure([{ hours: 1, temperatureC: 120 }]);
    expect(
      doseAlong(
        one,
        curveOf([
          [0, 119],
          [1e6, 119],
        ]),
      ).total,
    ).toBe(0);
    expect(
      doseAlong(
        one,
        curveOf([
          [0, 130],
          [3600, 130],
        ]),
      ),
    ).toMatchObject({ total: 1, metAtS: 3600 });
  });

  test('says when it is met', () => {
    const { metAtS } = doseAlong(
      supplier,
      curveOf([
        [0, 70],
        [100_000, 70],
      ]),
    );
    expect(metAtS! / 3600).toBeCloseTo(16, 6);
    expect(
      doseAlong(
        supplier,
        curveOf([
          [0, 70],
          [3600, 70],
        ]),
      ).metAtS,
    ).toBeNull();
  });

  test.each([
    ['cure.noSupplierPoint', []],
    ['cure.supplierPoint', [{ hours: 0, temperatureC: 70 }]],
    // Found by chance: 2.8 h and 1 s a ten-thousandth of a kelvin apart gave a dose of Infinity.
    [
      'cure.supplierPoint',
      [
        { hours: 2.8, temperatureC: 70 },
        { hours: 0.01, temperatureC: 70.0001 },
      ],
    ],
    [
      'cure.supplierPoint',
      [
        { hours: 1, temperatureC: 70 },
        { hours: 2, temperatureC: 80 },
      ],
    ],
    [
      'cure.supplierPoint',
      [
        { hours: 1, temperatureC: 70 },
        { hours: 2, temperatureC: 70 },
      ],
    ],
  ])('refuses with %s', (code, points) => {
    expect(() => supplierCure(points)).toThrow(expect.objectContaining({ code }));
  });

  test(`a hotter curve never has the smaller dose (seed ${propertySeed})`, () => {
    const point = fc.tuple(
      fc.integer({ min: 0, max: 40_000 }),
      fc.double({ min: 20, max: 125, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 2, maxLength: 12 }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        (raw, more) => {
          const points = raw.toSorted((a, b) => a[0] - b[0]);
          const cold = doseAlong(supplier, curveOf(points));
          const warm = doseAlong(supplier, curveOf(points.map(([timeS, c]) => [timeS, c + more])));
          expect(warm.total).toBeGreaterThanOrEqual(cold.total);
          expect(cold.perSegment.reduce((a, b) => a + b, 0)).toBeCloseTo(cold.total, 9);
        },
      ),
    );
  });
});

describe('from a log', () => {
  const curve = curveOf([
    [0, 70],
    [36_000, 70],
    [57_600, 70],
  ]);

  test('dose gained across a gap is counted apart', () => {
    const { total, acrossGaps } = measuredDose(
      { curve, gaps: [{ fromS: 36_000, untilS: 57_600 }] },
      supplier,
    );
    expect(total).toBeCloseTo(1, 9);
    expect(acrossGaps).toBeCloseTo(6 / 16, 9);
  });

  test('what is still needed at 120 °C for half a dose is half of 25 min', () => {
    expect(stillNeededS(supplier, 0.5, 120)).toBeCloseTo(750, 6);
    expect(stillNeededS(supplier, 1.2, 120)).toBe(0);
  });

  test('misfit is a root mean square over the times both cover', () => {
    expect(
      misfitK(
        curveOf([
          [0, 72],
          [40_000, 72],
        ]),
        curve,
      ),
    ).toBeCloseTo(2, 9);
    expect(
      misfitK(
        curveOf([
          [0, 72],
          [1, 72],
        ]),
        curveOf([
          [5, 70],
          [6, 70],
        ]),
      ),
    ).toBeNull();
  });
});

const doses = (...three: (number | null)[]) =>
  bandVerdict([
    { treatment: 'none', dose: three[0]! },
    { treatment: 'vapor-held', dose: three[1]! },
    { treatment: 'open air', dose: three[2]! },
  ]);

describe('verdict of the band', () => {
  test('names which way it cures', () => {
    expect(doses(1.9, 1.2, 0.3).word).toBe('depends on the stone');
    expect(doses(1.9, 1.2, 0.3).sentence).toMatch(
      /vapor holds its water back \(dose 1\.20\); misses it if the stone lets/u,
    );
    expect(doses(2, 1.5, 1.1).word).toBe('cures');
    expect(doses(0.9, 0.5, 0.3).word).toBe('does not cure');
    expect(bandVerdict([{ treatment: 'none', dose: null }]).word).toBe('not judged');
  });
});

describe('Tg and voids', () => {
  test.each([
    { uncuredC: 250, fullyCuredC: -7, lambda: 0.78 },
    { uncuredC: -7, fullyCuredC: 250, lambda: 0 },
  ])('refuses constants that are none: %j', (constants) => {
    expect(() => glassTransitionC(0.5, constants)).toThrow(
      expect.objectContaining({ code: 'cure.glassConstants' }),
    );
  });
});
