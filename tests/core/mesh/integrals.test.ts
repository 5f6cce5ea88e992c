import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { integrate } from '../../../src/core/mesh/integrals';
import { box, hollowBox, insideOut, mapVertices, tray, trayVolumeMm3 } from '../../support/meshes';
import { propertySeed } from '../../support/propertySeed';
import { rigidMotion } from '../../support/randomMeshes';

/** Integral of x^(n - 1) from low to high. */
const power = (low: number, high: number, n: number) => (high ** n - low ** n) / n;

describe(`integrals (seed ${propertySeed})`, () => {
  it('volume and area do not change when the part is moved or turned, and the centroid goes along', () => {
    const mesh = tray([60, 40, 20], 2, 4);
    const still = integrate(mesh);
    fc.assert(
      fc.property(rigidMotion, (move) => {
        const moved = integrate(mapVertices(mesh, move));
        expect(Math.abs(moved.volume / still.volume - 1)).toBeLessThan(1e-12);
        expect(Math.abs(moved.area / still.area - 1)).toBeLessThan(1e-12);
        const pairs = [
          [still.centroid, moved.centroid],
          [still.surfaceCentroid, moved.surfaceCentroid],
        ] as const;
        for (const [before, after] of pairs) {
          move(before!).forEach((wanted, axis) =>
            expect(Math.abs(after![axis]! - wanted)).toBeLessThan(1e-9),
          );
        }
      }),
    );
  });

  it('stays accurate a kilometer from the origin', () => {
    const far = mapVertices(tray([60, 40, 20], 2), ([x, y, z]) => [x + 2 ** 20, y - 2 ** 20, z + 2 ** 20]);
    expect(integrate(far).volume).toBe(trayVolumeMm3([60, 40, 20], 2));
  });

  it('gives a void its sign and a subset its own figures', () => {
    const mesh = hollowBox([30, 30, 30], 2);
    const second = Uint32Array.from({ length: 12 }, (_, i) => 12 + i);
    expect(integrate(mesh).volume).toBe(9424);
    expect(integrate(mesh, second)).toMatchObject({
      volume: -17576,
      boxMin: [2, 2, 2],
      boxMax: [28, 28, 28],
    });
    expect(integrate(insideOut(mesh)).volume).toBe(-9424);
  });

  it('moves second moments to the origin of the mesh', () => {
    const { secondMoments } = integrate(box([1, 2, 3], [3, 5, 7]));
    expect(secondMoments.xx).toBeCloseTo(power(1, 3, 3) * 3 * 4, 9);
    expect(secondMoments.xy).toBeCloseTo(power(1, 3, 2) * power(2, 5, 2) * 4, 9);
    expect(secondMoments.yz).toBeCloseTo(2 * power(2, 5, 2) * power(3, 7, 2), 9);
    expect(secondMoments.zx).toBeCloseTo(power(1, 3, 2) * 3 * power(3, 7, 2), 9);
  });

  it('has no centroid and no NaN for nothing', () => {
    const nothing = integrate({ positions: new Float64Array(0), facets: new Uint32Array(0) });
    expect(nothing).toMatchObject({ volume: 0, area: 0, centroid: null, surfaceCentroid: null });
    expect(nothing.boxMin).toEqual([0, 0, 0]);
  });
});
