import { describe, expect, it } from 'vitest';
import { measureBallWalls } from '../../../src/core/mesh/ballWall';
import { castRay, measureRayWalls } from '../../../src/core/mesh/rayWall';
import { measureReach } from '../../../src/core/mesh/reach';
import { findSelfTouching } from '../../../src/core/mesh/selfTouching';
import { buildSurfaceIndex } from '../../../src/core/mesh/surfaceIndex';
import { allSlots } from '../../support/allSlots';
import { reachBit, type IndexedMesh, type Vec3 } from '../../../src/core/mesh/types';
import { box, hollowSphere, icosphere, joinMeshes, mapVertices, torus, tray } from '../../support/meshes';

function wallsOf(mesh: IndexedMesh) {
  const index = buildSurfaceIndex(mesh);
  const rayWallMm = new Float32Array(index.facetCount);
  const rayFacet = new Int32Array(index.facetCount);
  const ballWallMm = new Float32Array(index.facetCount);
  measureRayWalls(index, allSlots(index), rayWallMm, rayFacet);
  measureBallWalls(index, allSlots(index), rayWallMm, ballWallMm);
  return { index, rayWallMm, rayFacet, ballWallMm };
}

function reachOf(mesh: IndexedMesh, pull: Vec3): Uint8Array {
  const index = buildSurfaceIndex(mesh);
  const reach = new Uint8Array(index.facetCount);
  measureReach(index, pull, allSlots(index), reach);
  return reach;
}

const mesh = (positions: number[], facets: number[]): IndexedMesh => ({
  positions: Float64Array.from(positions),
  facets: Uint32Array.from(facets),
});

const touching = (surface: IndexedMesh) => findSelfTouching(buildSurfaceIndex(surface), surface);

/** Largest relative difference from a diameter. */
const worst = (walls: Float32Array, diameterMm: number) =>
  walls.reduce((most, wall) => Math.max(most, Math.abs(wall / diameterMm - 1)), 0);

describe('walls of simple bodies', () => {
  it('reads the thickness of a slab, by ray and by ball', () => {
    // Wide enough that no side face is nearer to a facet center of the large faces than the slab is thick.
    const { rayWallMm, rayFacet, ballWallMm } = wallsOf(box([0, 0, 0], [90, 60, 2.5]));
    for (const facet of [0, 1, 2, 3]) {
      expect(rayWallMm[facet]).toBeCloseTo(2.5, 6);
      expect(ballWallMm[facet]).toBeCloseTo(2.5, 6);
      expect(Math.floor(rayFacet[facet]! / 2)).toBe(facet < 2 ? 1 : 0);
    }
  });

  it('reads through the surface of a body that is pushed into another, to where it faces back', () => {
    // A plate of 2 mm with a peg whose foot ends 0.5 mm under its top: from the plate's underside, and from its top beside
    // the peg, the wall is the plate's; the peg's top facet stands in the open and sees its own foot.
    const { rayWallMm, rayFacet } = wallsOf(
      joinMeshes(box([0, 0, 0], [30, 30, 2]), box([5, 5, 1.5], [25, 25, 3])),
    );
    for (const facet of [0, 1]) {
      expect(rayWallMm[facet]).toBeCloseTo(2, 6);
      expect([2, 3]).toContain(rayFacet[facet]);
    }
    for (const facet of [12 + 2, 12 + 3]) expect(rayWallMm[facet]).toBeCloseTo(1.5, 6);
  });

  it('limits the ball, not the ray, by a near side face', () => {
    // Centers of the end facets stand 10/3 mm and 20/3 mm above the floor of a bar 10 mm high and 90 mm long.
    const { rayWallMm, ballWallMm } = wallsOf(box([0, 0, 0], [90, 60, 10]));
    for (const facet of [6, 7, 10, 11]) {
      expect(rayWallMm[facet]).toBeCloseTo(90, 4);
      expect(ballWallMm[facet]).toBeCloseTo((2 * 10) / 3, 5);
    }
  });

  it('reads the wall between concentric spheres within the faceting', () => {
    const { rayWallMm, ballWallMm } = wallsOf(hollowSphere(50, 48, 4));
    for (let facet = 0; facet < rayWallMm.length; facet++) {
      expect(Math.abs(rayWallMm[facet]! - 2)).toBeLessThan(0.01);
      expect(Math.abs(ballWallMm[facet]! - 2)).toBeLessThan(0.01);
    }
  });

  it('reads the diameter of a solid sphere and of the tube of a torus, closer the finer the facets', () => {
    expect(worst(wallsOf(icosphere(10, 3)).ballWallMm, 20)).toBeLessThan(0.045);
    expect(worst(wallsOf(icosphere(10, 4)).ballWallMm, 20)).toBeLessThan(0.022);
    expect(worst(wallsOf(torus(2, 0.5, 48, 24)).ballWallMm, 1)).toBeLessThan(0.14);
    expect(worst(wallsOf(torus(2, 0.5, 96, 48)).ballWallMm, 1)).toBeLessThan(0.07);
    expect(worst(wallsOf(torus(2, 0.5, 96, 48)).rayWallMm, 1)).toBeLessThan(0.003);
  });

  it('stays within a few percent where the ball touches thousands of facets at once', () => {
    const { ballWallMm } = wallsOf(icosphere(10, 5));
    expect(worst(ballWallMm, 20)).toBeLessThan(0.03);
  });

  it('finds no wall behind an open sheet', () => {
    const { rayWallMm, rayFacet, ballWallMm } = wallsOf(
      mesh([0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0], [0, 1, 2, 0, 2, 3]),
    );
    expect([...rayFacet]).toEqual([-1, -1]);
    expect([...rayWallMm, ...ballWallMm]).toEqual([NaN, NaN, NaN, NaN]);
  });

  it('measures the ball behind a sheet whose ray meets nothing', () => {
    // A facet at z = 0 looks up; below and beside its ray a second one at z = -3 looks down.
    const { rayFacet, ballWallMm } = wallsOf(
      mesh([0, 0, 0, 3, 0, 0, 0, 3, 0, 2, 1, -3, 2, 9, -3, 9, 1, -3], [0, 1, 2, 3, 4, 5]),
    );
    expect(rayFacet[0]).toBe(-1);
    // Nearest corner (2, 1, -3) from the center (1, 1, 0): (1 + 9) / 3.
    expect(ballWallMm[0]).toBeCloseTo(10 / 3, 6);
  });

  it('leaves a facet without area unmeasured and unhit', () => {
    const slab = box([0, 0, 0], [9, 9, 1]);
    const withSliver = {
      positions: slab.positions,
      facets: Uint32Array.from([...slab.facets, 0, 0, 1, 0, 6, 6]),
    };
    const { rayWallMm, rayFacet, ballWallMm } = wallsOf(withSliver);
    expect([rayWallMm[12], rayFacet[12], ballWallMm[12]]).toEqual([NaN, -1, NaN]);
    expect([...rayFacet].slice(0, 12).every((facet) => facet >= 0 && facet < 12)).toBe(true);
  });

  it('measures an empty mesh without a word', () => {
    const { rayWallMm, index } = wallsOf(mesh([], []));
    expect(rayWallMm.length).toBe(0);
    expect(castRay(index, [0, 0, 0], [0, 0, 1])).toBeNull();
    expect(findSelfTouching(index, mesh([], [])).length).toBe(0);
  });
});

describe('single rays', () => {
  const { index } = wallsOf(box([0, 0, 0], [4, 4, 4]));

  it('meets the near face from outside and the far face from inside', () => {
    expect(castRay(index, [1, 2, 10], [0, 0, -2])?.distanceMm).toBeCloseTo(6, 12);
    expect(castRay(index, [1, 2, 1], [0, 0, -2])?.distanceMm).toBeCloseTo(1, 12);
    expect(castRay(index, [-100, 1, 2], [1, 0, 0])?.distanceMm).toBeCloseTo(100, 10);
  });

  it('is not lost on an edge, a corner or a diagonal between facets', () => {
    expect(castRay(index, [2, 2, 9], [0, 0, -1])?.distanceMm).toBeCloseTo(5, 12);
    expect(castRay(index, [-1, -1, -1], [1, 1, 1])?.distanceMm).toBeCloseTo(Math.sqrt(3), 12);
    expect(castRay(index, [-2, -2, 2], [1, 1, 0])?.distanceMm).toBeCloseTo(Math.sqrt(8), 12);
  });

  it('misses beside, behind and without a direction', () => {
    expect(castRay(index, [5, 2, 10], [0, 0, -1])).toBeNull();
    expect(castRay(index, [1, 2, 10], [0, 0, 1])).toBeNull();
    expect(castRay(index, [1, 2, 10], [0, 0, 0])).toBeNull();
  });
});

describe('reach along the pull', () => {
  it('reaches the inside of a tray from above, its floor from below, its upright sides from both', () => {
    const reach = reachOf(tray([40, 30, 10], 2), [0, 0, 1]);
    const { fromShowSide, fromCoreSide } = reachBit;
    expect([...reach.subarray(0, 2)]).toEqual([fromCoreSide, fromCoreSide]);
    expect([...reach.subarray(2, 4)]).toEqual([fromShowSide, fromShowSide]);
    // Outer walls stand upright; inner walls have the floor below them.
    expect(new Set(reach.subarray(4, 12))).toEqual(new Set([fromShowSide | fromCoreSide]));
    expect(new Set(reach.subarray(20, 28))).toEqual(new Set([fromShowSide]));
  });

  it('reaches no wall of a closed hollow, and turns with the pull', () => {
    const hollow = hollowSphere(10, 8, 2);
    const reach = reachOf(hollow, [0.6, 0, 0.8]);
    const outside = hollow.facets.length / 6;
    expect(reach.subarray(outside).every((bits) => bits === 0)).toBe(true);
    expect(reach.subarray(0, outside).every((bits) => bits !== 0)).toBe(true);
    const back = reachOf(hollow, [-0.6, 0, -0.8]);
    const swapped = [0, 2, 1, 3];
    expect([...back]).toEqual(Array.from(reach, (bits) => swapped[bits]));
  });
});

describe('facets that touch without sharing a corner', () => {
  it('finds none on sound bodies', () => {
    for (const body of [
      box([0, 0, 0], [3, 2, 1]),
      icosphere(5, 3),
      torus(4, 1, 40, 20),
      tray([9, 9, 9], 1, 5),
    ]) {
      expect([...touching(body)]).toEqual([]);
    }
  });

  it('finds both sides where two bodies cut each other', () => {
    const pair = joinMeshes(box([0, 0, 0], [4, 4, 4]), box([1, 1, 2], [3, 3, 9]));
    // The top of the first (2, 3) is pierced by the four sides of the second (12 + 4 to 12 + 11).
    const found = touching(pair);
    expect(found.includes(2) && found.includes(3)).toBe(true);
    expect([...found].every((facet) => facet === 2 || facet === 3 || (facet >= 16 && facet <= 23))).toBe(
      true,
    );
    expect(found.length).toBeGreaterThanOrEqual(6);
  });

  it('finds faces that lie on each other, and a corner that stands on a face', () => {
    const stacked = joinMeshes(box([0, 0, 0], [4, 4, 4]), box([1, 1, 4], [3, 2, 5]));
    expect([...touching(stacked)]).toEqual(expect.arrayContaining([2, 12, 13]));
    const standing = joinMeshes(box([0, 0, 0], [4, 4, 4]), mesh([2, 1, 4, 3, 1, 6, 2, 1, 6], [0, 1, 2]));
    expect([...touching(standing)]).toEqual([2, 12]);
  });

  it('takes neighbors whose corners do not match for neighbors', () => {
    // A square of two facets beside one of four: they meet along x = 1 with a corner halfway.
    const sheet = mesh(
      [0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0, 2, 0, 0, 2, 1, 0, 1, 0.5, 0],
      [0, 1, 2, 0, 2, 3, 1, 4, 6, 6, 4, 5, 6, 5, 2],
    );
    expect([...touching(sheet)]).toEqual([]);
    const bent = mapVertices(sheet, ([x, y]) => [Math.min(x, 1), y, Math.max(0, x - 1)]);
    expect([...touching(bent)]).toEqual([]);
  });

  it('leaves a gap and a shallow graze alone', () => {
    const apart = joinMeshes(box([0, 0, 0], [4, 4, 4]), box([1, 1, 4.001], [3, 2, 5]));
    expect([...touching(apart)]).toEqual([]);
  });
});
