import { describe, expect, it } from 'vitest';
import { buildAdjacency } from '../../../src/core/mesh/adjacency';
import { edgeTurns } from '../../../src/core/mesh/edgeTurns';
import { facetGeometry } from '../../../src/core/mesh/facetGeometry';
import { buildSurfaceIndex } from '../../../src/core/mesh/surfaceIndex';
import { stacked } from '../../../src/core/stone/pours/boxSolid';
import { findKnifeEdges } from '../../../src/core/stone/pours/knifeEdges';

/** Knife edges of an upright prism, 40 mm tall. */
function knifeEdgesOf(...outline: readonly (readonly [number, number])[]) {
  const mesh = stacked([
    [outline, 0],
    [outline, 40],
  ]);
  const { neighbor } = buildAdjacency(mesh);
  const { normal } = facetGeometry(mesh);
  const turnRad = edgeTurns(mesh, neighbor, normal);
  return findKnifeEdges(mesh, buildSurfaceIndex(mesh), neighbor, turnRad, normal);
}

const tangent = (deg: number) => Math.tan((deg * Math.PI) / 180);

describe('knife edges', () => {
  it.each([1, 5, 20, 29])('tell an edge of %d degrees, its length and where it stands', (deg) => {
    const { knifeEdges } = knifeEdgesOf([0, 0], [30, 0], [30, 30 * tangent(deg)]);
    expect(knifeEdges!.sharpestDeg).toBeCloseTo(deg, 3);
    expect(knifeEdges!.atMm.slice(0, 2)).toEqual([0, 0]);
    expect(knifeEdges!.lengthMm).toBeCloseTo(40, 4);
  });

  it('pass over square edges', () => {
    expect(knifeEdgesOf([0, 0], [10, 0], [10, 10], [0, 10]).knifeEdges).toBeNull();
  });

  it('count no flake that nowhere is as thick as the least stone', () => {
    const { knifeEdges, onKnife } = knifeEdgesOf([0, 0], [5, 0], [5, 0.04]);
    expect(knifeEdges).toBeNull();
    expect(onKnife).toContain(1);
  });

  it('count no wrinkle: a face a micrometer wide that turns by 45 degrees', () => {
    const wrinkled = knifeEdgesOf([10, 0], [10, 10], [0.001, 10], [0.001, 0.001], [0, 0]);
    expect(wrinkled.knifeEdges).toBeNull();
    // The same lip drawn large is an edge.
    const lipped = knifeEdgesOf([10, 0], [10, 10], [1, 10], [1, 1], [0, 0]);
    expect(lipped.knifeEdges!.sharpestDeg).toBeCloseTo(45, 3);
    expect(lipped.knifeEdges!.lengthMm).toBeCloseTo(40, 4);
  });
});
