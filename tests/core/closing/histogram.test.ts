/** The bins against every facet by itself. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bedCurve } from '../../../src/core/closing/bedCurve';
import { classShares, type ClassLimits, type ClassShares } from '../../../src/core/closing/classes';
import { closingHistogram, mostBins } from '../../../src/core/closing/closingHistogram';
import { wovenBed } from '../../../src/core/closing/fiberBed';
import { gapMm, tiltedBalance } from '../../../src/core/closing/tiltedBalance';
import {
  classLimits,
  cup,
  handFace,
  handFrame,
  histogramOf,
  plate,
  type HandPlace,
} from '../../support/closingHands';
import { propertySeed } from '../../support/propertySeed';

const curve = bedCurve([{ bed: wovenBed, solidFiberMm: 0.6 / 1.77 }]);
const limits = classLimits(curve, 0.7011, 0.9, 0.005);

interface Dome {
  readonly wallMm: number;
  readonly taper: number;
  readonly noise: number;
  readonly steep: number;
}

/** A dome that steepens toward its rim; its wall drifts across and scatters from place to place. */
function dome({ wallMm, taper, noise, steep }: Dome, cells: number) {
  const places: HandPlace[] = [];
  let turn = 1;
  for (let i = 0; i < cells; i++) {
    for (let j = 0; j < cells; j++) {
      const u = (2 * i + 1) / cells - 1;
      const v = (2 * j + 1) / cells - 1;
      turn = (turn * 16807) % 2147483647;
      const scatter = turn / 2147483647 - 0.5;
      const slopeU = steep * u ** 3;
      const slopeV = steep * v ** 3;
      const length = Math.hypot(slopeU, slopeV, 1);
      places.push({
        areaMm2: (6000 * length) / cells ** 2,
        wallMm: wallMm * (1 + taper * (u + 0.37 * v) + noise * scatter),
        normal: [slopeU / length, slopeV / length, 1 / length],
        at: [50 * u, 30 * v, 20 - 10 * (u ** 4 + v ** 4)],
      });
    }
  }
  return handFace(handFrame(100, 60, 20), places);
}

const movedLimits = (factor: number): ClassLimits => ({
  chokedUnderMm: limits.chokedUnderMm * factor,
  packedUpToMm: limits.packedUpToMm * factor,
  lightUpToMm: limits.lightUpToMm * factor,
});

/** Shares of choked, of packed and tighter, of light and tighter. */
const upToEachClass = ({ choked, packed, light }: ClassShares) => [
  choked,
  choked + packed,
  choked + packed + light,
];

const near = (a: number, b: number, scale: number, what: string) =>
  expect(Math.abs(a - b) / scale, what).toBeLessThanOrEqual(0.002);

describe(`bins and facets agree within 0.2 % (seed ${propertySeed})`, () => {
  test('the gap of every facet, the forces and the shares of drifting, scattered, steepening faces', () => {
    const faces = fc.record({
      wallMm: fc.double({ min: 0.45, max: 0.8, noNaN: true }),
      taper: fc.double({ min: -0.06, max: 0.06, noNaN: true }),
      noise: fc.double({ min: 0, max: 0.05, noNaN: true }),
      steep: fc.double({ min: 0, max: 8, noNaN: true }),
    });
    const place = fc.tuple(
      fc.double({ min: -8, max: 8, noNaN: true }),
      fc.double({ min: -4, max: 4, noNaN: true }),
    );
    fc.assert(
      fc.property(faces, fc.double({ min: 200, max: 4000, noNaN: true }), place, (face, forceN, at) => {
        const whole = dome(face, 150);
        const bins = histogramOf(whole);
        expect(bins.areaMm2.length).toBeLessThanOrEqual(mostBins);
        const solve = (samples: typeof bins | typeof whole.samples) => {
          const solution = tiltedBalance({
            samples,
            curve,
            clamps: [{ forceN, atOpeningMm: 0, rateNPerMm: 8, planMm: at }],
            lands: { outlineHalfMm: [60, 40], shimMm: 0 },
            halfSizeMm: [50, 30],
            sealedAtMm: null,
          });
          return { solution, shares: classShares(samples, solution, limits) };
        };
        const one = solve(whole.samples);
        const other = solve(bins);
        near(
          other.solution.laminateForceN,
          one.solution.laminateForceN,
          one.solution.clampForceN,
          'laminate',
        );
        near(other.solution.landForceN, one.solution.landForceN, one.solution.clampForceN, 'lands');
        for (let facet = 0; facet < whole.samples.areaMm2.length; facet++) {
          const gap = gapMm(whole.samples, one.solution, facet);
          const apart = Math.abs(gapMm(whole.samples, other.solution, facet) / gap - 1);
          if (apart > 0.002) throw new Error(`gap of facet ${facet} is ${apart} off`);
        }
        // A share may change by what a gap 0.2 % off could change it, and 0.2 % of the area.
        const [tighter, wider] = [1 - 0.002, 1 + 0.002].map((factor) =>
          upToEachClass(classShares(whole.samples, one.solution, movedLimits(factor))),
        );
        for (const [order, share] of upToEachClass(other.shares).entries()) {
          expect(share).toBeGreaterThanOrEqual(tighter![order]! - 0.002);
          expect(share).toBeLessThanOrEqual(wider![order]! + 0.002);
        }
      }),
      // Every run solves over 22 500 facets; a failure is told as it is.
      { numRuns: 20, endOnFailure: true },
    );
  }, 60_000);
});

const sum = (areas: Float32Array | Float64Array, values: Float32Array | Float64Array) =>
  [...areas].reduce((total, area, i) => total + area * values[i]!, 0);

test('the area and the means are those of the facets', () => {
  const face = cup(100, 60, 20, 3, 20, 0.7, 0.6);
  const bins = histogramOf(face, 64);
  for (const name of ['wallMm', 'pullCosine', 'armUMm', 'armVMm'] as const) {
    const wanted = sum(face.samples.areaMm2, face.samples[name]);
    expect(sum(bins.areaMm2, bins[name])).toBeCloseTo(wanted, 6);
  }
  expect(bins.areaMm2.length).toBeLessThanOrEqual(64);
});

test('facets without area take no part; no facets make no bins', () => {
  const face = plate(100, 60, 4, () => 0.7);
  const areaMm2 = face.samples.areaMm2.slice().fill(0, 1);
  expect(closingHistogram({ ...face.samples, areaMm2 }, face.centerMm).areaMm2.length).toBe(1);
  const none = areaMm2.slice().fill(0);
  expect(closingHistogram({ ...face.samples, areaMm2: none }, face.centerMm).areaMm2.length).toBe(0);
});

const cupOf = (cells: number) =>
  tiltedBalance({
    samples: histogramOf(cup(100, 60, 20, 5, cells, 0.6, 0.55)),
    curve,
    clamps: [{ forceN: 900, atOpeningMm: 0, rateNPerMm: 8, planMm: [6, -3] }],
    lands: { outlineHalfMm: [60, 40], shimMm: 0 },
    halfSizeMm: [50, 30],
    sealedAtMm: null,
  });

test('the answer does not depend on the size of the triangles', () => {
  const [coarse, fine] = [cupOf(40), cupOf(120)];
  expect(Math.abs(coarse.standOffMm - fine.standOffMm)).toBeLessThan(0.002 * 0.6);
  expect(Math.abs(coarse.landForceN - fine.landForceN)).toBeLessThan(0.002 * 900);
});
