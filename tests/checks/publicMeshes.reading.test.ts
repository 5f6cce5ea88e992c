/**
 * Real enclosure meshes against the figures that two independent programs worked out for them
 * (`public/manifest.json`; definitions in `public/MANIFEST.md`). All figures are in the units of the file.
 */
import { describe, expect, it } from 'vitest';
import { buildAdjacency } from '../../src/core/mesh/adjacency';
import { findHealth } from '../../src/core/mesh/health';
import { integrate } from '../../src/core/mesh/integrals';
import { readMeshFile } from '../../src/core/mesh/read/readMeshFile';
import { weld } from '../../src/core/mesh/weld';
import { publicMesh, publicMeshes, publicTitle } from '../support/publicMeshes';

/** Issue bound on volume and area, relative. */
const within = 1e-5;

describe(publicTitle('enclosure meshes, reading'), () => {
  for (const [path, reference] of publicMeshes) {
    it(`${path}: triangles, volume, area, box and topology`, () => {
      const file = readMeshFile(publicMesh(path), path);
      const { mesh, degenerateFacets } = weld(file);
      const health = findHealth(mesh, degenerateFacets);
      const adjacency = buildAdjacency(mesh);
      const sums = integrate(mesh);
      const topology = reference.topology_exact_weld;

      expect(file.corners.length / 9).toBe(reference.triangles);
      expect(Math.abs(sums.volume / reference.signed_volume - 1)).toBeLessThan(within);
      expect(Math.abs(sums.area / reference.area - 1)).toBeLessThan(within);
      for (const axis of [0, 1, 2] as const) {
        const off = 1e-7 * reference.bbox_diagonal;
        expect(Math.abs(sums.boxMin[axis] + file.origin[axis] - reference.bbox_min[axis]!)).toBeLessThan(off);
        expect(Math.abs(sums.boxMax[axis] + file.origin[axis] - reference.bbox_max[axis]!)).toBeLessThan(off);
      }
      expect({
        vertices: health.vertexCount,
        edges: adjacency.edges,
        degenerate_triangles: health.degenerateFacets,
        duplicate_faces: health.duplicateFacets,
        boundary_edges: health.openEdges,
        edges_over_2_faces: health.crowdedEdges,
        misoriented_edges: adjacency.misorientedEdges,
        manifold_watertight: health.watertight,
        components: health.bodies.length,
      }).toEqual({
        vertices: topology.vertices,
        edges: topology.edges,
        degenerate_triangles: topology.degenerate_triangles,
        duplicate_faces: topology.duplicate_faces,
        boundary_edges: topology.boundary_edges,
        edges_over_2_faces: topology.edges_over_2_faces,
        misoriented_edges: topology.misoriented_edges,
        manifold_watertight: topology.manifold_watertight,
        components: topology.components,
      });
    });
  }
});
