import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findHealth } from '../../../src/core/mesh/health';
import { integrate } from '../../../src/core/mesh/integrals';
import type { FileMesh, IndexedMesh } from '../../../src/core/mesh/types';
import { weld } from '../../../src/core/mesh/weld';
import { box, cornersOf, icosphere, joinMeshes, tray } from '../../support/meshes';
import { propertySeed } from '../../support/propertySeed';
import { gridSoup } from '../../support/randomMeshes';

const asFile = (corners: Float64Array | Float32Array): FileMesh => ({
  format: 'stl-binary',
  declaredUnit: null,
  corners,
  origin: [0, 0, 0],
  notes: [],
});
const weldMesh = (mesh: IndexedMesh) => weld(asFile(cornersOf(mesh)));

describe(`weld (seed ${propertySeed})`, () => {
  it('gives back the vertices that a mesh shared', () => {
    const welded = weldMesh(icosphere(10, 3));
    expect(welded).toMatchObject({ degenerateFacets: 0, weldDistance: 0, notes: [] });
    expect(welded.mesh.positions.length / 3).toBe(642);
  });

  it('takes 0 and -0 for the same place', () => {
    const { mesh } = weld(asFile(Float64Array.of(0, -0, 0, 1, 0, 0, 0, 1, 0, -0, 0, -0, 0, 1, -0, 0, 0, 1)));
    expect(mesh.positions.length / 3).toBe(4);
    expect(Object.is(mesh.positions[1], 0)).toBe(true);
  });

  it('keeps apart corners that differ in the last bit', () => {
    const next = 1 + Number.EPSILON;
    const { mesh } = weld(asFile(Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0, 5, 5, 5, next, 0, 0, 9, 0, 0)));
    expect(mesh.positions.length / 3).toBe(6);
  });

  it('changes nothing the second time', () => {
    fc.assert(
      fc.property(gridSoup, (mesh) => {
        let once;
        try {
          once = weldMesh(mesh);
        } catch (error) {
          expect(error).toMatchObject({ code: 'mesh.allDegenerate' });
          return;
        }
        const twice = weldMesh(once.mesh);
        expect(cornersOf(twice.mesh)).toEqual(cornersOf(once.mesh));
        expect(twice.mesh.positions.length).toBe(once.mesh.positions.length);
        expect(twice.degenerateFacets).toBe(0);
      }),
      { numRuns: 300 },
    );
  });

  it('joins corners that miss each other by rounding, and only then', () => {
    const exact = tray([60, 40, 20], 2);
    const corners = cornersOf(exact);
    const shaken = (by: number) => corners.map((value, at) => value + by * Math.sin(12.9898 * at));
    const close = weld(asFile(shaken(1e-5)));
    expect(close.weldDistance).toBeGreaterThan(0);
    expect(findHealth(close.mesh).watertight).toBe(true);
    expect(integrate(close.mesh).volume).toBeCloseTo(11712, 0);
    const apart = weld(asFile(shaken(0.02)));
    expect(apart.weldDistance).toBe(0);
    expect(apart.notes.join()).toMatch(/too far to join without changing the part/);
  });

  it('leaves a single gap in an otherwise joined mesh as it stands when joining does not make it sound', () => {
    const sphere = icosphere(10, 2);
    const corners = cornersOf(joinMeshes(sphere, box([20, 0, 0], [21, 1, 1])));
    corners[0]! += 1e-6;
    // A second, wide gap: one facet missing.
    const { mesh, weldDistance } = weld(asFile(corners.subarray(0, corners.length - 9)));
    expect(weldDistance).toBe(0);
    expect(findHealth(mesh).openEdges).toBeGreaterThan(3);
  });

  it('leaves out flat facets but keeps those that close the surface', () => {
    // One facet of the box is cut in two at the middle m of its edge (0 to 1); the sliver 0, m, 1 fills the seam.
    const cube = box([0, 0, 0], [2, 2, 2]);
    const positions = Float64Array.of(...cube.positions, 1, 0, 0);
    const facets = [...cube.facets];
    const split = facets.findIndex((_, at) => at % 3 === 0 && facets.slice(at, at + 3).join() === '0,1,5');
    facets.splice(split, 3, 0, 8, 5, 8, 1, 5);
    const seam = weldMesh({ positions, facets: Uint32Array.from([...facets, 0, 1, 8]) });
    expect(seam.degenerateFacets).toBe(0);
    const health = findHealth(seam.mesh, seam.degenerateFacets);
    expect(health).toMatchObject({ watertight: true, degenerateFacets: 1, openEdges: 0 });
    expect([...health.show.degenerateFacets]).toEqual([13]);

    const stray = weldMesh({ positions, facets: Uint32Array.from([...cube.facets, 0, 1, 8, 0, 0, 1]) });
    expect(stray.degenerateFacets).toBe(2);
    expect(stray.mesh.positions.length / 3).toBe(8);
    expect(findHealth(stray.mesh, 2)).toMatchObject({ watertight: true, degenerateFacets: 2 });
  });
});
