/** A part drawn in few large facets is judged everywhere, not at the centers of those facets. */
import { describe, expect, it } from 'vitest';
import { findHealth } from '../../../src/core/mesh/health';
import { measurePart } from '../../../src/core/mesh/measure';
import type { SavedMeshChoices } from '../../../src/core/mesh/partFromSaved';
import { findPatches } from '../../../src/core/mesh/patches';
import { cutSection } from '../../../src/core/mesh/section';
import { summarize } from '../../../src/core/part/summary';
import { facetKind, type IndexedMesh, type WallDistribution } from '../../../src/core/mesh/types';
import { measureSaved } from '../../support/measureSaved';
import { icosphere, torus } from '../../support/meshes';

const choices: SavedMeshChoices = {
  unit: 'mm',
  declaredUnit: null,
  body: 0,
  scale: 1,
  pull: [0, 0, -1],
  winding: 'repair',
};

const [lengthMm, widthMm, heightMm] = [60, 40, 20];
const wallMm = 2;
const thickMm = 3;
/** The floor is `thickMm` thick for x beyond this. */
const stepAtMm = 18;

const rectangle = (halfX: number, halfY: number, z: number) =>
  [
    [-halfX, -halfY, z],
    [halfX, -halfY, z],
    [halfX, halfY, z],
    [-halfX, halfY, z],
  ].flat();

/** A tray open at the top whose floor has a step inside; its outside is drawn in ten facets. */
function steppedTray(): IndexedMesh {
  const [x, y] = [lengthMm / 2, widthMm / 2];
  const [ix, iy] = [x - wallMm, y - wallMm];
  const profile = [
    [-ix, heightMm],
    [-ix, wallMm],
    [stepAtMm, wallMm],
    [stepAtMm, thickMm],
    [ix, thickMm],
    [ix, heightMm],
  ] as const;
  const positions = [...rectangle(x, y, 0), ...rectangle(x, y, heightMm)];
  for (const across of [-iy, iy]) for (const [along, z] of profile) positions.push(along, across, z);
  const facets = [0, 2, 1, 0, 3, 2];
  for (let i = 0; i < 4; i++) {
    const j = (i + 1) % 4;
    facets.push(i, j, 4 + j, i, 4 + j, 4 + i);
  }
  // Front (y < 0) and back ends of the profile.
  const [front, back] = [8, 14];
  const innerRim = [front, front + 5, back + 5, back];
  for (let i = 0; i < 4; i++) {
    const j = (i + 1) % 4;
    facets.push(4 + i, 4 + j, innerRim[j]!, 4 + i, innerRim[j]!, innerRim[i]!);
  }
  for (let i = 0; i < 5; i++) {
    facets.push(front + i, front + i + 1, back + i + 1, front + i, back + i + 1, back + i);
  }
  for (const [a, b, c] of [
    [0, 1, 2],
    [0, 2, 3],
    [0, 3, 5],
    [3, 4, 5],
  ] as const) {
    facets.push(front + a, front + c, front + b, back + a, back + b, back + c);
  }
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}

function shareAbove({ wallMm: walls, cumulativeAreaMm2 }: WallDistribution, limitMm: number): number {
  const first = walls.findIndex((wall) => wall > limitMm);
  const whole = cumulativeAreaMm2.at(-1)!;
  return first < 0 ? 0 : 1 - (first === 0 ? 0 : cumulativeAreaMm2[first - 1]! / whole);
}

describe('a tray in few facets whose floor is thick at one end', () => {
  const mesh = steppedTray();
  const saved = measureSaved(mesh, choices);
  const { summary, measurement, measuring, partMesh } = saved;
  // Walls stand where the cavity is behind: floor, two long sides (less the step), two ends.
  const thickAreaMm2 = (lengthMm / 2 - wallMm - stepAtMm) * (widthMm - 2 * wallMm);
  const floorMm2 = (lengthMm - 2 * wallMm) * (widthMm - 2 * wallMm);
  const thinLongMm = lengthMm / 2 - wallMm + stepAtMm;
  const thickLongMm = lengthMm / 2 - wallMm - stepAtMm;
  const sidesMm2 = 2 * (thinLongMm * (heightMm - wallMm) + thickLongMm * (heightMm - thickMm));
  const endsMm2 = (widthMm - 2 * wallMm) * (heightMm - wallMm + heightMm - thickMm);
  const wallsMm2 = floorMm2 + sidesMm2 + endsMm2;

  it('is drawn as it should be', () => {
    expect(findHealth(mesh).watertight).toBe(true);
    const cavityMm3 = floorMm2 * (heightMm - wallMm) - thickAreaMm2 * (thickMm - wallMm);
    expect(summary.volumeMm3).toBeCloseTo(lengthMm * widthMm * heightMm - cavityMm3, 6);
    expect(summary.facetCount).toBe(36);
  });

  it('has the wall and the thick share of its drawing', () => {
    expect(summary.showWall.cumulativeAreaMm2.at(-1)! / wallsMm2).toBeCloseTo(1, 1);
    expect(Math.abs(shareAbove(summary.showWall, 2.5) - thickAreaMm2 / wallsMm2)).toBeLessThan(0.008);
    expect(summary.showRayWall).toMatchObject({ hitShare: 1 });
    expect(summary.showRayWall.median).toBeCloseTo(wallMm, 5);
    expect(summary.showRayWall.min).toBeCloseTo(wallMm, 5);
    expect(summary.showRayWall.max).toBeCloseTo(thickMm, 5);
  });

  it('would be judged wrong at the centers of its facets alone', () => {
    const alone = summarize(partMesh, saved.health, measurePart(partMesh, choices.pull));
    expect(Math.abs(shareAbove(alone.showWall, 2.5) - thickAreaMm2 / wallsMm2)).toBeGreaterThan(0.05);
  });

  it('shows the thick place where it is, as large as it is', () => {
    const thick = findPatches(measuring.mesh, measurement, {
      measure: 'ray',
      lowMm: 1,
      highMm: 2.5,
      leastDraftDeg: -90,
      leastCornerRadiusMm: null,
      leastOuterEdgeRadiusMm: null,
    }).filter(({ finding }) => finding === 'thick');
    expect(thick.length).toBe(1);
    expect(thick[0]!.areaMm2 / thickAreaMm2).toBeGreaterThan(0.9);
    expect(thick[0]!.areaMm2 / thickAreaMm2).toBeLessThan(1.1);
    expect(thick[0]!.worst).toBeCloseTo(thickMm, 5);
    expect(thick[0]!.worstAtMm[0]).toBeGreaterThan(stepAtMm);
    expect(thick[0]!.worstAtMm[2]).toBeCloseTo(0, 5);
  });

  it('cuts to the same lines as drawn, with walls of the floor along them', () => {
    const section = cutSection(measuring.mesh, measurement, { axis: 'y', atMm: 1.37 });
    expect(section.lines.length).toBe(1);
    expect(section.lines[0]!.closed).toBe(true);
    for (const wall of section.walls) {
      const near = Math.min(Math.abs(wall.wallMm - wallMm), Math.abs(wall.wallMm - thickMm));
      expect(near).toBeLessThan(1e-6);
    }
    expect(section.walls.length).toBeGreaterThan(4);
  });

  it('hands the sharp inside corners down to the facets at those corners only', () => {
    let atCorner = 0;
    for (let facet = 0; facet < measurement.facetCount; facet++) {
      if (Number.isNaN(measurement.cornerRadiusMm[facet]!)) continue;
      atCorner += measurement.areaMm2[facet]!;
      expect(measurement.cornerRadiusMm[facet]).toBe(0);
      expect(measurement.kind[facet]).not.toBe(facetKind.show);
    }
    expect(atCorner).toBeGreaterThan(0);
    expect(atCorner / summary.areaMm2).toBeLessThan(0.1);
  });
});

describe('figures of the drawn facets', () => {
  it.each([
    ['a stepped tray', steppedTray()],
    ['a ring', torus(40, 10, 12, 8)],
    ['a coarse ball', icosphere(20, 1)],
    ['a sheet that is torn', { ...steppedTray(), facets: steppedTray().facets.slice(6) }],
  ])('are what they were before splitting: %s', (_, mesh) => {
    const { partMesh, health, summary, measuring } = measureSaved(mesh, choices);
    const alone = summarize(partMesh, health, measurePart(partMesh, choices.pull));
    expect(measuring.split).not.toBeNull();
    for (const name of [
      'facetCount',
      'volumeMm3',
      'volumeBandMm3',
      'areaMm2',
      'centroidMm',
      'boxMinMm',
      'boxMaxMm',
      'draft',
      'insideCornerRadiusMm',
    ] as const) {
      expect(summary[name]).toEqual(alone[name]);
    }
    for (const walls of ['rayWall', 'ballWall'] as const) {
      for (const [name, value] of Object.entries(alone[walls])) {
        expect(summary[walls][name as keyof typeof summary.rayWall]).toBeCloseTo(value ?? NaN, 6);
      }
    }
    const kinds = Object.values(summary.kindAreaMm2).reduce((sum, area) => sum + area, 0);
    expect(kinds / summary.areaMm2).toBeCloseTo(1, 5);
  });
});
