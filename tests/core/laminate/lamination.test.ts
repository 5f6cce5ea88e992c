import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { effectiveModuli } from '../../../src/core/laminate/effectiveModuli';
import { laminateOf } from '../../../src/core/laminate/lamination';
import { isotropicElastic } from '../../../src/core/laminate/plyElastic';
import {
  bendingStiffnessNmm,
  compareWithPlates,
  plateStiffnessNmm,
} from '../../../src/core/laminate/referencePlates';
import { stackChecks } from '../../../src/core/laminate/stackChecks';
import {
  matrix3,
  timesMatrix,
  timesVector,
  transposed,
  vector3,
  type Matrix3,
  type Vector3,
} from '../../../src/core/numeric/matrix3';
import { Problem } from '../../../src/core/problem';
import { propertySeed } from '../../support/propertySeed';
import { arbitraryLayers, fabric, stackOf, unidirectional } from './arbitraryLaminate';

const largest = (matrix: Matrix3) => Math.max(...matrix.flat().map(Math.abs));

function expectAlike(got: Matrix3, wanted: Matrix3, scale: number): void {
  got.flat().forEach((value, i) => {
    expect(Math.abs(value - wanted.flat()[i]!)).toBeLessThanOrEqual(1e-9 * scale);
  });
}

type Axis = 0 | 1;

const axes = [0, 1] as const;
/** Which two axes each entry x, y, xy of a plate's stiffness stands for. */
const axesOf = [
  [0, 0],
  [1, 1],
  [0, 1],
] as const;
const entryOf = (one: Axis, other: Axis) => (one === other ? one : 2);

/** Stiffness seen from axes turned by `angleDeg`, by the tensor's own components (not by the code under test). */
function tensorTurned(stiffness: Matrix3, angleDeg: number): Matrix3 {
  const c = Math.cos((angleDeg * Math.PI) / 180);
  const s = Math.sin((angleDeg * Math.PI) / 180);
  const turn = [
    [c, s],
    [-s, c],
  ] as const;
  return matrix3((row, column) => {
    const [i, j] = axesOf[row];
    const [k, l] = axesOf[column];
    let sum = 0;
    for (const p of axes)
      for (const q of axes)
        for (const r of axes)
          for (const t of axes)
            sum +=
              turn[i][p] * turn[j][q] * turn[k][r] * turn[l][t] * stiffness[entryOf(p, q)][entryOf(r, t)];
    return sum;
  });
}

/** Left vector times matrix times right vector. */
function product(left: Vector3, matrix: Matrix3, right: Vector3): number {
  const image = timesVector(matrix, right);
  return left[0] * image[0] + left[1] * image[1] + left[2] * image[2];
}

const checksOf = (...anglesDeg: number[]) => stackChecks(laminateOf(stackOf(unidirectional, ...anglesDeg)));

describe(`stiffness of a stack (seed ${propertySeed})`, () => {
  test('turning every ply turns A, B and D as tensors', () => {
    fc.assert(
      fc.property(arbitraryLayers, fc.double({ min: -180, max: 180, noNaN: true }), (layers, turnDeg) => {
        const still = laminateOf(layers);
        const turned = laminateOf(layers.map((layer) => ({ ...layer, angleDeg: layer.angleDeg + turnDeg })));
        const h = still.thicknessMm;
        const scale = largest(still.aNPerMm);
        expectAlike(turned.aNPerMm, tensorTurned(still.aNPerMm, -turnDeg), scale);
        expectAlike(turned.bN, tensorTurned(still.bN, -turnDeg), scale * h);
        expectAlike(turned.dNmm, tensorTurned(still.dNmm, -turnDeg), scale * h * h);
      }),
    );
  });

  test('a stack and its mirror image have no coupling, and both kinds of modulus agree', () => {
    fc.assert(
      fc.property(arbitraryLayers, (layers) => {
        const laminate = laminateOf([...layers, ...layers.toReversed()]);
        const slack = 1e-10 * largest(laminate.aNPerMm) * laminate.thicknessMm;
        expect(largest(laminate.bN)).toBeLessThanOrEqual(slack);
        expect(stackChecks(laminate).symmetric).toBe(true);
        const { heldFlat, freeToCurl } = effectiveModuli(laminate);
        expect(freeToCurl.exGPa / heldFlat.exGPa).toBeCloseTo(1, 8);
        expect(freeToCurl.gxyGPa / heldFlat.gxyGPa).toBeCloseTo(1, 8);
      }),
    );
  });

  test('any strain and curvature need work', () => {
    const entry = fc.double({ min: -1, max: 1, noNaN: true });
    const vector = fc.tuple(entry, entry, entry);
    fc.assert(
      fc.property(arbitraryLayers, vector, vector, (layers, strain, bend) => {
        fc.pre(Math.hypot(...strain, ...bend) > 1e-3);
        const { aNPerMm, bN, dNmm, thicknessMm } = laminateOf(layers);
        const curvature = vector3((r) => bend[r] / thicknessMm);
        const work =
          product(strain, aNPerMm, strain) +
          2 * product(strain, bN, curvature) +
          product(curvature, dNmm, curvature);
        expect(work).toBeGreaterThan(0);
      }),
    );
  });

  test('the compliance undoes the stiffness, and its bending part undoes D − B A⁻¹ B', () => {
    fc.assert(
      fc.property(arbitraryLayers, (layers) => {
        const { aNPerMm, bN, freeBendingNmm, compliance, thicknessMm } = laminateOf(layers);
        const unit: Matrix3 = [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ];
        const bending = timesMatrix(freeBendingNmm, compliance.dPerNmm);
        bending.flat().forEach((value, i) => expect(value).toBeCloseTo(unit.flat()[i]!, 7));
        const first = timesMatrix(aNPerMm, compliance.aMmPerN);
        const second = timesMatrix(bN, transposed(compliance.bPerN));
        first.flat().forEach((value, i) => expect(value + second.flat()[i]!).toBeCloseTo(unit.flat()[i]!, 7));
        expect(thicknessMm).toBeCloseTo(
          layers.reduce((sum, layer) => sum + layer.thicknessMm, 0),
          12,
        );
      }),
    );
  });

  test('cutting a ply into two of the same angle changes nothing', () => {
    fc.assert(
      fc.property(arbitraryLayers, (layers) => {
        const whole = laminateOf(layers);
        const halves = laminateOf(
          layers.flatMap((layer) => {
            const half = { ...layer, thicknessMm: layer.thicknessMm / 2 };
            return [half, half];
          }),
        );
        expectAlike(halves.dNmm, whole.dNmm, largest(whole.dNmm));
        expectAlike(halves.bN, whole.bN, largest(whole.aNPerMm) * whole.thicknessMm);
      }),
    );
  });
});

describe('effective moduli', () => {
  test('one isotropic layer gives its own constants back, in tension and in bending', () => {
    const elastic = isotropicElastic(70, 0.33, 23e-6);
    const { heldFlat, freeToCurl, flexural } = effectiveModuli(
      laminateOf([{ elastic, angleDeg: 17, thicknessMm: 1.3 }]),
    );
    for (const moduli of [heldFlat, freeToCurl, flexural]) {
      expect(moduli.exGPa).toBeCloseTo(70, 9);
      expect(moduli.eyGPa).toBeCloseTo(70, 9);
      expect(moduli.gxyGPa).toBeCloseTo(70 / 2.66, 9);
      expect(moduli.nuXy).toBeCloseTo(0.33, 9);
      expect(moduli.nuYx).toBeCloseTo(0.33, 9);
    }
  });

  test('a strip free to curl pulls out more easily than one held flat', () => {
    const { heldFlat, freeToCurl } = effectiveModuli(laminateOf(stackOf(unidirectional, 0, 90)));
    expect(freeToCurl.exGPa).toBeLessThan(0.8 * heldFlat.exGPa);
  });

  test("both Poisson's ratios belong to one compliance", () => {
    const { heldFlat } = effectiveModuli(laminateOf(stackOf(unidirectional, 0, 0, 90, 30)));
    expect(heldFlat.nuXy / heldFlat.exGPa).toBeCloseTo(heldFlat.nuYx / heldFlat.eyGPa, 12);
  });
});

describe('against plates', () => {
  test('a steel laminate is as stiff as steel of its own thickness', () => {
    const laminate = laminateOf([
      { elastic: isotropicElastic(205, 0.29, 0), angleDeg: 0, thicknessMm: 0.4 },
      { elastic: isotropicElastic(205, 0.29, 0), angleDeg: 0, thicknessMm: 0.6 },
    ]);
    const { xNmm, yNmm } = bendingStiffnessNmm(laminate);
    expect(xNmm).toBeCloseTo(plateStiffnessNmm(205, 0.29, 1), 6);
    expect(yNmm).toBeCloseTo(xNmm, 6);
    const [steel, aluminum, printed] = compareWithPlates(xNmm, 1);
    expect(steel?.stiffnessRatio).toBeCloseTo(1, 9);
    expect(steel?.equalThicknessMm).toBeCloseTo(1, 9);
    expect(aluminum!.stiffnessRatio).toBeGreaterThan(2);
    expect(printed!.equalThicknessMm).toBeGreaterThan(4);
  });

  test('twice the reference thickness is eight times the stiffness', () => {
    const [one] = compareWithPlates(1000, 1);
    const [two] = compareWithPlates(1000, 2);
    expect(one!.stiffnessRatio / two!.stiffnessRatio).toBeCloseTo(8, 9);
  });
});

describe('checks of the stack', () => {
  test('symmetric, balanced, quasi-isotropic', () => {
    expect(checksOf(0, 90, 90, 0)).toEqual({ symmetric: true, balanced: true, quasiIsotropic: false });
    expect(checksOf(45, -45)).toEqual({ symmetric: false, balanced: true, quasiIsotropic: false });
    expect(checksOf(0, 30, 0)).toEqual({ symmetric: true, balanced: false, quasiIsotropic: false });
    expect(checksOf(0, 45, -45, 90)).toEqual({ symmetric: false, balanced: true, quasiIsotropic: true });
    expect(checksOf(0, 60, -60)).toEqual({ symmetric: false, balanced: true, quasiIsotropic: true });
  });

  test('0 and 90 of one balanced fabric are alike, 0 and 45 together are quasi-isotropic', () => {
    expect(stackChecks(laminateOf(stackOf(fabric, 0, 90))).symmetric).toBe(true);
    expect(stackChecks(laminateOf(stackOf(fabric, 0, 45)))).toEqual({
      symmetric: false,
      balanced: true,
      quasiIsotropic: true,
    });
  });
});

describe('bad layers', () => {
  const layer = { elastic: fabric, angleDeg: 0, thicknessMm: 0.25 };
  test.each([
    ['no plies', []],
    ['no thickness', [{ ...layer, thicknessMm: 0 }]],
    ['an angle that is no number', [{ ...layer, angleDeg: Number.NaN }]],
    ['a negative modulus', [{ ...layer, elastic: { ...fabric, e1GPa: -62 } }]],
    ["an impossible Poisson's ratio", [{ ...layer, elastic: { ...fabric, nu12: 1 } }]],
    ['an expansion that is no number', [{ ...layer, elastic: { ...fabric, expansion1PerK: Number.NaN } }]],
  ])('%s', (_what, layers) => {
    expect(() => laminateOf(layers)).toThrow(Problem);
  });
});
