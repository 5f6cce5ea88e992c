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

  it('measures a round solid, where a ball touches hundreds of facets, to the few percent that are promised', () => {
    const { ballWallMm } = measure(icosphere(20, 5), 0);
    for (const ball of ballWallMm) {
      expect(ball).toBeGreaterThan(0.95 * 40);
      expect(ball).toBeLessThanOrEqual(40);
    }
  });
});
