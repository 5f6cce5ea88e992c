import * as fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { buildAdjacency } from '../../../src/core/mesh/adjacency';
import { facetGeometry } from '../../../src/core/mesh/facetGeometry';
import { integrate } from '../../../src/core/mesh/integrals';
import {
  childrenOf,
  refineForMeasuring,
  type MeasuringMesh,
} from '../../../src/core/mesh/refineForMeasuring';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { box, domeShell, icosphere, joinMeshes, mapVertices, torus, tray } from '../../support/meshes';
import { propertySeed } from '../../support/propertySeed';

const at = ({ positions }: IndexedMesh, vertex: number): Vec3 => [
  positions[3 * vertex]!,
  positions[3 * vertex + 1]!,
  positions[3 * vertex + 2]!,
];
const between = (one: Vec3, other: Vec3) => Math.hypot(...one.map((along, axis) => along - other[axis]!));

function edgeLengths(mesh: IndexedMesh): number[] {
  return [...mesh.facets].map((vertex, halfEdge) =>
    between(at(mesh, vertex), at(mesh, mesh.facets[halfEdge % 3 === 2 ? halfEdge - 2 : halfEdge + 1]!)),
  );
}

function edgeCounts(mesh: IndexedMesh) {
  const { openEdges, crowdedEdges, misorientedEdges } = buildAdjacency(mesh);
  return { openEdges, crowdedEdges, misorientedEdges };
}

const cornersKey = (corners: readonly number[]) => corners.toSorted((a, b) => a - b).join();

/** Everything that must hold of any refining. */
function expectSameSurface(drawn: IndexedMesh, refined: MeasuringMesh): void {
  const { mesh, split } = refined;
  const drawnCount = drawn.facets.length / 3;
  const childStart = split?.childStart ?? Uint32Array.from({ length: drawnCount + 1 }, (_, facet) => facet);
  expect(childStart.length).toBe(drawnCount + 1);
  expect(childStart[0]).toBe(0);
  expect(3 * childStart[drawnCount]!).toBe(mesh.facets.length);
  expect(mesh.positions.every(Number.isFinite)).toBe(true);
  expect(mesh.positions.slice(0, drawn.positions.length)).toEqual(drawn.positions);
  expect(mesh.facets.reduce((most, vertex) => Math.max(most, vertex), 0)).toBeLessThan(
    mesh.positions.length / 3,
  );

  const before = facetGeometry(drawn);
  const after = facetGeometry(mesh);
  const [whole, refinedWhole] = [integrate(drawn), integrate(mesh)];
  const scaleMm = Math.hypot(...whole.boxMax.map((max, axis) => max - whole.boxMin[axis]!));
  let farthest = 0;
  let largestAreaMiss = 0;
  let worstTurn = 1;
  for (let facet = 0; facet < drawnCount; facet++) {
    const [from, to] = [childStart[facet]!, childStart[facet + 1]!];
    expect(to).toBeGreaterThan(from);
    const corner = at(drawn, drawn.facets[3 * facet]!);
    const normal = before.normal.subarray(3 * facet, 3 * facet + 3);
    let area = 0;
    for (let child = from; child < to; child++) {
      area += after.areaMm2[child]!;
      let turn = 0;
      let off = 0;
      for (let axis = 0; axis < 3; axis++) {
        turn += normal[axis]! * after.normal[3 * child + axis]!;
        off += normal[axis]! * (after.centerMm[3 * child + axis]! - corner[axis]!);
      }
      // A drawn facet without breadth has no plane to lie in.
      if (before.areaMm2[facet]! > 1e-6 * scaleMm * scaleMm)
        farthest = Math.max(farthest, Math.abs(off) / scaleMm);
      // The direction of a child without breadth is rounding.
      if (after.areaMm2[child]! > 1e-6 * scaleMm * scaleMm) worstTurn = Math.min(worstTurn, turn);
    }
    largestAreaMiss = Math.max(largestAreaMiss, Math.abs(area - before.areaMm2[facet]!) / scaleMm ** 2);
  }
  expect(farthest).toBeLessThan(1e-6);
  expect(largestAreaMiss).toBeLessThan(1e-6);
  expect(worstTurn).toBeGreaterThan(0.999999);
  expect((refinedWhole.area - whole.area) / scaleMm ** 2).toBeCloseTo(0, 10);
  expect((refinedWhole.volume - whole.volume) / scaleMm ** 3).toBeCloseTo(0, 12);
}

/** Half-edges of the children lie on the drawn half-edge that they name, and cover it. */
function expectDrawnEdgesCovered(drawn: IndexedMesh, { mesh, split }: MeasuringMesh): void {
  if (split === null) return;
  const covered = new Float64Array(drawn.facets.length);
  const lengths = edgeLengths(mesh);
  split.drawnHalfEdge.forEach((on, halfEdge) => {
    if (on >= 0) covered[on]! += lengths[halfEdge]!;
  });
  const misses = edgeLengths(drawn).map((length, halfEdge) => Math.abs(covered[halfEdge]! / length - 1));
  expect(misses.filter((miss) => miss > 1e-9)).toEqual([]);
}

describe('a mesh refined for measuring', () => {
  const parts: readonly (readonly [string, IndexedMesh])[] = [
    ['a tray of 28 facets', tray([60, 40, 20], 2)],
    ['a drafted tray', tray([120, 80, 30], 1.5, 3)],
    ['an icosahedron', icosphere(40, 0)],
    ['a ring', torus(40, 10, 12, 8)],
    ['a plate far from square', box([0, 0, 0], [200, 1, 0.02])],
    ['two boxes in one place', joinMeshes(box([0, 0, 0], [9, 9, 9]), box([0, 0, 0], [9, 9, 9]))],
  ];

  it.each(parts)('%s: is the same closed surface in finer facets', (_, drawn) => {
    const refined = refineForMeasuring(drawn, drawn.facets.length / 3 + 6_000);
    expect(refined.split).not.toBeNull();
    expectSameSurface(drawn, refined);
    expectDrawnEdgesCovered(drawn, refined);
    expect(edgeCounts(refined.mesh)).toEqual({ openEdges: 0, crowdedEdges: 0, misorientedEdges: 0 });
  });

  it('comes out the same every time', () => {
    const drawn = tray([60, 40, 20], 2, 5);
    expect(refineForMeasuring(drawn, 500)).toEqual(refineForMeasuring(drawn, 500));
  });

  it('leaves no long edge on broad facets, and makes no more facets than their area asks for', () => {
    const drawn = tray([60, 40, 20], 2);
    const { mesh, longestEdgeMm, wantedEdgeMm } = refineForMeasuring(drawn);
    expect(wantedEdgeMm).toBeCloseTo(Math.hypot(60, 40, 20) / 48, 12);
    expect(longestEdgeMm).toBe(wantedEdgeMm);
    expect(edgeLengths(mesh).filter((length) => length > 1.5 * longestEdgeMm)).toEqual([]);
    const perFacetMm2 = integrate(drawn).area / (mesh.facets.length / 3);
    expect(perFacetMm2).toBeGreaterThan(0.1 * longestEdgeMm ** 2);
  });

  it('takes a longer length when the budget is small, and leaves a mesh alone that is over it', () => {
    const drawn = tray([60, 40, 20], 2);
    for (const budget of [29, 40, 100, 1000, 10_000]) {
      const refined = refineForMeasuring(drawn, budget);
      expect(refined.mesh.facets.length / 3).toBeLessThanOrEqual(budget);
      expect(refined.longestEdgeMm).toBeGreaterThan(refined.wantedEdgeMm);
      expectSameSurface(drawn, refined);
    }
    const alone = refineForMeasuring(drawn, 28);
    expect(alone).toMatchObject({ split: null, longestEdgeMm: Infinity });
    expect(alone.mesh).toBe(drawn);
  });

  it('hands back a mesh that is fine enough, and one with nothing in it', () => {
    const fine = domeShell(96, 256);
    expect(refineForMeasuring(fine).mesh).toBe(fine);
    const empty: IndexedMesh = { positions: new Float64Array(0), facets: new Uint32Array(0) };
    expect(refineForMeasuring(empty).mesh).toBe(empty);
  });

  it('splits only what is long: the rest keep their corners', () => {
    const small = icosphere(1, 3);
    const drawn = joinMeshes(small, box([10, 0, 0], [60, 40, 20]));
    const { mesh, split } = refineForMeasuring(drawn);
    expect(split?.childStart[small.facets.length / 3]).toBe(small.facets.length / 3);
    expect(mesh.facets.slice(0, small.facets.length)).toEqual(small.facets);
  });

  it('does not explode on slivers, and takes facets without area along', () => {
    // A fan of a thousand slivers from one corner, and a facet whose corners stand in one line.
    const slivers = 1000;
    const positions = [0, 0, 0];
    for (let i = 0; i <= slivers; i++) positions.push(100, (i * 5) / slivers, 0);
    positions.push(50, 0, 0);
    const facets = Array.from({ length: slivers }, (_, i) => [0, i + 1, i + 2]).flat();
    facets.push(0, slivers + 2, 1);
    const drawn = { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
    const refined = refineForMeasuring(drawn);
    expect(refined.longestEdgeMm).toBe(refined.wantedEdgeMm);
    expect(refined.mesh.facets.length / 3).toBeLessThan(40 * slivers);
    expectSameSurface(drawn, refined);
    // The fan's own outline stays open; the edge to the facet without area stays closed.
    const straight = childrenOf(refined.split, Uint32Array.of(slivers));
    expect(straight.length).toBeGreaterThan(1);
    const { neighbor } = buildAdjacency(refined.mesh);
    const joined = straight.filter((child) =>
      [0, 1, 2].some(
        (edge) => neighbor[3 * child + edge]! >= 0 && neighbor[3 * child + edge]! < straight[0]!,
      ),
    );
    expect(joined.length).toBeGreaterThan(1);
  });

  it('names the children of drawn facets', () => {
    const { split } = refineForMeasuring(tray([60, 40, 20], 2));
    const { childStart } = split!;
    const named = childrenOf(split, Uint32Array.of(3, 5));
    expect(named[0]).toBe(childStart[3]);
    expect(named.at(-1)).toBe(childStart[6]! - 1);
    expect(named.length).toBe(childStart[4]! - childStart[3]! + childStart[6]! - childStart[5]!);
    const whole = Uint32Array.of(1, 2);
    expect(childrenOf(null, whole)).toEqual(whole);
    expect(childrenOf(null, whole)).not.toBe(whole);
  });
});

describe(`refining whatever comes (seed ${propertySeed})`, () => {
  const coordinate = fc.double({ min: -50, max: 50, noNaN: true, noDefaultInfinity: true });
  const stretch = fc.double({ min: 0.01, max: 30, noNaN: true });

  test('any soup of facets stays the same surface with the same open and crowded edges', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 4, maxLength: 9 }),
        fc.array(fc.tuple(fc.nat(), fc.nat(), fc.nat()), { minLength: 1, maxLength: 9 }),
        (vertices, corners) => {
          // Two facets on the same three corners would meet inside as well.
          const facets = corners
            .map((facet) => facet.map((corner) => corner % vertices.length))
            .filter((facet) => new Set(facet).size === 3)
            .filter((facet, index, all) => {
              return all.findIndex((other) => cornersKey(other) === cornersKey(facet)) === index;
            });
          const drawn = {
            positions: Float64Array.from(vertices.flat()),
            facets: Uint32Array.from(facets.flat()),
          };
          const refined = refineForMeasuring(drawn, 2_000);
          if (!(integrate(drawn).area > 1e-6)) return;
          expectSameSurface(drawn, refined);
          const adjacent = buildAdjacency(refined.mesh);
          const before = buildAdjacency(drawn);
          for (const kind of ['openEdges', 'crowdedEdges', 'misorientedEdges'] as const) {
            expect(adjacent[kind] > 0).toBe(before[kind] > 0);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('a stretched ring or tray stays closed', () => {
    const [plainRing, plainTray] = [torus(30, 9, 9, 5), tray([30, 20, 10], 1, 2)];
    fc.assert(
      fc.property(stretch, stretch, stretch, fc.boolean(), (x, y, z, ring) => {
        const drawn = mapVertices(ring ? plainRing : plainTray, ([px, py, pz]) => [px * x, py * y, pz * z]);
        const refined = refineForMeasuring(drawn, drawn.facets.length / 3 + 1_500);
        expectSameSurface(drawn, refined);
        expect(edgeCounts(refined.mesh)).toEqual({ openEdges: 0, crowdedEdges: 0, misorientedEdges: 0 });
      }),
      { numRuns: 40 },
    );
  });
});
