/** Solids with known volume, area, centroid and moments; each row of `mesh-integrals.json` names its source. */
import { describe, expect, it } from 'vitest';
import { buildAdjacency } from '../../src/core/mesh/adjacency';
import { integrate } from '../../src/core/mesh/integrals';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { dodecahedron } from '../support/dodecahedron';
import { box, icosphere, torus } from '../support/meshes';
import { expectRow, inputOf, type CheckRow } from '../support/checkRows';
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
  'MESH-ICOSAHEDRON': icosphere(1, 0),
  'MESH-TORUS-5-2': torus(5, 2, 240, 120),
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

function meshOf(row: CheckRow): IndexedMesh {
  return row.id.startsWith('MESH-DODECAHEDRON') ? dodecahedron(inputOf(row, 'radius_mm')) : meshes[row.id]!;
}

describe('integrals over solids with known answers', () => {
  for (const row of rows as unknown as readonly CheckRow[]) {
    it(`${row.id}: ${row.quantity} (${row.source})`, () => {
      const mesh = meshOf(row);
      expect(buildAdjacency(mesh)).toMatchObject({ openEdges: 0, crowdedEdges: 0, misorientedEdges: 0 });
      const { volume, area, centroid, secondMoments } = integrate(mesh);
      expectRow(row, {
        V_mm3: volume,
        A_mm2: area,
        centroid_mm: centroid ?? [],
        int_xx_mm5: secondMoments.xx,
        int_yy_mm5: secondMoments.yy,
        int_zz_mm5: secondMoments.zz,
        int_xy_mm5: secondMoments.xy,
        int_yz_mm5: secondMoments.yz,
        int_zx_mm5: secondMoments.zx,
        angle_deficit_rad: angleDeficitRad(mesh),
      });
      if (row.inputs['vertices'] === undefined) return;
      expect(mesh.positions.length / 3).toBe(row.inputs['vertices']);
      expect(mesh.facets.length / 3).toBe(row.inputs['faces']);
    });
  }
});
