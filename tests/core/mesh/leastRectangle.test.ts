import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leastRectangle } from '../../../src/core/mesh/leastRectangle';
import { propertySeed } from '../../support/propertySeed';

const turned = (points: readonly (readonly [number, number])[], deg: number) => {
  const [cos, sin] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  return points.flatMap(([x, y]) => [x * cos - y * sin, x * sin + y * cos]);
};
const corners = (length: number, width: number) =>
  [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ] as const;

describe(`the least rectangle (seed ${propertySeed})`, () => {
  test('of a turned rectangle is that rectangle, whatever lies in it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 200, noNaN: true }),
        fc.double({ min: 10, max: 200, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.array(
          fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
        ),
        (length, width, deg, inside) => {
          const points = [
            ...inside.map(([x, y]) => [x * length, y * width] as const),
            ...corners(length, width),
          ];
          const { turnDeg, firstMm, secondMm } = leastRectangle(turned(points, deg));
          expect((firstMm * secondMm) / (length * width)).toBeLessThan(1.0011);
          expect((firstMm * secondMm) / (length * width)).toBeGreaterThan(1 - 1e-4);
          expect(turnDeg > -45 && turnDeg <= 45).toBe(true);
        },
      ),
    );
  });

  test('by hand: 100 × 60 turned by 30°, by 100° and hardly at all', () => {
    expect(leastRectangle(turned(corners(100, 60), 30))).toEqual({
      turnDeg: expect.closeTo(30, 9),
      firstMm: expect.closeTo(100, 9),
      secondMm: expect.closeTo(60, 9),
    });
    expect(leastRectangle(turned(corners(100, 60), 100))).toEqual({
      turnDeg: expect.closeTo(10, 9),
      firstMm: expect.closeTo(60, 9),
      secondMm: expect.closeTo(100, 9),
    });
    expect(leastRectangle(turned(corners(100, 60), 0.01)).turnDeg).toBe(0);
  });

  test('a rectangle is never less than any turned one round the same points', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 1000 })), {
          minLength: 3,
          maxLength: 40,
        }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        (points, deg) => {
          const { firstMm, secondMm } = leastRectangle(points.flat());
          const other = turned(points, deg);
          const span = (axis: 0 | 1) => {
            const all = other.filter((_, at) => at % 2 === axis);
            return Math.max(...all) - Math.min(...all);
          };
          expect(firstMm * secondMm).toBeLessThanOrEqual(1.002 * span(0) * span(1) + 20);
        },
      ),
    );
  });

  test('a circle of 200 000 points keeps to the axes, and ends', () => {
    const points = Array.from({ length: 200_000 }, (_, k) => [Math.cos(k), Math.sin(k)] as const);
    expect(leastRectangle(points.flat())).toEqual({
      turnDeg: 0,
      firstMm: expect.closeTo(2, 4),
      secondMm: expect.closeTo(2, 4),
    });
  });

  test('points on a line and a single point have no area', () => {
    expect(leastRectangle([3, 0, 3, 5, 3, 2])).toEqual({ turnDeg: 0, firstMm: 0, secondMm: 5 });
    expect(leastRectangle([3, 4])).toEqual({ turnDeg: 0, firstMm: 0, secondMm: 0 });
  });
});
