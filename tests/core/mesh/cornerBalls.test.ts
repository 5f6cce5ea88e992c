/** Radii of inside corners where the mesh is made of slivers, as grids and simplified meshes are. */
import { describe, expect, it } from 'vitest';
import { buildAdjacency } from '../../../src/core/mesh/adjacency';
import { insideCorners } from '../../../src/core/mesh/cornerRadius';
import { edgeTurns } from '../../../src/core/mesh/edgeTurns';
import { facetGeometry } from '../../../src/core/mesh/facetGeometry';
import type { IndexedMesh } from '../../../src/core/mesh/types';
import { makePattern } from '../../../src/core/pattern/makePattern';
import { box } from '../../support/meshes';

function cornersOf(mesh: IndexedMesh) {
  const { areaMm2, normal } = facetGeometry(mesh);
  const { neighbor } = buildAdjacency(mesh);
  const { radiusMm, edgeMm } = insideCorners(mesh, neighbor, edgeTurns(mesh, neighbor, normal), areaMm2);
  return Array.from(radiusMm, (radius, at) => ({ radius, edge: edgeMm[at]! }))
    .filter(({ radius }) => !Number.isNaN(radius))
    .toSorted((a, b) => a.radius - b.radius);
}

/** Least radius, and the one that a twentieth of all inside edges stays under. */
function radiiOf(mesh: IndexedMesh) {
  const corners = cornersOf(mesh);
  const whole = corners.reduce((sum, { edge }) => sum + edge, 0);
  let passed = 0;
  const p5 = corners.find(({ edge }) => (passed += edge) >= 0.05 * whole)!;
  return { min: corners[0]!.radius, p5: p5.radius };
}

/** Floor, fillet and wall, 10 mm long; the fillet's points are shaken by up to `noiseMm` along its radius, so its strips fold at random. */
function roughFillet(radiusMm: number, noiseMm: number): IndexedMesh {
  const strips = 24;
  const profile: [number, number][] = [[-8, 0]];
  for (let i = 0; i <= strips; i++) {
    const angle = ((Math.PI / 2) * i) / strips;
    const r = radiusMm + noiseMm * Math.sin(12.9898 * (i + 1) * (i + 3));
    profile.push([r * Math.sin(angle), radiusMm - r * Math.cos(angle)]);
  }
  profile.push([radiusMm, radiusMm + 8]);
  const positions: number[] = [];
  const facets: number[] = [];
  const steps = 10;
  for (let step = 0; step <= steps; step++)
    for (const [x, z] of profile) positions.push(x, (10 * step) / steps, z);
  for (let step = 0; step < steps; step++)
    for (let i = 0; i + 1 < profile.length; i++) {
      const a = step * profile.length + i;
      const c = a + profile.length;
      facets.push(a, a + 1, c + 1, a, c + 1, c);
    }
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}

describe('a fillet whose strips fold at random', () => {
  it.each([1, 0.7, 0.5])('of %f mm is found within 0.09 mm by the ball that fits', (radiusMm) => {
    const { min, p5 } = radiiOf(roughFillet(radiusMm, 0.006));
    expect(min).toBeGreaterThan(radiusMm - 0.09);
    expect(p5).toBeLessThan(radiusMm + 0.09);
  });
});

it('leaves a sharp corner between small facets sharp', () => {
  const positions: number[] = [];
  const facets: number[] = [];
  for (let y = 0; y <= 20; y++)
    for (const [x, z] of [
      [-0.2, 0],
      [0, 0],
      [0, 0.2],
    ] as const)
      positions.push(x, 0.2 * y, z);
  for (let y = 0; y < 20; y++)
    for (let i = 0; i < 2; i++) {
      const a = 3 * y + i;
      facets.push(a, a + 1, a + 4, a, a + 4, a + 3);
    }
  const mesh = { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
  expect(radiiOf(mesh)).toEqual({ min: 0, p5: 0 });
});

describe('a made pattern', () => {
  it.each([
    [1, 0.36],
    [1.5, 0.4],
  ])('reads at least nine tenths of the asked inside radius of %f mm', (insideRadiusMm, gridMm) => {
    const { mesh } = makePattern(
      box([0, 0, 0], [40, 30, 12]),
      {
        pull: [0, 0, 1],
        wallMm: 0.8,
        draftDeg: 3,
        neutralPlane: 'rim',
        insideRadiusMm,
        edges: 'eased',
        keepHolesOverMm: null,
        gridMm,
      },
      () => undefined,
    );
    const { min, p5 } = radiiOf(mesh);
    expect(p5).toBeGreaterThanOrEqual(0.9 * insideRadiusMm);
    expect(min).toBeGreaterThanOrEqual(0.9 * insideRadiusMm);
  });
});
