/** From a mesh to the balance: walls, mid-surface, cosines and slides on parts with known answers. */
import { describe, expect, test } from 'vitest';
import { bedCurve } from '../../../src/core/closing/bedCurve';
import { closingClass } from '../../../src/core/closing/classes';
import { closingHistogram } from '../../../src/core/closing/closingHistogram';
import { closingMaps, noClosingClass } from '../../../src/core/closing/closingMaps';
import { closingSamples } from '../../../src/core/closing/closingSamples';
import { wovenBed } from '../../../src/core/closing/fiberBed';
import { longestSlide, slideMm } from '../../../src/core/closing/sliding';
import { classLimits } from '../../support/closingHands';
import { tiltedBalance } from '../../../src/core/closing/tiltedBalance';
import { measurePart } from '../../../src/core/mesh/measure';
import { facetKind, type IndexedMesh, type Vec3 } from '../../../src/core/mesh/types';
import { domeShell, domeShellWallMm, tray } from '../../support/meshes';
import { quartered } from '../../support/quartered';

const curve = bedCurve([{ bed: wovenBed, solidFiberMm: 0.6 / 1.77 }]);

function measured(mesh: IndexedMesh, pull: Vec3) {
  const measurement = measurePart(mesh, pull);
  const samples = closingSamples(mesh, measurement);
  return { measurement, samples, histogram: closingHistogram(samples, measurement.centerMm) };
}

const areaOf = (areas: ArrayLike<number>) => Array.from(areas).reduce((sum, area) => sum + area, 0);

/** Conical shell round the z axis, wide end down, wall square to its surface. */
function coneShell(draftDeg: number, wallMm: number, segments: number): IndexedMesh {
  const draft = (draftDeg * Math.PI) / 180;
  const heightMm = 30;
  const inward = wallMm / Math.cos(draft);
  const positions: number[] = [];
  const ring = (radius: number, z: number) => {
    for (let j = 0; j < segments; j++) {
      const turn = (2 * Math.PI * j) / segments;
      positions.push(radius * Math.cos(turn), radius * Math.sin(turn), z);
    }
  };
  const lean = heightMm * Math.tan(draft);
  ring(40 + lean, 0);
  ring(40, heightMm);
  ring(40 - inward, heightMm);
  ring(40 + lean - inward, 0);
  const facets: number[] = [];
  for (let r = 0; r < 4; r++) {
    for (let j = 0; j < segments; j++) {
      const k = (j + 1) % segments;
      const [a, b] = [r * segments + j, r * segments + k];
      const [c, d] = [((r + 1) % 4) * segments + k, ((r + 1) % 4) * segments + j];
      facets.push(a, b, c, a, c, d);
    }
  }
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}

describe('half-sphere shell', () => {
  const { measurement, samples } = measured(domeShell(40, 120), [0, 0, 1]);
  const skinArea = (kind: number) =>
    areaOf(measurement.areaMm2.filter((_, facet) => measurement.kind[facet] === kind));

  test('its mid-surface is midway between the skins', () => {
    const between = (skinArea(facetKind.show) + skinArea(facetKind.core)) / 2;
    expect(areaOf(samples.areaMm2) / between).toBeCloseTo(1, 2);
    expect(areaOf(samples.areaMm2) / (2 * Math.PI * 49 ** 2)).toBeCloseTo(1, 2);
  });

  test('its wall is the same everywhere', () => {
    const walls = [...samples.wallMm].filter((wall) => wall > 0);
    expect(Math.min(...walls)).toBeGreaterThan(domeShellWallMm - 0.02);
    expect(Math.max(...walls)).toBeLessThan(domeShellWallMm + 0.02);
  });
});

describe('cone of one draft', () => {
  const { samples, histogram } = measured(coneShell(3, 0.6, 90), [0, 0, 1]);

  test('slides by (stack − wall) / sin(draft)', () => {
    const slide = longestSlide(histogram, 0.9, histogram.frame.depthMm, 0.001);
    expect(slide.slideMm).toBeCloseTo(0.3 / Math.sin((3 * Math.PI) / 180), 1);
    expect(slide.allTheWayShare).toBe(0);
    expect(Math.max(...samples.pullCosine)).toBeCloseTo(Math.sin((3 * Math.PI) / 180), 4);
  });

  test('a wall without draft wipes over the whole depth, a wide one not at all', () => {
    expect(slideMm(0.9, 0.6, 0, 30)).toBe(30);
    expect(slideMm(0.9, 1, 0, 30)).toBe(0);
    expect(slideMm(0.9, 0.6, 1, 30)).toBeCloseTo(0.3, 12);
  });
});

const solve = (mesh: IndexedMesh) => {
  const { histogram } = measured(mesh, [0, 0, -1]);
  return tiltedBalance({
    samples: histogram,
    curve,
    clamps: [{ forceN: 1500, atOpeningMm: 0, rateNPerMm: 8, planMm: [0, 0] }],
    lands: { outlineHalfMm: [60, 45], shimMm: 0 },
    halfSizeMm: histogram.frame.halfSizeMm,
    sealedAtMm: null,
  });
};

describe('tray with drafted sides', () => {
  const coarse = tray([80, 50, 20], 0.62, 4);

  test('finer triangles change nothing that a bench could measure', () => {
    const [one, two] = [solve(quartered(quartered(coarse))), solve(quartered(quartered(quartered(coarse))))];
    expect(two.outcome).toBe(one.outcome);
    expect(Math.abs(one.standOffMm - two.standOffMm)).toBeLessThan(0.002);
    expect(Math.abs(one.laminateForceN - two.laminateForceN)).toBeLessThan(0.02 * 1500);
  });

  test('maps tell gap, fiber, pressure, class and wanted change for show facets alone', () => {
    const mesh = quartered(coarse);
    const { measurement, samples } = measured(mesh, [0, 0, -1]);
    const solution = solve(mesh);
    const limits = classLimits(curve, 0.7, 0.9, 0.005);
    const maps = closingMaps(samples, solution, curve, limits, 0.8);
    for (let facet = 0; facet < measurement.facetCount; facet++) {
      if (samples.areaMm2[facet] === 0) {
        expect(maps.closingClass[facet]).toBe(noClosingClass);
        expect(maps.gapMm[facet]).toBeNaN();
        continue;
      }
      expect(measurement.kind[facet]).toBe(facetKind.show);
      const gap = maps.gapMm[facet]!;
      expect(maps.fiberFraction[facet]! * gap).toBeCloseTo(curve.solidFiberMm, 5);
      expect(maps.wallChangeMm[facet]! + samples.wallMm[facet]!).toBeCloseTo(0.8, 5);
      if (gap <= 0.7 && gap >= limits.chokedUnderMm)
        expect(maps.closingClass[facet]).toBe(closingClass.packed);
    }
  });
});

test('an open sheet has no walls behind it: its outside is given without any', () => {
  const sheet: IndexedMesh = {
    positions: Float64Array.of(0, 0, 0, 60, 0, 0, 60, 40, 0, 0, 40, 0),
    facets: Uint32Array.of(0, 1, 2, 0, 2, 3),
  };
  const { samples, histogram } = measured(sheet, [0, 0, 1]);
  expect(samples.wallsKnown).toBe(false);
  expect(areaOf(samples.areaMm2)).toBeCloseTo(2400, 6);
  expect(areaOf(histogram.areaMm2)).toBeCloseTo(2400, 6);
});
