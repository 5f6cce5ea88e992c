/** The grid keeps what the figures are made from. */
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { figuresAgree, fidelityLimits, shapeFigures } from '../../../src/core/mesh/shapeFigures';
import { displacementLimit, gridPosition, quantize } from '../../../src/core/mesh/quantize';
import type { IndexedMesh } from '../../../src/core/mesh/types';
import { box, domeShell, icosphere, mapVertices, tray } from '../../support/meshes';

function longestSide({ positions }: IndexedMesh): number {
  const sides = [0, 1, 2].map((axis) => {
    const values = positions.filter((_, i) => i % 3 === axis);
    return Math.max(...values) - Math.min(...values);
  });
  return Math.max(...sides);
}

/** The mesh, turned so that nothing is square to the axes, moved and scaled. */
function turned(mesh: IndexedMesh, angle: number, scale: number, shift: number): IndexedMesh {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return mapVertices(mesh, ([x, y, z]) => {
    const [x1, y1] = [cos * x - sin * y, sin * x + cos * y];
    return [scale * x1 + shift, scale * (cos * y1 - sin * z) + shift, scale * (sin * y1 + cos * z) - shift];
  });
}

test('every vertex stays within 1 micrometer on 100 mm, and the reported error is the largest', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(icosphere(50, 2), tray([70, 41, 12.5], 0.9, 3), domeShell(6, 24)),
      fc.double({ min: 0, max: 3, noNaN: true }),
      fc.constantFrom(0.001, 0.0393700787, 1, 25.4, 1000),
      fc.constantFrom(0, 12.345, -40_000),
      (shape, angle, scale, shift) => {
        const mesh = turned(shape, angle, scale, shift);
        const { grid, steps, errorFileUnits } = quantize(mesh);
        let largest = 0;
        for (let v = 0; v < steps.length; v += 3) {
          const away = [0, 1, 2].map(
            (axis) =>
              gridPosition(grid, axis, steps[v + axis] as number) - (mesh.positions[v + axis] as number),
          );
          largest = Math.max(largest, Math.hypot(...away));
        }
        expect(errorFileUnits).toBeCloseTo(largest, 15);
        expect(largest).toBeLessThan(displacementLimit * longestSide(mesh));
        expect(Math.min(...steps)).toBe(0);
      },
    ),
    { numRuns: 40 },
  );
});

test('volume, area and draft shares stay within the limits', () => {
  for (const mesh of [
    tray([70, 41, 12.5], 0.9, 3),
    turned(tray([70, 41, 12.5], 0.9, 3), 0.4, 1, 3.3),
    domeShell(20, 80),
    icosphere(33.3, 4),
  ]) {
    const { grid, steps } = quantize(mesh);
    const wanted = shapeFigures(mesh.positions, mesh.facets, 1);
    const reached = shapeFigures(steps, mesh.facets, grid.stepsPerUnit);
    expect(Math.abs(reached.volume / wanted.volume - 1)).toBeLessThanOrEqual(fidelityLimits.sum);
    expect(Math.abs(reached.area / wanted.area - 1)).toBeLessThanOrEqual(fidelityLimits.sum);
    expect(figuresAgree(wanted, reached, longestSide(mesh))).toBe(true);
  }
});

test('decimal dimensions stay exactly as drawn', () => {
  const { grid, steps, errorFileUnits } = quantize(box([-12.345, 0.001, 3], [57.655, 40.9, 12.5]));
  expect(errorFileUnits).toBe(0);
  const onGrid = Array.from(steps, (count, i) => gridPosition(grid, i % 3, count));
  expect(new Set(onGrid)).toEqual(new Set([-12.345, 57.655, 0.001, 40.9, 3, 12.5]));
});

test('a sliver makes the grid finer, so that it does not collapse', () => {
  const positions = Float64Array.from([0, 0, 0, 100, 0, 0, 100, 0.0001, 0, 0, 100, 0]);
  const mesh = { positions, facets: Uint32Array.from([0, 1, 2, 0, 2, 3]) };
  const { grid, steps } = quantize(mesh);
  expect(shapeFigures(steps, mesh.facets, grid.stepsPerUnit).collapsedFacets).toBe(0);
  expect(grid.stepsPerUnit).toBeGreaterThan(5000);
});

test('where nothing is fine enough the finest grid is taken and its error told', () => {
  const positions = Float64Array.from([0, 0, 0, 100, 0, 0, 100, 1e-9, 0, 0, 100, 0]);
  const { bits, errorFileUnits, steps } = quantize({
    positions,
    facets: Uint32Array.from([0, 1, 2, 0, 2, 3]),
  });
  expect(bits).toBeGreaterThanOrEqual(23);
  expect(bits).toBeLessThanOrEqual(24);
  expect(errorFileUnits).toBeLessThan(1e-5);
  expect(steps[3 * 1 + 1]).toBe(steps[3 * 2 + 1]);
});

test('refuses what has no size', () => {
  const facets = Uint32Array.from([0, 1, 2]);
  expect(() => quantize({ positions: new Float64Array(9), facets })).toThrow('one point');
  expect(() => quantize({ positions: new Float64Array(9).fill(NaN), facets })).toThrow('not a number');
  expect(() => quantize({ positions: new Float64Array(0), facets: new Uint32Array(0) })).toThrow(
    'no triangles',
  );
});

test('a class of draft that moves is noticed', () => {
  const flat = tray([70, 41, 12.5], 0.9, 0);
  const leaning = tray([70, 41, 12.5], 0.9, 2);
  const wanted = shapeFigures(flat.positions, flat.facets, 1);
  const other = shapeFigures(leaning.positions, leaning.facets, 1);
  expect(figuresAgree(wanted, { ...wanted, draftArea: other.draftArea }, 70)).toBe(false);
  expect(figuresAgree(wanted, { ...wanted, volume: wanted.volume * (1 + 3e-6) }, 70)).toBe(false);
  expect(figuresAgree(wanted, { ...wanted, area: wanted.area * (1 - 3e-6) }, 70)).toBe(false);
  expect(figuresAgree(wanted, { ...wanted, collapsedFacets: 1 }, 70)).toBe(false);
  expect(figuresAgree(wanted, wanted, 70)).toBe(true);
});
