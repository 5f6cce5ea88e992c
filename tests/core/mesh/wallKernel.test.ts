/** The kernel against trying every facet, on surfaces where its float32 margins and its tree have most to get wrong. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureBallWalls } from '../../../src/core/mesh/ballWall';
import { castRay, measureRayWalls } from '../../../src/core/mesh/rayWall';
import { measureReach } from '../../../src/core/mesh/reach';
import { readMeshFile } from '../../../src/core/mesh/read/readMeshFile';
import { buildSurfaceIndex, type SurfaceIndex } from '../../../src/core/mesh/surfaceIndex';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { Problem } from '../../../src/core/problem';
import { allSlots } from '../../support/allSlots';
import { brokenFiles, brokenTitle } from '../../support/brokenFiles';
import { bruteFacet, bruteRay } from '../../support/bruteWalls';
import { hollowSphere, icosphere, mapVertices, shellOfTriangles, torus, tray } from '../../support/meshes';
import { propertySeed } from '../../support/propertySeed';
import { publicMesh, publicMeshes, publicTitle } from '../../support/publicMeshes';
import { roundedShell } from '../../support/roundedShell';

const pull: Vec3 = [0.6, 0, 0.8];

function measureOn(index: SurfaceIndex) {
  const slots = allSlots(index);
  const rayWallMm = new Float32Array(index.facetCount);
  const rayFacet = new Int32Array(index.facetCount);
  const ballWallMm = new Float32Array(index.facetCount);
  const reach = new Uint8Array(index.facetCount);
  measureRayWalls(index, slots, rayWallMm, rayFacet);
  measureBallWalls(index, slots, rayWallMm, ballWallMm);
  measureReach(index, pull, slots, reach);
  return { rayWallMm, rayFacet, ballWallMm, reach };
}

const turned = (mesh: IndexedMesh) =>
  mapVertices(mesh, ([x, y, z]) => {
    const [u, v] = [0.8 * x - 0.6 * y, 0.6 * x + 0.8 * y];
    return [u, 0.28 * v - 0.96 * z, 0.96 * v + 0.28 * z];
  });
const far = (mesh: IndexedMesh) => mapVertices(mesh, ([x, y, z]) => [x + 900, y - 1400, z + 300]);
const scaled = (mesh: IndexedMesh, by: number) => mapVertices(mesh, ([x, y, z]) => [by * x, by * y, by * z]);

const off = (value: number, expected: number) =>
  Number.isNaN(expected) && Number.isNaN(value) ? 0 : Math.abs(value / expected - 1);

/** @returns a number between 0 and 1, the next of a fixed row */
function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Holds some facets of a mesh, all of them when left out, and some rays through its box against brute force. */
function expectLikeBrute(mesh: IndexedMesh, { facets = Infinity, rays = 0, seed = 1 } = {}): void {
  const index = buildSurfaceIndex(mesh);
  const { facetCount, diagonalMm, boxMinMm, boxMaxMm } = index;
  const { rayWallMm, rayFacet, ballWallMm, reach } = measureOn(index);
  const next = chance(seed);
  for (let at = 0; at < Math.min(facets, facetCount); at++) {
    const facet = facets < facetCount ? Math.floor(next() * facetCount) : at;
    const expected = bruteFacet(mesh, facet, diagonalMm, [...pull]);
    const told = `facet ${facet}`;
    if (expected === null) {
      expect([rayWallMm[facet], ballWallMm[facet], reach[facet]], told).toEqual([NaN, NaN, 0]);
      continue;
    }
    expect(off(rayWallMm[facet]!, expected.rayMm), `ray of ${told}`).toBeLessThanOrEqual(1e-6);
    expect(off(ballWallMm[facet]!, expected.ballMm), `ball of ${told}`).toBeLessThanOrEqual(1e-5);
    expect(reach[facet], `reach of ${told}`).toBe(expected.reach);
    expect(rayFacet[facet]! < 0, told).toBe(Number.isNaN(expected.rayMm));
  }
  for (let ray = 0; ray < rays; ray++) {
    const at = boxMinMm.map((low, axis) => low + next() * (boxMaxMm[axis]! - low)) as [
      number,
      number,
      number,
    ];
    const away = [next() - 0.5, next() - 0.5, next() - 0.5];
    const length = Math.hypot(...away);
    const unit = away.map((value) => value / length) as [number, number, number];
    const expected = bruteRay(mesh, at, unit, -1, 0) ?? NaN;
    expect(off(castRay(index, at, unit)?.distanceMm ?? NaN, expected), `ray ${ray}`).toBeLessThan(1e-9);
  }
}

describe('the walls kernel', () => {
  it.each([
    ['a dome shell of slivers', shellOfTriangles(16_000)],
    ['a box shell of even facets', roundedShell(16_000)],
    ['a box shell turned', turned(roundedShell(10_000))],
    ['a box shell far from the origin', far(roundedShell(10_000))],
    ['a hollow sphere', hollowSphere(50, 48, 4)],
    ['a torus', torus(20, 6, 80, 40)],
  ])('measures what trying every facet measures: %s', (_, mesh) => {
    expectLikeBrute(mesh, { facets: 120, rays: 40 });
  });

  it.each([1e-9, 1e-3, 1e3, 1e9, 1e12])('does so on a tray %f times as large', (by) => {
    expectLikeBrute(scaled(tray([60, 40, 15], 2, 2), by), { rays: 40 });
  });

  it.each([1, 100, 10_000])('follows rays that start %i diameters away', (diameters) => {
    const radiusMm = 20;
    const sphere = icosphere(radiusMm, 5);
    const index = buildSurfaceIndex(sphere);
    const farMm = 2 * radiusMm * diameters;
    let met = 0;
    for (let turn = 0; turn < 300; turn++) {
      // Around the sphere on a spiral; every third ray passes beside it.
      const height = 1 - (2 * (turn + 0.5)) / 300;
      const around = 2.4 * turn;
      const across = Math.sqrt(1 - height * height);
      const out: Vec3 = [across * Math.cos(around), across * Math.sin(around), height];
      const aside = (turn % 3) * 0.6 * radiusMm;
      const origin: [number, number, number] = [
        farMm * out[0] - aside * Math.sin(around),
        farMm * out[1] + aside * Math.cos(around),
        farMm * out[2],
      ];
      const inward: [number, number, number] = [-out[0], -out[1], -out[2]];
      const hit = castRay(index, origin, inward);
      expect(hit === null).toBe(turn % 3 === 2);
      // Trying every facet is slow.
      if (turn % 6 < 2)
        expect(off(hit!.distanceMm, bruteRay(sphere, origin, inward, -1, 0)!)).toBeLessThan(1e-9);
      if (hit === null) continue;
      met++;
      // The facets cut up to 0.2 % off the sphere.
      const roundMm = farMm - Math.sqrt(radiusMm ** 2 - aside ** 2);
      expect(Math.abs(hit.distanceMm - roundMm)).toBeLessThan(0.01 * radiusMm);
    }
    expect(met).toBe(200);
  });

  it('measures a round solid, where a ball touches hundreds of facets, to the few percent that are promised', () => {
    const { ballWallMm } = measureOn(buildSurfaceIndex(icosphere(20, 5)));
    for (const ball of ballWallMm) {
      expect(ball).toBeGreaterThan(0.95 * 40);
      expect(ball).toBeLessThanOrEqual(40);
    }
  });

  it('has an answer for no surface at all', () => {
    const index = buildSurfaceIndex({ positions: new Float64Array(0), facets: new Uint32Array(0) });
    expect(castRay(index, [0, 0, 1], [0, 0, -1])).toBeNull();
    expect(measureOn(index).rayWallMm).toHaveLength(0);
  });
});

describe(`the walls kernel on any shell (seed ${propertySeed})`, () => {
  it('measures what trying every facet measures', () => {
    const shell = fc.record({
      triangles: fc.integer({ min: 200, max: 6000 }),
      isRounded: fc.boolean(),
      isTurned: fc.boolean(),
      isFar: fc.boolean(),
      size: fc.constantFrom(1e-3, 1, 1e3),
      seed: fc.nat(),
    });
    fc.assert(
      fc.property(shell, ({ triangles, isRounded, isTurned, isFar, size, seed }) => {
        const drawn = isRounded ? roundedShell(triangles) : shellOfTriangles(triangles);
        const placed = isFar ? far(drawn) : drawn;
        expectLikeBrute(scaled(isTurned ? turned(placed) : placed, size), { facets: 12, rays: 8, seed });
      }),
      { numRuns: 40 },
    );
  });
});

/** Facets as read, those without area included. */
function meshOf(bytes: Uint8Array, name: string): IndexedMesh {
  const { corners } = readMeshFile(bytes, name);
  return {
    positions: Float64Array.from(corners),
    facets: Uint32Array.from({ length: corners.length / 3 }, (_, corner) => corner),
  };
}

describe(publicTitle('the walls kernel'), () => {
  it.each(publicMeshes.map(([path]) => path))('measures what trying every facet measures: %s', (path) => {
    expectLikeBrute(meshOf(publicMesh(path), path), { facets: 60, rays: 30 });
  });
});

describe(`the walls kernel: ${brokenTitle}`, () => {
  it.each(brokenFiles)('measures what trying every facet measures: $name', ({ name, bytes }) => {
    let mesh: IndexedMesh;
    try {
      mesh = meshOf(bytes(), name);
    } catch (error) {
      // Refused at the door, as nasty.test.ts asks.
      expect(error).toBeInstanceOf(Problem);
      return;
    }
    expectLikeBrute(mesh, { facets: 100, rays: 20 });
  });
});
