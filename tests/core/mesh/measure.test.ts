import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findHealth } from '../../../src/core/mesh/health';
import { measurePart } from '../../../src/core/mesh/measure';
import { summarize } from '../../../src/core/part/summary';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import type { PartSummary } from '../../../src/core/part/partSummary';
import { Problem } from '../../../src/core/problem';
import { caseHalf } from '../../support/cellPart';
import { mapVertices, tray } from '../../support/meshes';
import { propertySeed } from '../../support/propertySeed';
import { rigidMotion } from '../../support/randomMeshes';

const summaryOf = (mesh: IndexedMesh, pull: Vec3) =>
  summarize(mesh, findHealth(mesh), measurePart(mesh, pull));

/** What must not depend on where the part lies. */
function scalars(summary: PartSummary): number[] {
  const walls = [summary.rayWall, summary.ballWall, summary.showRayWall, summary.showBallWall];
  return [
    summary.volumeMm3 ?? NaN,
    summary.areaMm2,
    ...walls.flatMap(({ p5, median, p95, hitShare }) => [p5 ?? NaN, median ?? NaN, p95 ?? NaN, hitShare]),
    ...Object.values(summary.draft),
    ...Object.values(summary.kindAreaMm2),
    summary.releaseDraft.draftDeg[0] ?? NaN,
  ];
}

function near(value: number | null, expected: number | null): void {
  expect(Math.abs((value ?? NaN) / (expected ?? NaN) - 1)).toBeLessThan(1e-5);
}

const draftedTray = tray([60, 40, 12], 1.2, 4);
const down: Vec3 = [0, 0, -1];

describe(`measuring a part (seed ${propertySeed})`, () => {
  it('gives the same figures wherever the part lies, turned with its pull', () => {
    const still = scalars(summaryOf(draftedTray, down));
    fc.assert(
      fc.property(rigidMotion, (move) => {
        const origin = move([0, 0, 0]);
        const tip = move(down);
        const pull: Vec3 = [tip[0] - origin[0], tip[1] - origin[1], tip[2] - origin[2]];
        const moved = scalars(summaryOf(mapVertices(draftedTray, move), pull));
        moved.forEach((value, at) => {
          expect(Math.abs(value - still[at]!)).toBeLessThan(1e-4 * Math.max(1, Math.abs(still[at]!)));
        });
      }),
      { numRuns: 40 },
    );
  });

  it('scales lengths, areas and volumes with the part and leaves angles and shares', () => {
    const one = summaryOf(draftedTray, down);
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 30, noNaN: true }), (scale) => {
        const scaled = summaryOf(
          mapVertices(draftedTray, ([x, y, z]) => [x * scale, y * scale, z * scale]),
          down,
        );
        near(scaled.volumeMm3, (one.volumeMm3 ?? NaN) * scale ** 3);
        near(scaled.areaMm2, one.areaMm2 * scale ** 2);
        near(scaled.kindAreaMm2.show, one.kindAreaMm2.show * scale ** 2);
        near(scaled.kindAreaMm2.rim, one.kindAreaMm2.rim * scale ** 2);
        near(scaled.rayWall.p95, (one.rayWall.p95 ?? NaN) * scale);
        near(scaled.showBallWall.median, (one.showBallWall.median ?? NaN) * scale);
        near(scaled.draft.awayShare, one.draft.awayShare);
        near(scaled.releaseDraft.draftDeg[0]!, one.releaseDraft.draftDeg[0]!);
      }),
      { numRuns: 20 },
    );
  });

  it('makes the pull a unit vector and refuses one without direction', () => {
    const measurement = measurePart(draftedTray, [0, 0, -7]);
    expect(measurement.pull.map(Math.abs)).toEqual([0, 0, 1]);
    expect(() => measurePart(draftedTray, [0, 0, 0])).toThrow(Problem);
    expect(() => measurePart(draftedTray, [NaN, 0, 1])).toThrow(Problem);
  });

  it('takes walls and reach that were measured elsewhere and comes to the same', () => {
    const mesh = draftedTray;
    const alone = measurePart(mesh, [0, 0, 1]);
    const { rayWallMm, rayFacet, ballWallMm, reach } = alone;
    const helped = measurePart(mesh, [0, 0, 1], { walls: { rayWallMm, rayFacet, ballWallMm }, reach });
    expect(helped).toEqual(alone);
  });

  it('tells how far it is, never backward, up to the end', () => {
    const shares: number[] = [];
    measurePart(caseHalf(), [0, 0, 1], { onProgress: (_, share) => shares.push(share) });
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBe(1);
  });
});
