import { describe, expect, test } from 'vitest';
import { buildAdjacency } from '../../../src/core/mesh/adjacency';
import { convexRadii, outerEdges } from '../../../src/core/mesh/cornerRadius';
import { edgeTurns } from '../../../src/core/mesh/edgeTurns';
import { facetGeometry } from '../../../src/core/mesh/facetGeometry';
import type { IndexedMesh } from '../../../src/core/mesh/types';

const sides = 24;
const radiusMm = 5;

/** A prism whose sides touch a cylinder of that radius; ends are fans round their middle. */
function prism(): IndexedMesh {
  const away = radiusMm / Math.cos(Math.PI / sides);
  const positions: number[] = [];
  for (const z of [0, 10])
    for (let i = 0; i < sides; i++) {
      const angle = ((2 * i + 1) * Math.PI) / sides;
      positions.push(away * Math.cos(angle), away * Math.sin(angle), z);
    }
  positions.push(0, 0, 0, 0, 0, 10);
  const facets: number[] = [];
  for (let i = 0; i < sides; i++) {
    const next = (i + 1) % sides;
    facets.push(i, next, sides + next, i, sides + next, sides + i);
    facets.push(2 * sides, next, i, 2 * sides + 1, sides + i, sides + next);
  }
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}

const mesh = prism();
const { neighbor } = buildAdjacency(mesh);
const { normal, areaMm2 } = facetGeometry(mesh);
const radii = convexRadii(mesh, neighbor, edgeTurns(mesh, neighbor, normal), areaMm2);
const isSide = (facet: number) => facet % 4 < 2;

describe('outer edges', () => {
  test('of a prism round a cylinder read the cylinder’s radius', () => {
    const { radiusMm: read, edgeMm } = outerEdges(mesh, neighbor, radii, isSide);
    for (let facet = 0; facet < 4 * sides; facet++) {
      if (!isSide(facet)) continue;
      expect(read[facet]).toBeCloseTo(radiusMm, 3);
      expect(edgeMm[facet]).toBeCloseTo(10, 5);
    }
  });

  test('are sharp where the face turns at once, and none where it ends', () => {
    const all = outerEdges(mesh, neighbor, radii, () => true);
    expect(Math.min(...all.radiusMm)).toBe(0);
    const none = outerEdges(mesh, neighbor, radii, (facet) => !isSide(facet));
    for (let facet = 0; facet < 4 * sides; facet++) if (isSide(facet)) expect(none.radiusMm[facet]).toBeNaN();
  });
});
