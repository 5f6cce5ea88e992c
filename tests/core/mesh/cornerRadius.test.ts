import { describe, expect, it } from 'vitest';
import { buildAdjacency } from '../../../src/core/mesh/adjacency';
import { insideCorners } from '../../../src/core/mesh/cornerRadius';
import { edgeTurns } from '../../../src/core/mesh/edgeTurns';
import { facetGeometry } from '../../../src/core/mesh/facetGeometry';
import type { IndexedMesh } from '../../../src/core/mesh/types';
import { box, icosphere, insideOut, torus } from '../../support/meshes';

function radii(mesh: IndexedMesh): number[] {
  const geometry = facetGeometry(mesh);
  const { neighbor } = buildAdjacency(mesh);
  const turns = edgeTurns(mesh, neighbor, geometry.normal);
  return [...insideCorners(mesh, neighbor, turns, geometry.areaMm2).radiusMm];
}

const known = (mesh: IndexedMesh) => radii(mesh).filter((radius) => !Number.isNaN(radius));
const middle = (values: readonly number[]) => values.toSorted((a, b) => a - b)[values.length >> 1]!;

/** A line drawn in (x, z), walked with the outside on its left, pulled out along y in `steps` quads. */
function extruded(
  profile: readonly (readonly [number, number])[],
  lengthMm: number,
  steps: number,
): IndexedMesh {
  const positions: number[] = [];
  const facets: number[] = [];
  for (let step = 0; step <= steps; step++) {
    for (const [x, z] of profile) positions.push(x, (lengthMm * step) / steps, z);
  }
  for (let step = 0; step < steps; step++) {
    for (let i = 0; i + 1 < profile.length; i++) {
      const a = step * profile.length + i;
      const c = a + profile.length;
      facets.push(a, a + 1, c + 1, a, c + 1, c);
    }
  }
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}

/** Flat floor, inside fillet of a quarter turn, upright wall; points of the fillet lie on the arc. */
function insideFillet(radiusMm: number, strips: number): IndexedMesh {
  const arc = Array.from({ length: strips + 1 }, (_, i): [number, number] => {
    const angle = ((Math.PI / 2) * i) / strips;
    return [radiusMm * Math.sin(angle), radiusMm * (1 - Math.cos(angle))];
  });
  return extruded([[-20, 0], ...arc, [radiusMm, radiusMm + 20]], 10, 2);
}

describe('inside-corner radius', () => {
  it.each([
    // Strips so narrow are measured by the ball, which takes a fillet for up to 0.09 mm larger.
    [1, 4, 0.06],
    [2, 6, 0.04],
    [3, 9, 0.04],
    [6, 12, 0.04],
    [10, 16, 0.04],
  ])('finds a fillet of %f mm in %i strips within a share of %f', (radiusMm, strips, within) => {
    const found = known(insideFillet(radiusMm, strips));
    expect(Math.min(...found) / radiusMm).toBeGreaterThan(1 - within);
    expect(Math.min(...found) / radiusMm).toBeLessThan(1 + within);
  });

  it('reads low by cos(half a turn) when the points of the fillet lie on the arc', () => {
    const turn = Math.PI / 2 / 6;
    expect(Math.min(...known(insideFillet(2, 6)))).toBeCloseTo(2 * Math.cos(turn / 2), 4);
  });

  it('says nothing of outside corners', () => {
    expect(known(box([0, 0, 0], [10, 10, 10]))).toEqual([]);
    expect(known(icosphere(10, 2))).toEqual([]);
  });

  it('gives 0 for a corner drawn sharp', () => {
    const found = known(insideOut(box([0, 0, 0], [10, 10, 10])));
    expect(found).toHaveLength(12);
    expect(new Set(found)).toEqual(new Set([0]));
  });

  it('gives 0 for a sharp corner between small facets as well', () => {
    const fine = extruded(
      [
        [-0.2, 0],
        [0, 0],
        [0, 0.2],
      ],
      1,
      5,
    );
    expect(Math.min(...known(fine))).toBe(0);
  });

  it('finds the tube radius on the inside of a ring', () => {
    const found = known(insideOut(torus(30, 4, 120, 48)));
    expect(middle(found)).toBeGreaterThan(3.85);
    expect(middle(found)).toBeLessThan(4.15);
  });

  it('finds the radius of a hollow ball within 12 % from triangles that bend at all their edges', () => {
    const found = known(insideOut(icosphere(10, 4)));
    expect(middle(found)).toBeGreaterThan(8.8);
    expect(middle(found)).toBeLessThan(11.2);
  });

  it('takes turns under a degree as flat', () => {
    const lean = Math.tan((0.9 * Math.PI) / 180);
    const mesh = extruded(
      [
        [-5, 0],
        [0, 0],
        [5, 5 * lean],
      ],
      10,
      1,
    );
    expect(known(mesh)).toEqual([]);
  });
});
