import { describe, expect, it } from 'vitest';
import { pointsInside } from '../../../src/core/mesh/containment';
import type { Vec3 } from '../../../src/core/mesh/types';
import { torus } from '../../support/meshes';

describe('points inside a closed surface', () => {
  it('tells the ring of a torus from its hole and its surroundings', () => {
    const ring = torus(10, 3, 64, 32);
    const all = Uint32Array.from({ length: ring.facets.length / 3 }, (_, facet) => facet);
    const points: Vec3[] = [
      [10.01, 0.02, 0.1],
      [0.01, 0.02, 0.1],
      [-7.6, 0.3, -0.4],
      [6.1, 7.9, 2.2],
      [10.01, 0.02, 5],
      [10.01, 0.02, -5],
      [40, 0.1, 0],
    ];
    expect(pointsInside(ring, all, points)).toEqual([true, false, true, true, false, false, false]);
  });
});
