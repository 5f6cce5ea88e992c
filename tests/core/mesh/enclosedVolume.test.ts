import { describe, expect, it } from 'vitest';
import { enclosedVolume } from '../../../src/core/mesh/enclosedVolume';
import type { IndexedMesh } from '../../../src/core/mesh/types';
import { box, domeShell, joinMeshes, mapVertices, tray, trayVolumeMm3 } from '../../support/meshes';

const size = [60, 40, 20] as const;
const plain = tray(size, 2);
const wanted = trayVolumeMm3(size, 2);
const without = (mesh: IndexedMesh, count: number): IndexedMesh => ({
  ...mesh,
  facets: mesh.facets.slice(3 * count),
});

/** Two boxes that share one edge: four facets meet there, and every edge balances. */
const boxesOnAnEdge: IndexedMesh = {
  positions: Float64Array.of(
    ...box([0, 0, 0], [10, 10, 10]).positions,
    ...box([10, 10, 0], [20, 20, 10]).positions,
  ),
  facets: Uint32Array.of(
    ...box([0, 0, 0], [10, 10, 10]).facets,
    // The corners 0 and 4 of the second box are 2 and 6 of the first.
    ...box([10, 10, 0], [20, 20, 10]).facets.map((v) => (v === 0 ? 2 : v === 4 ? 6 : v + 8)),
  ),
};

/** The copy of a vertex of the outer top ring. */
const raisedCopy = (vertex: number) => (vertex >= 4 && vertex < 8 ? vertex + 16 : vertex);

describe('what a surface encloses', () => {
  it('is known where edges balance, however many facets share them', () => {
    expect(enclosedVolume(boxesOnAnEdge)).toEqual({ volume: 2000, openBy: 0 });
  });

  it('counts a facet that stands there twice once', () => {
    const doubled = { ...plain, facets: Uint32Array.of(...plain.facets, ...plain.facets.slice(6, 24)) };
    expect(enclosedVolume(doubled)).toEqual({ volume: wanted, openBy: 0 });
  });

  it('has no unknown where two rims of a slit lie 3 µm apart, all round', () => {
    // The outer top ring is doubled 3 µm higher; the facets of the rim (12 to 19) take the copy.
    const raised = mapVertices(plain, ([x, y, z]) => [x, y, z + 0.003]);
    const slit: IndexedMesh = {
      positions: Float64Array.of(...plain.positions, ...raised.positions),
      facets: plain.facets.map((v, corner) => (corner >= 36 && corner < 60 ? raisedCopy(v) : v)),
    };
    const found = enclosedVolume(slit)!;
    expect(Math.abs(found.volume - wanted)).toBeLessThan(1);
    expect(found.openBy).toBeLessThan(0.01);
  });

  it('closes a hole flat and tells what it could hold', () => {
    // A cube without half of one face, moved far off: the answer does not depend on where it lies.
    const torn = mapVertices(without(box([0, 0, 0], [10, 10, 10]), 1), ([x, y, z]) => [x + 500, y - 70, z]);
    const found = enclosedVolume(torn)!;
    expect(found.volume).toBeCloseTo(1000, 6);
    expect(found.openBy).toBeCloseTo((4 * 50 ** 2) / (3 * (20 + Math.SQRT2 * 10)), 6);
  });

  it('takes a round hole for one that could hold a half ball', () => {
    // A dome of 50 mm with its rim left out: two round holes, outside and inside.
    const shell = domeShell(20, 200);
    const outer = { ...shell, facets: shell.facets.slice(0, 3 * 200 * (1 + 2 * 19)) };
    expect(enclosedVolume(outer)).toBeNull();
    const joined = joinMeshes(box([-200, -200, -400], [200, 200, -300]), outer);
    const { volume, openBy } = enclosedVolume(joined)!;
    expect(volume / (400 * 400 * 100 + (2 / 3) * Math.PI * 50 ** 3)).toBeCloseTo(1, 3);
    expect(openBy / ((2 / 3) * Math.PI * 50 ** 3)).toBeCloseTo(1, 2);
  });

  it('is not known of a lone skin', () => {
    expect(enclosedVolume(without(box([0, 0, 0], [10, 10, 10]), 10))).toBeNull();
  });
});
