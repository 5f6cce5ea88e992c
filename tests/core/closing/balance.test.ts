/** Hand cases with closed answers, and what must hold for every mold. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bedForceN, translationBalance } from '../../../src/core/closing/balance';
import { bedCurve, gapAtPressure, pressureAt } from '../../../src/core/closing/bedCurve';
import { placedClamps, totalClampForceN } from '../../../src/core/closing/clamps';
import { classShares } from '../../../src/core/closing/classes';
import type { ClosingSamples } from '../../../src/core/closing/closingTypes';
import { wovenBed } from '../../../src/core/closing/fiberBed';
import { gapMm, tiltedBalance, type ClosingProblem } from '../../../src/core/closing/tiltedBalance';
import { classLimits, cup, handFace, handFrame, plate } from '../../support/closingHands';
import { propertySeed } from '../../support/propertySeed';

/** Three plies of 200 g/m². */
const solidFiberMm = 0.6 / 1.77;
const curve = bedCurve([{ bed: wovenBed, solidFiberMm }]);

interface Choices {
  readonly forceN: number;
  readonly at?: readonly [number, number];
  readonly rateNPerMm?: number;
  readonly landsAtMm?: number | null;
  readonly halfSizeMm?: readonly [number, number];
  readonly sealedAtMm?: number | null;
}

function problem(samples: ClosingSamples, choices: Choices): ClosingProblem {
  const { forceN, at = [0, 0], rateNPerMm = 0, landsAtMm = 0, halfSizeMm = [50, 30] } = choices;
  return {
    samples,
    curve,
    clamps: [{ forceN, atOpeningMm: 0, rateNPerMm, planMm: at }],
    lands:
      landsAtMm === null
        ? null
        : { outlineHalfMm: [halfSizeMm[0] + 10, halfSizeMm[1] + 10], shimMm: landsAtMm },
    halfSizeMm,
    sealedAtMm: choices.sealedAtMm ?? null,
  };
}

describe('flat plate of one wall, 100 × 60 mm', () => {
  test('stands off by the inverse of the bed curve', () => {
    const { samples } = plate(100, 60, 12, () => 0.55);
    const solution = tiltedBalance(problem(samples, { forceN: 1500 }));
    expect(solution.outcome).toBe('stands off');
    expect(0.55 + solution.standOffMm).toBeCloseTo(gapAtPressure(curve, 1500 / 6000), 6);
    expect(solution.landForceN).toBe(0);
  });

  test('shuts on the lands, which carry the rest', () => {
    const { samples } = plate(100, 60, 12, () => 0.61);
    const solution = tiltedBalance(problem(samples, { forceN: 1500 }));
    expect(solution.outcome).toBe('shut');
    expect(solution.standOffMm).toBe(0);
    expect(solution.landForceN).toBeCloseTo(1500 - 6000 * pressureAt(curve, Math.fround(0.61)), 3);
  });

  test('with a bare power law, walls of 0.59, 0.60 and 0.61 mm leave 0, 306 and 593 N on the lands', () => {
    // Worked out elsewhere by two methods with a = 0.2717, b = 0.06 and no unloaded fraction to speak of.
    const bare = bedCurve([{ bed: { ...wovenBed, unloadedFraction: 0.2 }, solidFiberMm }]);
    const landForceN = (wallMm: number) =>
      tiltedBalance({ ...problem(plate(100, 60, 12, () => wallMm).samples, { forceN: 1500 }), curve: bare })
        .landForceN;
    expect(landForceN(0.59)).toBe(0);
    expect(Math.abs(landForceN(0.6) - 306)).toBeLessThan(4);
    expect(Math.abs(landForceN(0.61) - 593)).toBeLessThan(4);
  });

  test('is shut and unloaded when the wall is wider than anything the bed reaches', () => {
    const solution = tiltedBalance(problem(plate(100, 60, 12, () => 1).samples, { forceN: 1500 }));
    expect(solution.outcome).toBe('shut unloaded');
    expect(solution.landForceN).toBeCloseTo(1500, 6);
  });

  test('without lands it closes past its drawn place, and nothing holds it where no wall looks along the pull', () => {
    const solution = tiltedBalance(
      problem(plate(100, 60, 12, () => 1).samples, { forceN: 1500, landsAtMm: null }),
    );
    expect(1 + solution.standOffMm).toBeCloseTo(gapAtPressure(curve, 0.25), 6);
    const upright = handFace(handFrame(100, 60, 20), [
      { areaMm2: 500, wallMm: 0.6, normal: [1, 0, 0], at: [50, 0, 10] },
    ]);
    expect(tiltedBalance(problem(upright.samples, { forceN: 100, landsAtMm: null })).outcome).toBe(
      'nothing holds',
    );
  });

  test('a shim holds it open by itself', () => {
    const solution = tiltedBalance(
      problem(plate(100, 60, 12, () => 0.61).samples, { forceN: 1500, landsAtMm: 0.4 }),
    );
    expect(solution.standOffMm).toBeCloseTo(0.4, 9);
    expect(solution.outcome).toBe('shut unloaded');
  });

  test('resin that cannot leave holds the mean gap at the laminate', () => {
    const solution = tiltedBalance(
      problem(plate(100, 60, 12, () => 0.5).samples, { forceN: 1500, sealedAtMm: 0.7 }),
    );
    expect(0.5 + solution.standOffMm).toBeCloseTo(0.7, 6);
    expect(solution.resinForceN + solution.laminateForceN).toBeCloseTo(1500, 4);
    expect(1e3 * solution.resinPressureMPa).toBeCloseTo(
      (1e3 * (1500 - 6000 * pressureAt(curve, 0.7))) / 6000,
      4,
    );
  });
});

const wedgeWallMm = (u: number) => 0.6 + 0.05 * u;

test('wedge plate: each strip carries the bed of its own gap', () => {
  const cells = 200;
  const { samples } = plate(100, 60, cells, wedgeWallMm);
  const level = translationBalance({
    samples,
    curve,
    clampForceAt: () => 2500,
    landsAtMm: null,
  });
  // The sum over strips is the integral of the pressure over the wall, by Simpson's rule on our own.
  let integral = 0;
  const steps = 2000;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    integral +=
      (weight * pressureAt(curve, wedgeWallMm((2 * i) / steps - 1) + level.standOffMm)) / (3 * steps);
  }
  expect((integral * 6000) / 2500).toBeCloseTo(1, 4);
});

const strips = (halfMm: number) =>
  handFace(
    handFrame(100, 60, 0),
    [-1, 1].flatMap((side) =>
      [-1, 1].map((end) => ({
        areaMm2: 1500,
        wallMm: 0.5,
        normal: [0, 0, 1] as const,
        at: [side * halfMm, end * 20, 0] as const,
      })),
    ),
  ).samples;

describe('tilt', () => {
  test('a clamp off center on two strips: each strip takes its lever share', () => {
    const solution = tiltedBalance(problem(strips(40), { forceN: 1200, at: [10, 0] }));
    const near = gapAtPressure(curve, (600 * (1 + 10 / 40)) / 3000);
    const far = gapAtPressure(curve, (600 * (1 - 10 / 40)) / 3000);
    expect(0.5 + solution.standOffMm).toBeCloseTo((near + far) / 2, 6);
    // A turn about v lowers the side of positive u.
    expect(solution.tiltVRad).toBeCloseTo((far - near) / 80, 8);
    expect(solution.tiltURad).toBeCloseTo(0, 9);
  });

  test('over one land edge the lever tells the land force', () => {
    const middle = handFace(
      handFrame(100, 60, 0),
      [-1, 1].map((end) => ({
        areaMm2: 1500,
        wallMm: 0.3,
        normal: [0, 0, 1] as const,
        at: [0, end * 20, 0] as const,
      })),
    ).samples;
    const solution = tiltedBalance(problem(middle, { forceN: 900, at: [20, 0] }));
    expect(solution.outcome).toBe('leans');
    expect(solution.landForceN).toBeCloseTo((900 * 20) / 60, 4);
    expect(solution.laminateForceN).toBeCloseTo(900 - 300, 4);
  });

  test('clamps outside the lands tip the mold', () => {
    const { samples } = plate(100, 60, 8, () => 0.6);
    expect(tiltedBalance(problem(samples, { forceN: 900, at: [75, 0] })).outcome).toBe('tips');
    expect(tiltedBalance(problem(samples, { forceN: 900, at: [75, 0], landsAtMm: null })).outcome).toBe(
      'tips',
    );
  });

  test('arms are those of a rigid turn, height and sideways part included', () => {
    const normal = [0.6, 0.64, 0.48] as const;
    const at = [17, -9, 12] as const;
    const { samples } = handFace(handFrame(100, 60, 20), [{ areaMm2: 1, wallMm: 1, normal, at }]);
    const [alpha, beta] = [2e-3, -3e-3];
    // ω × r for ω = (α, β, 0)
    const move = [beta * at[2], -alpha * at[2], alpha * at[1] - beta * at[0]];
    const wanted = 1 + normal[0] * move[0]! + normal[1] * move[1]! + normal[2] * move[2]!;
    const position = { standOffMm: 0, tiltURad: alpha, tiltVRad: beta };
    expect(gapMm(samples, position, 0)).toBeCloseTo(wanted, 7);
  });
});

test('friction on steep walls: 3° sides thinner than the stack eat five sixths of the clamps', () => {
  const { samples } = cup(100, 60, 25, 3, 20, 1.5, 0.5);
  const at = (friction: number) =>
    translationBalance({ samples, curve, clampForceAt: () => 1200, landsAtMm: 0, friction });
  expect(at(0.25).standOffMm).toBeGreaterThan(at(0).standOffMm);
  const withFriction = at(0.25);
  const pressed = bedForceN(samples, curve, withFriction.standOffMm);
  expect(Math.abs(1 - pressed / withFriction.clampForceN - 5 / 6)).toBeLessThan(0.01);
});

test('one choked patch holds the rest loose', () => {
  const { samples } = plate(100, 60, 20, (u, v) => (Math.hypot(u, v) < 0.3 ? 0.35 : 0.8));
  const solution = tiltedBalance(problem(samples, { forceN: 800 }));
  const limits = classLimits(curve, 0.7011, 0.9, 0.005);
  const shares = classShares(samples, solution, limits);
  const shut = classShares(samples, { standOffMm: 0, tiltURad: 0, tiltVRad: 0 }, limits);
  expect(solution.outcome).toBe('stands off');
  expect(shut.choked).toBeGreaterThan(0.05);
  expect(shut.loose).toBe(0);
  expect(shares.loose).toBeGreaterThan(0.9);
});

describe(`for every mold (seed ${propertySeed})`, () => {
  const faces = fc.record({
    draftDeg: fc.double({ min: 0.5, max: 30, noNaN: true }),
    faceMm: fc.double({ min: 0.4, max: 1.2, noNaN: true }),
    sideMm: fc.double({ min: 0.4, max: 1.2, noNaN: true }),
  });
  type Face = { readonly draftDeg: number; readonly faceMm: number; readonly sideMm: number };
  const samplesOf = ({ draftDeg, faceMm, sideMm }: Face) =>
    cup(100, 60, 20, draftDeg, 6, faceMm, sideMm).samples;
  const force = fc.double({ min: 10, max: 5000, noNaN: true });
  const place = fc.tuple(
    fc.double({ min: -25, max: 25, noNaN: true }),
    fc.double({ min: -15, max: 15, noNaN: true }),
  );

  test('total load balances to 1e-6', () => {
    fc.assert(
      fc.property(faces, force, place, (face, forceN, at) => {
        const samples = samplesOf(face);
        const solution = tiltedBalance(problem(samples, { forceN, at, rateNPerMm: 5 }));
        const out = solution.clampForceN - solution.laminateForceN - solution.landForceN;
        expect(solution.outcome).not.toBe('tips');
        expect(Math.abs(out)).toBeLessThanOrEqual(1e-6 * solution.clampForceN);
        expect(solution.landForceN).toBeGreaterThanOrEqual(0);
        expect(Math.min(...solution.cornerStandOffMm)).toBeGreaterThan(-1e-9);
        if (solution.landForceN > 1e-6 * forceN)
          expect(Math.min(...solution.cornerStandOffMm)).toBeLessThan(1e-9);
      }),
      { numRuns: 60 },
    );
  });

  test('more force never opens the mold', () => {
    fc.assert(
      fc.property(faces, force, fc.double({ min: 1, max: 3, noNaN: true }), (face, forceN, more) => {
        const samples = samplesOf(face);
        const less = tiltedBalance(problem(samples, { forceN })).standOffMm;
        const closer = tiltedBalance(problem(samples, { forceN: forceN * more })).standOffMm;
        expect(closer).toBeLessThanOrEqual(less + 1e-7);
      }),
      { numRuns: 60 },
    );
  });

  test('a thicker wall never raises its own fiber fraction', () => {
    fc.assert(
      fc.property(
        faces,
        force,
        fc.nat(),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (face, forceN, pick, moreMm) => {
          const samples = samplesOf(face);
          const spot = pick % samples.areaMm2.length;
          const wallMm = samples.wallMm.slice();
          wallMm[spot] = wallMm[spot]! + moreMm;
          const gapWith = (walls: ClosingSamples) =>
            gapMm(walls, tiltedBalance(problem(walls, { forceN })), spot);
          expect(gapWith({ ...samples, wallMm })).toBeGreaterThanOrEqual(gapWith(samples) - 1e-6);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('a start elsewhere ends at the same place', () => {
    fc.assert(
      fc.property(faces, force, place, (face, forceN, at) => {
        const samples = samplesOf(face);
        const asked = problem(samples, { forceN, at });
        const one = tiltedBalance(asked);
        const other = tiltedBalance(asked, { standOffMm: 0.7, tiltURad: 0, tiltVRad: 0 });
        expect(other.laminateForceN).toBeCloseTo(one.laminateForceN, 3);
        if (one.laminateForceN > 1e-3 * forceN) expect(other.standOffMm).toBeCloseTo(one.standOffMm, 5);
      }),
      { numRuns: 30 },
    );
  });
});

test('clamps round the rim act in the middle; placed ones where they stand; none is told', () => {
  const group = { count: 8, forceN: 150, atOpeningMm: 0, rateNPerMm: 8, planMm: null };
  const clamps = placedClamps([group], [50, 30]);
  expect(clamps.reduce((sum, { planMm }) => sum + planMm[0], 0)).toBeCloseTo(0, 9);
  expect(clamps.reduce((sum, { planMm }) => sum + planMm[1], 0)).toBeCloseTo(0, 9);
  expect(totalClampForceN(clamps, 1)).toBeCloseTo(8 * 158, 9);
  expect(() => placedClamps([{ ...group, count: 0 }], [50, 30])).toThrow(/No clamp presses/u);
});
