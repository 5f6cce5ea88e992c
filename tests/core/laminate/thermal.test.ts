import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { typicalEpoxyCoat, withCoat } from '../../../src/core/laminate/coat';
import { laminateOf } from '../../../src/core/laminate/lamination';
import { isotropicElastic } from '../../../src/core/laminate/plyElastic';
import { residualStates } from '../../../src/core/laminate/plyStresses';
import { springInDeg } from '../../../src/core/laminate/springIn';
import { laminateExpansionPerK, thermalResponse } from '../../../src/core/laminate/thermalResponse';
import { twoLayerCurvaturePerM } from '../../../src/core/laminate/twoLayerStrip';
import { bowMm, warpOf } from '../../../src/core/laminate/warp';
import { Problem } from '../../../src/core/problem';
import { propertySeed } from '../../support/propertySeed';
import { arbitraryLayers, fabric, stackOf, unidirectional } from './arbitraryLaminate';

const responseOf = (layers: Parameters<typeof laminateOf>[0], change = -100) =>
  thermalResponse(laminateOf(layers), change);

describe(`curvature after cooling (seed ${propertySeed})`, () => {
  test('[0/90] of one unidirectional ply makes an even saddle, turned over when the plies change place', () => {
    const { curvaturePerM, warps } = responseOf(stackOf(unidirectional, 0, 90));
    const [x, y, xy] = curvaturePerM;
    expect(warps).toBe(true);
    expect(x).toBeCloseTo(-y, 9);
    expect(Math.abs(xy)).toBeLessThan(1e-9);
    expect(warpOf(curvaturePerM).shape).toBe('saddle');
    expect(responseOf(stackOf(unidirectional, 90, 0)).curvaturePerM[0]).toBeCloseTo(-x, 9);
  });

  test('[45/-45] only twists', () => {
    const { curvaturePerM } = responseOf(stackOf(unidirectional, 45, -45));
    expect(Math.abs(curvaturePerM[0])).toBeLessThan(1e-9);
    expect(Math.abs(curvaturePerM[2])).toBeGreaterThan(0.1);
  });

  test('four plies of one balanced fabric stay flat, whatever their B', () => {
    const laminate = laminateOf(stackOf(fabric, 0, 45, 0, 45));
    expect(Math.abs(laminate.bN[0][0])).toBeGreaterThan(1000);
    const { warps, curvaturePerM } = thermalResponse(laminate, -100);
    expect(warps).toBe(false);
    expect(curvaturePerM).toEqual([0, 0, 0]);
    expect(warpOf(curvaturePerM)).toMatchObject({ shape: 'flat', radiusMm: null });
  });

  test('layers of one expansion stay flat though MT about the mid-plane is not zero', () => {
    const { warps, momentN } = responseOf([
      { elastic: isotropicElastic(200, 0.3, 12e-6), angleDeg: 0, thicknessMm: 1 },
      { elastic: isotropicElastic(70, 0.3, 12e-6), angleDeg: 0, thicknessMm: 1 },
    ]);
    expect(Math.abs(momentN[0])).toBeGreaterThan(10);
    expect(warps).toBe(false);
  });

  test('layers with MT zero about the mid-plane warp all the same when their expansions differ', () => {
    const { warps, momentN, curvaturePerM } = responseOf([
      { elastic: isotropicElastic(200, 0.3, 10e-6), angleDeg: 0, thicknessMm: 1 },
      { elastic: isotropicElastic(100, 0.3, 20e-6), angleDeg: 0, thicknessMm: 1 },
    ]);
    expect(Math.abs(momentN[0])).toBeLessThan(1e-9);
    expect(warps).toBe(true);
    expect(Math.abs(curvaturePerM[0])).toBeGreaterThan(0.1);
  });

  test('any stack and its mirror image stay flat', () => {
    fc.assert(
      fc.property(arbitraryLayers, (layers) => {
        expect(responseOf([...layers, ...layers.toReversed()]).warps).toBe(false);
      }),
    );
  });

  test('turned over, a stack curls the other way; at twice the cooling, twice as much', () => {
    fc.assert(
      fc.property(arbitraryLayers, (layers) => {
        const once = responseOf(layers, -50).curvaturePerM;
        const over = responseOf(layers.toReversed(), -50).curvaturePerM;
        const twice = responseOf(layers, -100).curvaturePerM;
        const slack = 1e-8 * (1 + Math.hypot(...once));
        for (const r of [0, 1, 2] as const) {
          expect(Math.abs(once[r] + over[r])).toBeLessThan(slack);
          expect(Math.abs(twice[r] - 2 * once[r])).toBeLessThan(slack);
        }
      }),
    );
  });

  test('residual stresses balance: no force and no moment on the whole', () => {
    fc.assert(
      fc.property(arbitraryLayers, (layers) => {
        // In ply axes sums over plies mean nothing, so all plies lie at 0 here.
        const laminate = laminateOf(layers.map((layer) => ({ ...layer, angleDeg: 0 })));
        const states = residualStates(laminate, -100);
        const worst = Math.max(1e-3, ...states.flatMap((state) => state.stressMpa.map(Math.abs)));
        for (const r of [0, 1, 2] as const) {
          let forceNPerMm = 0;
          let momentN = 0;
          laminate.layers.forEach((layer, i) => {
            const low = states[2 * i]!.stressMpa[r];
            const high = states[2 * i + 1]!.stressMpa[r];
            const middle = (layer.lowMm + layer.highMm) / 2;
            forceNPerMm += ((low + high) / 2) * layer.thicknessMm;
            momentN +=
              ((low + high) / 2) * layer.thicknessMm * middle + ((high - low) * layer.thicknessMm ** 2) / 12;
          });
          expect(Math.abs(forceNPerMm)).toBeLessThan(1e-7 * worst * laminate.thicknessMm);
          expect(Math.abs(momentN)).toBeLessThan(1e-7 * worst * laminate.thicknessMm ** 2);
        }
      }),
    );
  });

  test('a laminate of one fabric expands as the fabric does', () => {
    const [x, y, xy] = laminateExpansionPerK(laminateOf(stackOf(fabric, 0, 45, 20)));
    expect(x).toBeCloseTo(3e-6, 15);
    expect(y).toBeCloseTo(3e-6, 15);
    expect(xy).toBeCloseTo(0, 15);
  });
});

describe('a coat on one face', () => {
  const coat = { ...typicalEpoxyCoat, thicknessMm: 0.15 };
  const plies = stackOf(fabric, 0, 0, 0);

  test('hollows the coated face on cooling; on the other face, the other way', () => {
    const show = responseOf(withCoat(plies, coat, 'show'), -60).curvaturePerM[0];
    const core = responseOf(withCoat(plies, coat, 'core'), -60).curvaturePerM[0];
    expect(show).toBeGreaterThan(0.1);
    expect(core).toBeCloseTo(-show, 9);
  });

  test('agrees with the two-layer strip for layers without lateral contraction', () => {
    const strip = { eGPa: 60, thicknessMm: 0.75, expansionPerK: 3e-6 };
    const skin = { eGPa: 3, thicknessMm: 0.15, expansionPerK: 60e-6 };
    const layers = withCoat(
      [{ elastic: isotropicElastic(60, 0, 3e-6), angleDeg: 0, thicknessMm: 0.75 }],
      { ...skin, nu: 0 },
      'core',
    );
    expect(responseOf(layers, -60).curvaturePerM[0]).toBeCloseTo(twoLayerCurvaturePerM(strip, skin, -60), 9);
  });
});

describe('warp', () => {
  test('principal curvatures of a pure twist lie at 45 degrees', () => {
    const warp = warpOf([0, 0, 0.4]);
    expect(warp.shape).toBe('saddle');
    expect(Math.abs(warp.strongestPerM)).toBeCloseTo(0.2, 12);
    expect(Math.abs(warp.directionDeg!)).toBeCloseTo(45, 9);
  });

  test('a cylinder about y, a bowl and its radius', () => {
    expect(warpOf([-0.5, 0, 0])).toMatchObject({ shape: 'cylinder', strongestPerM: -0.5, directionDeg: 0 });
    expect(warpOf([0.1, 0.5, 0])).toMatchObject({ shape: 'bowl', strongestPerM: 0.5, directionDeg: 90 });
    expect(warpOf([0.5, 0.5, 0])).toMatchObject({ shape: 'bowl', directionDeg: null, radiusMm: 2000 });
  });

  test('bow over 200 mm at 0.5 per meter is 2.5 mm, close to the arc of that radius', () => {
    expect(bowMm(-0.5, 200)).toBeCloseTo(2.5, 12);
    expect(bowMm(-0.5, 200)).toBeCloseTo(2000 * (1 - Math.cos(100 / 2000)), 2);
  });
});

describe('corners', () => {
  const corner = {
    arcAngleDeg: 90,
    expansionInPlanePerK: 3e-6,
    expansionThroughPerK: 50e-6,
    temperatureChangeK: -100,
    cureStrainInPlane: 0,
    cureStrainThrough: 0,
  };

  test('do not move when the wall expands alike both ways', () => {
    expect(springInDeg({ ...corner, expansionInPlanePerK: 50e-6 })).toBe(0);
  });

  test('close as an arc that strains freely: new angle = arc length over new radius', () => {
    fc.assert(
      fc.property(fc.double({ min: -200, max: 0, noNaN: true }), (temperatureChangeK) => {
        // Inner and outer arcs lengthen by the in-plane strain; the wall between them by the other.
        const [innerMm, outerMm] = [5, 6];
        const along = 1 + corner.expansionInPlanePerK * temperatureChangeK;
        const through = 1 + corner.expansionThroughPerK * temperatureChangeK;
        const angle = ((outerMm - innerMm) * along * 90) / ((outerMm - innerMm) * through);
        expect(springInDeg({ ...corner, temperatureChangeK })).toBeCloseTo(angle - 90, 9);
      }),
    );
  });
});

test('impossible numbers are refused with a sentence', () => {
  const laminate = laminateOf(stackOf(fabric, 0));
  expect(() => thermalResponse(laminate, Number.NaN)).toThrow(Problem);
  expect(() => bowMm(1, 0)).toThrow(Problem);
  expect(() =>
    twoLayerCurvaturePerM(
      { eGPa: 0, thicknessMm: 1, expansionPerK: 0 },
      { eGPa: 1, thicknessMm: 1, expansionPerK: 0 },
      10,
    ),
  ).toThrow(Problem);
  expect(() =>
    springInDeg({
      arcAngleDeg: 90,
      expansionInPlanePerK: 0,
      expansionThroughPerK: 0.1,
      temperatureChangeK: -100,
      cureStrainInPlane: 0,
      cureStrainThrough: 0,
    }),
  ).toThrow(Problem);
});
