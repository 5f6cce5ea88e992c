import { describe, expect, it } from 'vitest';
import { measureBallWalls } from '../../../src/core/mesh/ballWall';
import { castRay, measureRayWalls } from '../../../src/core/mesh/rayWall';
import { measureReach } from '../../../src/core/mesh/reach';
import { buildSurfaceIndex, type SurfaceIndex } from '../../../src/core/mesh/surfaceIndex';
import { allSlots } from '../../support/allSlots';
import { indexElsewhere } from '../../support/indexElsewhere';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { hollowSphere, icosphere, mapVertices, shellOfTriangles, torus } from '../../support/meshes';
import { roundedShell } from '../../support/roundedShell';

const measure = (mesh: IndexedMesh, kernelFromFacets: number) =>
  measureOn(buildSurfaceIndex(mesh, kernelFromFacets));

function measureOn(index: SurfaceIndex) {
  const slots = allSlots(index);
  const rayWallMm = new Float32Array(index.facetCount);
  const rayFacet = new Int32Array(index.facetCount);
  const ballWallMm = new Float32Array(index.facetCount);
  const reach = new Uint8Array(index.facetCount);
  measureRayWalls(index, slots, rayWallMm, rayFacet);
  measureBallWalls(index, slots, rayWallMm, ballWallMm);
  measureReach(index, [0.6, 0, 0.8], slots, reach);
  return { index, rayWallMm, rayFacet, ballWallMm, reach };
}

const turned = (mesh: IndexedMesh) =>
  mapVertices(mesh, ([x, y, z]) => {
    const [u, v] = [0.8 * x - 0.6 * y, 0.6 * x + 0.8 * y];
    return [u, 0.28 * v - 0.96 * z, 0.96 * v + 0.28 * z];
  });
const far = (mesh: IndexedMesh) => mapVertices(mesh, ([x, y, z]) => [x + 900, y - 1400, z + 300]);

describe('the walls kernel', () => {
  it.each([
    ['a dome shell of slivers', shellOfTriangles(40_000)],
    ['a box shell of even facets', roundedShell(40_000)],
    ['a box shell turned', turned(roundedShell(20_000))],
    ['a box shell far from the origin', far(roundedShell(20_000))],
    ['a hollow sphere', hollowSphere(50, 48, 4)],
    ['a torus', torus(20, 6, 120, 60)],
  ])('gives to the last bit what grid and tree give: %s', (_, mesh) => {
    const plain = measure(mesh, Infinity);
    const fast = measure(mesh, 0);
    expect(plain.index.kernel).toBeNull();
    expect(fast.index.kernel).not.toBeNull();
    for (const name of ['rayWallMm', 'rayFacet', 'ballWallMm', 'reach'] as const) {
      expect(fast[name]).toEqual(plain[name]);
    }
    const inward: Vec3 = [-0.3, 0.2, -0.9];
    const { boxMinMm, boxMaxMm } = fast.index;
    for (let ray = 0; ray < 200; ray++) {
      const at = [0.13, 0.29, 0.47].map(
        (step, axis) => boxMinMm[axis]! + ((step * ray) % 1) * (boxMaxMm[axis]! - boxMinMm[axis]!),
      ) as unknown as Vec3;
      expect(castRay(fast.index, at, inward)).toEqual(castRay(plain.index, at, inward));
    }
  });

  it.each([Infinity, 0])(
    'answers alike from the plain arrays of an index, for another thread',
    (kernelFromFacets) => {
      const here = measure(shellOfTriangles(8000), kernelFromFacets);
      const there = measureOn(indexElsewhere(here.index));
      expect(there.index.kernel === null).toBe(here.index.kernel === null);
      for (const name of ['rayWallMm', 'rayFacet', 'ballWallMm', 'reach'] as const) {
        expect(there[name]).toEqual(here[name]);
      }
    },
  );

  it.each([1, 100, 10_000])('follows rays that start %i diameters away as grid and tree do', (diameters) => {
    const radiusMm = 20;
    const sphere = icosphere(radiusMm, 5);
    const fast = buildSurfaceIndex(sphere, 0);
    const plain = buildSurfaceIndex(sphere, Infinity);
    const farMm = 2 * radiusMm * diameters;
    let met = 0;
    for (let turn = 0; turn < 300; turn++) {
      // Around the sphere on a spiral; every third ray passes beside it.
      const height = 1 - (2 * (turn + 0.5)) / 300;
      const around = 2.4 * turn;
      const across = Math.sqrt(1 - height * height);
      const out: Vec3 = [across * Math.cos(around), across * Math.sin(around), height];
      const aside = (turn % 3) * 0.6 * radiusMm;
      const origin: Vec3 = [
        farMm * out[0] - aside * Math.sin(around),
        farMm * out[1] + aside * Math.cos(around),
        farMm * out[2],
      ];
      const inward: Vec3 = [-out[0], -out[1], -out[2]];
      const hit = castRay(fast, origin, inward);
      expect(hit).toEqual(castRay(plain, origin, inward));
      expect(hit === null).toBe(turn % 3 === 2);
      if (hit === null) continue;
      met++;
      // The facets cut up to 0.2 % off the sphere.
      const roundMm = farMm - Math.sqrt(radiusMm ** 2 - aside ** 2);
      expect(Math.abs(hit.distanceMm - roundMm)).toBeLessThan(0.01 * radiusMm);
    }
    expect(met).toBe(200);
  });

  it('measures a round solid, where a ball touches hundreds of facets, to the few percent that are promised', () => {
    const { ballWallMm } = measure(icosphere(20, 5), 0);
    for (const ball of ballWallMm) {
      expect(ball).toBeGreaterThan(0.95 * 40);
      expect(ball).toBeLessThanOrEqual(40);
    }
  });
});
