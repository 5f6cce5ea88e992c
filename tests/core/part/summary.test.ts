import { describe, expect, it } from 'vitest';
import { findHealth } from '../../../src/core/mesh/health';
import { measurePart } from '../../../src/core/mesh/measure';
import { summarize } from '../../../src/core/part/summary';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import type { PartSummary } from '../../../src/core/part/partSummary';
import { caseHalf } from '../../support/cellPart';
import { box, tray, trayVolumeMm3 } from '../../support/meshes';

const summaryOf = (mesh: IndexedMesh, pull: Vec3) =>
  summarize(mesh, findHealth(mesh), measurePart(mesh, pull));

/** Every number of a summary, by path. */
function numbersOf(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersOf(inner, `${path}.${key}`));
}

describe('summary of a tray', () => {
  const summary = summaryOf(tray([60, 40, 12], 1), [0, 0, -1]);

  it('has the volume, area, box and centroid of its drawing', () => {
    expect(summary.volumeMm3).toBeCloseTo(trayVolumeMm3([60, 40, 12], 1), 6);
    const outside = 60 * 40 + 2 * (60 + 40) * 12;
    const inside = 58 * 38 + 2 * (58 + 38) * 11;
    const rim = 60 * 40 - 58 * 38;
    expect(summary.areaMm2).toBeCloseTo(outside + inside + rim, 6);
    expect(summary.boxMinMm).toEqual([-30, -20, 0]);
    expect(summary.boxMaxMm).toEqual([30, 20, 12]);
    expect(summary.centroidMm?.[0]).toBeCloseTo(0, 9);
    expect(summary.kindAreaMm2.show).toBeCloseTo(outside, 3);
    expect(summary.kindAreaMm2.core).toBeCloseTo(inside, 3);
    expect(summary.kindAreaMm2.rim).toBeCloseTo(rim, 3);
  });
  it('has a wall of 1 mm by ray and ball all over the show face', () => {
    const one = { p5: 1, median: 1, p95: 1, min: 1, max: 1, hitShare: 1 };
    for (const [name, value] of Object.entries(one)) {
      expect(summary.showRayWall[name as keyof typeof one]).toBeCloseTo(value, 5);
      expect(summary.showBallWall[name as keyof typeof one]).toBeCloseTo(value, 5);
    }
    expect(summary.showWall.cumulativeAreaMm2.at(-1)).toBeCloseTo(summary.kindAreaMm2.show, 3);
    expect(summary.showWallByBall.cumulativeAreaMm2.at(-1)).toBeCloseTo(summary.kindAreaMm2.show, 3);
  });
  it('traps nothing and has sharp inside corners', () => {
    expect(summary.draft.trappedShare).toBe(0);
    expect(summary.insideCornerRadiusMm).toEqual({ p5: 0, min: 0 });
    expect(summary.solid).toBe(false);
  });
});

describe('summary', () => {
  it('tells draft toward the own half, positive where it releases', () => {
    const { releaseDraft, kindAreaMm2 } = summaryOf(tray([60, 40, 12], 1, 3), [0, 0, -1]);
    expect(releaseDraft.draftDeg[0]).toBeCloseTo(3, 4);
    expect(releaseDraft.draftDeg.at(-1)).toBeCloseTo(90, 4);
    expect(releaseDraft.cumulativeAreaMm2.at(-1)).toBeCloseTo(kindAreaMm2.show + kindAreaMm2.core, 3);
  });

  it('gives the volume with a hole closed flat, in the band of what the hole could hold', () => {
    const whole = box([0, 0, 0], [10, 10, 10]);
    const open = summaryOf({ ...whole, facets: whole.facets.slice(3) }, [0, 0, 1]);
    expect(open.volumeMm3).toBeCloseTo(1000, 9);
    // A triangle of 50 mm² and an outline of 10 + 10 + 14.142 mm: 4 x 50² / (3 x 34.142) = 97.63.
    expect(open.volumeBandMm3![0]).toBeCloseTo(1000 - 97.63, 1);
    expect(open.volumeBandMm3![1]).toBeCloseTo(1000 + 97.63, 1);
    expect(open.centroidMm).not.toBeNull();
  });

  it('gives no volume where the holes could hold most of it', () => {
    const whole = box([0, 0, 0], [10, 10, 10]);
    const open = summaryOf({ ...whole, facets: whole.facets.slice(18) }, [0, 0, 1]);
    expect(open.volumeMm3).toBeNull();
    expect(open.volumeBandMm3).toBeNull();
    expect(open.centroidMm).not.toBeNull();
  });

  it('has no NaN for an empty mesh, a lone facet or a case half with everything', () => {
    const empty: IndexedMesh = { positions: new Float64Array(0), facets: new Uint32Array(0) };
    const lone: IndexedMesh = {
      positions: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0),
      facets: Uint32Array.of(0, 1, 2),
    };
    for (const mesh of [empty, lone, caseHalf()]) {
      const bad = numbersOf(summaryOf(mesh, [0, 0, 1])).filter(([, value]) => !Number.isFinite(value));
      expect(bad).toEqual([]);
    }
    const none: PartSummary = summaryOf(empty, [0, 0, 1]);
    expect(none.showRayWall.median).toBeNull();
    expect(none.centroidMm).toBeNull();
  });
});
