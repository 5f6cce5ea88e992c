import { describe, expect, test } from 'vitest';
import { boundedLeastSquares } from '../../../src/core/numeric/boundedLeastSquares';
import { fineOde, integrateOde } from '../../../src/core/numeric/ode';
import { bracketedRoot } from '../../../src/core/numeric/roots';

describe('integrateOde', () => {
  test('decay, and growth driven by time', () => {
    expect(integrateOde((_, y) => -y, { t: 0, y: 1 }, 5).y).toBeCloseTo(Math.exp(-5), 8);
    expect(integrateOde((t) => Math.cos(t), { t: 0, y: 0 }, 10).y).toBeCloseTo(Math.sin(10), 7);
  });

  test('stops where y reaches a value', () => {
    const { t, y } = integrateOde((_, at) => at, { t: 0, y: 1 }, 10, fineOde, 2);
    expect(y).toBe(2);
    expect(t).toBeCloseTo(Math.LN2, 8);
  });

  test('a rate that runs to infinity is refused, not returned', () => {
    expect(() =>
      integrateOde((_, y) => y * y, { t: 0, y: 1 }, 2, {
        absolute: 1e-9,
        mostSteps: 5000,
        firstShare: 1 / 16,
      }),
    ).toThrow(expect.objectContaining({ code: 'numeric.blowsUp' }));
  });
});

describe('bracketedRoot', () => {
  test('finds a crossing to rounding', () => {
    expect(bracketedRoot((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 14);
    expect(bracketedRoot((x) => x, 0, 1)).toBe(0);
  });

  test('refuses a bracket without one', () => {
    expect(() => bracketedRoot((x) => x * x + 1, -1, 1)).toThrow(
      expect.objectContaining({ code: 'numeric.noRoot' }),
    );
  });
});

describe('boundedLeastSquares', () => {
  const times = Array.from({ length: 20 }, (_, i) => i / 4);
  const model = ([height, rate]: readonly number[]) => times.map((t) => height! * Math.exp(-rate! * t));
  const parameters = [
    { start: 1, low: 0, high: 10, probe: 1e-4 },
    { start: 0.1, low: 0, high: 5, probe: 1e-4 },
  ];

  test('finds a decay again', () => {
    const data = model([3, 0.7]);
    const { values, rms } = boundedLeastSquares(
      (tried) => model(tried).map((one, i) => one - data[i]!),
      parameters,
    );
    expect(values[0]).toBeCloseTo(3, 3);
    expect(values[1]).toBeCloseTo(0.7, 3);
    expect(rms).toBeLessThan(1e-3);
  });

  test('stays inside its bounds', () => {
    const data = model([30, 0.7]);
    const { values } = boundedLeastSquares(
      (tried) => model(tried).map((one, i) => one - data[i]!),
      parameters,
    );
    expect(values[0]).toBe(10);
  });
});
