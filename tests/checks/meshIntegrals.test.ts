/** Solids with known volume, area, centroid and moments; each row of `mesh-integrals.json` names its source. */
import { describe, expect, it } from 'vitest';
import { buildAdjacency } from '../../src/core/mesh/adjacency';
import { integrate } from '../../src/core/mesh/integrals';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { box, icosphere, torus } from '../support/meshes';
import rows from './mesh-integrals.json';

const cornerTetrahedron: IndexedMesh = {
  positions: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1),
  facets: Uint32Array.of(0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3),
};

const meshes: Readonly<Record<string, IndexedMesh>> = {
  'MESH-TET': cornerTetrahedron,
  'MESH-CUBE': box([0, 0, 0], [1, 1, 1]),
  'MESH-TORUS': torus(2, 0.5, 240, 120),
  'MESH-ICO-0': icosphere(1, 0),
  'MESH-ICO-2': icosphere(1, 2),
  'MESH-ICO-4': icosphere(1, 4),
};

/** Sum over the vertices of 2 pi less the angles of their facets (Gauss-Bonnet: 2 pi times the Euler number). */
function angleDeficitRad({ positions, facets }: IndexedMesh): number {
  let deficit = 2 * Math.PI * (positions.length / 3);
  const at = (vertex: number) => positions.subarray(3 * vertex, 3 * vertex + 3);
  for (let corner = 0; corner < facets.length; corner++) {
    const first = corner - (corner % 3);
    const apex = at(facets[corner]!);
    const u = at(facets[first + ((corner + 1) % 3)]!).map((c, axis) => c - apex[axis]!);
    const v = at(facets[first + ((corner + 2) % 3)]!).map((c, axis) => c - apex[axis]!);
    const dot = u[0]! * v[0]! + u[1]! * v[1]! + u[2]! * v[2]!;
    deficit -= Math.acos(dot / (Math.hypot(...u) * Math.hypot(...v)));
  }
  return deficit;
}

describe('integrals over solids with known answers', () => {
  for (const row of rows) {
    it(`${row.id}: ${row.quantity} (${row.source})`, () => {
      const mesh = meshes[row.id]!;
      const sums = integrate(mesh);
      const { expected } = row;
      const near = (got: number, wanted: number) =>
        expect(Math.abs(got / wanted - 1)).toBeLessThanOrEqual(row.tolerance.rel);
      expect(buildAdjacency(mesh)).toMatchObject({ openEdges: 0, crowdedEdges: 0, misorientedEdges: 0 });
      near(sums.volume, expected.V_mm3);
      near(sums.area, expected.A_mm2);
      expected.centroid_mm?.forEach((wanted, axis) => near(sums.centroid![axis]!, wanted));
      if (expected.int_xx_mm5 !== undefined) {
        near(sums.secondMoments.xx, expected.int_xx_mm5);
        near(sums.secondMoments.yy, expected.int_xx_mm5);
        near(sums.secondMoments.zz, expected.int_xx_mm5);
      }
      if (expected.int_xy_mm5 !== undefined) {
        near(sums.secondMoments.xy, expected.int_xy_mm5);
        near(sums.secondMoments.yz, expected.int_xy_mm5);
        near(sums.secondMoments.zx, expected.int_xy_mm5);
      }
      if (expected.angle_deficit_rad !== undefined) near(angleDeficitRad(mesh), expected.angle_deficit_rad);
      if (row.inputs.vertices !== undefined) {
        expect(mesh.positions.length / 3).toBe(row.inputs.vertices);
        expect(mesh.facets.length / 3).toBe(row.inputs.faces);
      }
    });
  }
});
