/**
 * Draft and trapped shares of real enclosure meshes against the independent figures of their collection (manifest.json:
 * area-weighted over facets; reach by rays along +z and -z from facet centers, CGAL and Embree agreeing). The
 * manifest gives reach from each side and from neither; definitions stand in its `definitions`.
 */
import { describe, expect, it } from 'vitest';
import { findHealth } from '../../src/core/mesh/health';
import { measurePart } from '../../src/core/mesh/measure';
import { readMeshFile } from '../../src/core/mesh/read/readMeshFile';
import { summarize } from '../../src/core/part/summary';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { weld } from '../../src/core/mesh/weld';
import { publicMesh, publicMeshes, publicTitle } from '../support/publicMeshes';

function partInMm(path: string, mmPerUnit: number): IndexedMesh {
  const { mesh } = weld(readMeshFile(publicMesh(path), path));
  return { positions: mesh.positions.map((coordinate) => coordinate * mmPerUnit), facets: mesh.facets };
}

function within(value: number, expected: number): void {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(0.002);
}

describe(publicTitle('draft, reach and walls of public meshes'), () => {
  it.each(publicMeshes)('%s', (path, given) => {
    const mesh = partInMm(path, given.mm_per_unit);
    const measurement = measurePart(mesh, [0, 0, 1]);
    const summary = summarize(mesh, findHealth(mesh), measurement);
    const { draft } = summary;
    within(draft.under1DegShare, given.draft_plus_z.under_1deg);
    within(draft.under3DegShare, given.draft_plus_z.under_3deg);
    within(draft.awayShare, given.draft_plus_z.facing_away);

    const reached = given.straight_pull_z.centroid_area_weighted;
    within(draft.trappedShare, reached.reachable_from_neither);
    let fromShow = 0;
    let fromCore = 0;
    measurement.areaMm2.forEach((area, facet) => {
      if (measurement.reach[facet]! & 1) fromShow += area;
      if (measurement.reach[facet]! & 2) fromCore += area;
    });
    within(fromShow / summary.areaMm2, reached.reachable_from_plus_z);
    within(fromCore / summary.areaMm2, reached.reachable_from_minus_z);

    const walls = given.thickness_centroid_area_weighted_exit_hits_only;
    for (const share of ['p5', 'median', 'p95'] as const) {
      const expected = walls[share] * given.mm_per_unit;
      const found = summary.rayWall[share] ?? NaN;
      expect(Math.abs(found - expected)).toBeLessThanOrEqual(Math.max(0.01, 0.01 * expected));
    }
    const kinds = Object.values(summary.kindAreaMm2).reduce((sum, area) => sum + area, 0);
    expect(kinds / summary.areaMm2).toBeCloseTo(1, 5);
  });
});
