/**
 * Ray and ball wall against rows of `mesh-walls.json`, and slanting rays against `mesh-cone.json`: closed forms of plane
 * geometry, worked out outside the project.
 */
import { describe, expect, it } from 'vitest';
import { measureBallWalls } from '../../src/core/mesh/ballWall';
import { refineForMeasuring } from '../../src/core/mesh/refineForMeasuring';
import { castRay, measureRayWalls } from '../../src/core/mesh/rayWall';
import { buildSurfaceIndex } from '../../src/core/mesh/surfaceIndex';
import { allSlots } from '../support/allSlots';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { box } from '../support/meshes';
import coneRows from './mesh-cone.json';
import rows from './mesh-walls.json';

/**
 * Wedge with its edge along y through the origin, one face on z = 0, closed by a far end and two sides. Facet 0, on
 * the face z = 0, has its center at the given distance from the edge and far from the sides.
 */
function wedge(angleDeg: number, distanceMm: number): IndexedMesh {
  const farMm = 10 * distanceMm;
  const heightMm = farMm * Math.tan((angleDeg * Math.PI) / 180);
  const side = 10 * distanceMm;
  const positions = [
    [0, -side, 0],
    [farMm, -side, 0],
    [farMm, -side, heightMm],
    [0, side, 0],
    [farMm, side, 0],
    [farMm, side, heightMm],
    // Corners of facet 0: its center is at x = distance, y = 0.
    [0.7 * distanceMm, -1, 0],
    [0.9 * distanceMm, 2, 0],
    [1.4 * distanceMm, -1, 0],
  ];
  const facets = [
    [6, 7, 8],
    // The rest of the face z = 0 around facet 0.
    [0, 3, 7],
    [0, 7, 6],
    [3, 4, 7],
    [7, 4, 8],
    [4, 1, 8],
    [8, 1, 6],
    [1, 0, 6],
    // Leaning face, far end, sides.
    [0, 2, 5],
    [0, 5, 3],
    [1, 4, 5],
    [1, 5, 2],
    [0, 1, 2],
    [3, 5, 4],
  ];
  return { positions: Float64Array.from(positions.flat()), facets: Uint32Array.from(facets.flat()) };
}

describe('walls of wedges', () => {
  it.each(rows)('$id', ({ inputs, expected, tolerance }) => {
    const index = buildSurfaceIndex(wedge(inputs.wedge_angle_deg, inputs.distance_from_apex_mm));
    const rayWallMm = new Float32Array(index.facetCount);
    const ballWallMm = new Float32Array(index.facetCount);
    measureRayWalls(index, allSlots(index), rayWallMm, new Int32Array(index.facetCount));
    measureBallWalls(index, allSlots(index), rayWallMm, ballWallMm);
    expect(Math.abs(rayWallMm[0]! / expected.ray_mm - 1)).toBeLessThanOrEqual(tolerance.rel);
    expect(Math.abs(ballWallMm[0]! / expected.ball_mm - 1)).toBeLessThanOrEqual(tolerance.rel);
  });
});

describe('rays over a cone from a face of a slab', () => {
  /** Bands of equal solid angle, and directions in each. */
  const bands = 100;
  const perBand = 60;

  it.each(coneRows)('$id', ({ inputs, expected, tolerance }) => {
    const thickMm = inputs.slab_thickness_mm;
    const slab = refineForMeasuring(box([-30, -30, 0], [30, 30, thickMm])).mesh;
    const index = buildSurfaceIndex(slab);
    const leastCosine = Math.cos((inputs.cone_full_angle_deg * Math.PI) / 360);
    let sumMm = 0;
    for (let band = 0; band < bands; band++) {
      const cosine = leastCosine + ((1 - leastCosine) * (band + 0.5)) / bands;
      const sine = Math.sqrt(1 - cosine * cosine);
      for (let around = 0; around < perBand; around++) {
        const turn = (2 * Math.PI * (around + 0.5)) / perBand;
        const met = castRay(index, [0.3, 0.4, 1e-9], [sine * Math.cos(turn), sine * Math.sin(turn), cosine]);
        sumMm += met?.distanceMm ?? NaN;
      }
    }
    const meanMm = sumMm / (bands * perBand);
    expect(Math.abs(meanMm / expected.mean_ray_mm - 1)).toBeLessThanOrEqual(tolerance.rel);
  });
});
