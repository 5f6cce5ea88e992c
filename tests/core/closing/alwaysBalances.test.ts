/** The full balance ends for every mold that can be entered: named molds on which it once did not, and many random ones. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bedCurve } from '../../../src/core/closing/bedCurve';
import { placedClamps } from '../../../src/core/closing/clamps';
import { closingHistogram } from '../../../src/core/closing/closingHistogram';
import { closingSamples } from '../../../src/core/closing/closingSamples';
import { alignedBed, wovenBed } from '../../../src/core/closing/fiberBed';
import { tiltedBalance, type ClosingProblem } from '../../../src/core/closing/tiltedBalance';
import { measurePart } from '../../../src/core/mesh/measure';
import { demoParts } from '../../../src/workbook/demo/demoParts';
import { cup, histogramOf, plate } from '../../support/closingHands';
import { propertySeed } from '../../support/propertySeed';

/** Forces add up, limits are kept. Where clamps have gone slack altogether there is nothing to add up. */
function expectBalanced(problem: ClosingProblem): void {
  const solution = tiltedBalance(problem);
  const { outcome, clampForceN, laminateForceN, landForceN, resinForceN } = solution;
  expect(Number.isFinite(solution.standOffMm + solution.tiltURad + solution.tiltVRad)).toBe(true);
  if (outcome === 'tips' || outcome === 'nothing holds') return;
  const out = clampForceN - laminateForceN - landForceN - resinForceN;
  expect(Math.abs(out)).toBeLessThanOrEqual(1e-6 * clampForceN + 1e-6);
  expect(landForceN).toBeGreaterThanOrEqual(0);
  expect(resinForceN).toBeGreaterThanOrEqual(0);
  if (problem.lands !== null)
    expect(Math.min(...solution.cornerStandOffMm)).toBeGreaterThan(problem.lands.shimMm - 1e-9);
}

describe('ten plies of 544 g/m² on the demo, three groups of clamps round the rim, resin held in', () => {
  const { mesh, inputs } = demoParts()[0]!;
  const measurement = measurePart(mesh, inputs.part?.pull ?? [0, 0, 1]);
  const samples = closingHistogram(closingSamples(mesh, measurement), measurement.centerMm);
  const { halfSizeMm } = samples.frame;

  // The wall of 0.9 mm on which 9 and 11 clamps were once refused, when 7, 8, 10 and 12 to 14 were not.
  test.each([7, 8, 9, 10, 11, 12, 13, 14])('on a wall of 0.9 mm, a first group of %i clamps', (count) => {
    const drawnMm = Float64Array.from(samples.wallMm).toSorted()[samples.wallMm.length >> 1]!;
    const thicker = { ...samples, wallMm: samples.wallMm.map((wallMm) => wallMm + 0.9 - drawnMm) };
    const groups = [count, 8, 8].map((each) => ({ count: each, forceN: 150, rateNPerMm: 8 }));
    for (const sealedAtMm of [null, 5, 5.55])
      for (const stiffness of [1, 1.4])
        expectBalanced({
          samples: thicker,
          curve: bedCurve([{ bed: wovenBed, solidFiberMm: (10 * 0.544) / 1.77 }], stiffness),
          clamps: placedClamps(
            groups.map((group) => ({ ...group, atOpeningMm: 0, planMm: null })),
            halfSizeMm,
          ),
          lands: { outlineHalfMm: [halfSizeMm[0] + 15, halfSizeMm[1] + 15], shimMm: 0 },
          halfSizeMm,
          sealedAtMm,
        });
  });

  // On all three Newton's steps once went on for ever over the rounding of what the resin carries.
  test.each([
    {
      bed: wovenBed,
      stiffness: 1.4,
      sealedAtMm: 5,
      groups: [
        [18, 150, 8],
        [8, 150, 8],
        [8, 150, 8],
      ],
    },
    {
      bed: wovenBed,
      stiffness: 1,
      sealedAtMm: 5.55,
      groups: [
        [4, 500, 64],
        [14, 500, 0],
        [13, 100, 64],
      ],
    },
    {
      bed: alignedBed,
      stiffness: 1.4,
      sealedAtMm: 5.55,
      groups: [
        [7, 300, 8],
        [7, 200, 20],
        [14, 100, 0],
      ],
    },
  ] as const)('$groups (how many, N, N/mm)', ({ bed, stiffness, sealedAtMm, groups }) => {
    expectBalanced({
      samples,
      curve: bedCurve([{ bed, solidFiberMm: (10 * 0.544) / 1.77 }], stiffness),
      clamps: placedClamps(
        groups.map(([count, forceN, rateNPerMm]) => ({
          count,
          forceN,
          rateNPerMm,
          atOpeningMm: 0,
          planMm: null,
        })),
        halfSizeMm,
      ),
      lands: { outlineHalfMm: [halfSizeMm[0] + 15, halfSizeMm[1] + 15], shimMm: 0 },
      halfSizeMm,
      sealedAtMm,
    });
  });
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyGroup = fc.record({
  count: fc.integer({ min: 1, max: 15 }),
  forceN: number(0, 8).map(Math.exp),
  atOpeningMm: fc.oneof(fc.constant(0), number(-3, 30)),
  rateNPerMm: fc.oneof(fc.constant(0), number(-2, 9).map(Math.exp)),
  /** Shares of half the plan: somewhat outside of it too. */
  place: fc.option(fc.tuple(number(-1.3, 1.3), number(-1.3, 1.3))),
});
const anyMold = fc
  .record({
    sizeMm: fc.tuple(number(30, 200), number(20, 150)),
    cells: fc.integer({ min: 2, max: 9 }),
    wallMm: number(0.3, 2),
    grade: fc.tuple(number(-0.4, 0.4), number(-0.4, 0.4)),
    cup: fc.option(fc.record({ depthMm: number(5, 60), draftDeg: number(0.2, 30) })),
    binned: fc.boolean(),
    fiberMm: number(-3, 1.6).map(Math.exp),
    aligned: fc.boolean(),
    stiffness: number(0.3, 2),
    groups: fc.array(anyGroup, { minLength: 1, maxLength: 3 }),
    lands: fc.option(fc.record({ widthMm: number(5, 30), shimMm: fc.oneof(fc.constant(0), number(-1, 3)) })),
    sealedAtMm: fc.option(number(0.1, 6)),
  })
  .map((mold): ClosingProblem => {
    const [lengthMm, widthMm] = mold.sizeMm;
    const halfSizeMm = [lengthMm / 2, widthMm / 2] as const;
    const [gradeU, gradeV] = mold.grade;
    const face =
      mold.cup === null
        ? plate(lengthMm, widthMm, mold.cells, (u, v) =>
            Math.max(0.05, mold.wallMm + gradeU * u + gradeV * v),
          )
        : cup(
            ...([lengthMm, widthMm, mold.cup.depthMm, mold.cup.draftDeg, mold.cells] as const),
            ...([mold.wallMm, Math.max(0.05, mold.wallMm + gradeU)] as const),
          );
    return {
      samples: mold.binned ? histogramOf(face) : face.samples,
      curve: bedCurve(
        [{ bed: mold.aligned ? alignedBed : wovenBed, solidFiberMm: mold.fiberMm }],
        mold.stiffness,
      ),
      clamps: placedClamps(
        mold.groups.map(({ place, ...group }) => ({
          ...group,
          planMm: place === null ? null : [place[0] * halfSizeMm[0], place[1] * halfSizeMm[1]],
        })),
        halfSizeMm,
      ),
      lands:
        mold.lands === null
          ? null
          : {
              outlineHalfMm: [halfSizeMm[0] + mold.lands.widthMm, halfSizeMm[1] + mold.lands.widthMm],
              shimMm: mold.lands.shimMm,
            },
      halfSizeMm,
      sealedAtMm: mold.sealedAtMm,
    };
  });

test(`any mold comes to rest or tips (seed ${propertySeed})`, () => {
  fc.assert(fc.property(anyMold, expectBalanced), { seed: propertySeed, numRuns: 120 });
});
