import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildAdjacency } from '../../../src/core/mesh/adjacency';
import { findHealth } from '../../../src/core/mesh/health';
import { integrate } from '../../../src/core/mesh/integrals';
import type { IndexedMesh } from '../../../src/core/mesh/types';
import { turnedRight } from '../../../src/core/mesh/winding';
import {
  box,
  hollowBox,
  hollowSphere,
  icosphere,
  insideOut,
  joinMeshes,
  torus,
  tray,
} from '../../support/meshes';
import { propertySeed } from '../../support/propertySeed';

const cube = (low: number, high: number) => box([low, low, low], [high, high, high]);

function turnSome(mesh: IndexedMesh, turn: (facet: number) => boolean): IndexedMesh {
  const turned = insideOut(mesh);
  return {
    positions: mesh.positions,
    facets: mesh.facets.map((vertex, corner) => (turn((corner / 3) | 0) ? turned.facets[corner]! : vertex)),
  };
}

function without(mesh: IndexedMesh, ...facets: readonly number[]): IndexedMesh {
  const left = mesh.facets.filter((_, corner) => !facets.includes((corner / 3) | 0));
  return { positions: mesh.positions, facets: left };
}

describe('adjacency', () => {
  it('names the facet over each edge, both ways', () => {
    const mesh = icosphere(1, 2);
    const { neighbor, edges, openEdges, crowdedEdges, misorientedEdges } = buildAdjacency(mesh);
    expect({ edges, openEdges, crowdedEdges, misorientedEdges }).toEqual({
      edges: 480,
      openEdges: 0,
      crowdedEdges: 0,
      misorientedEdges: 0,
    });
    neighbor.forEach((other, halfEdge) => {
      const facet = (halfEdge / 3) | 0;
      const back = neighbor.subarray(3 * other, 3 * other + 3);
      expect(back.filter((f) => f === facet).length).toBe(1);
      const corners = new Set([
        ...mesh.facets.subarray(3 * facet, 3 * facet + 3),
        ...mesh.facets.subarray(3 * other, 3 * other + 3),
      ]);
      expect(corners.size).toBe(4);
    });
  });

  it('handles a fan of 200,000 facets around one corner', () => {
    const count = 200_000;
    const positions = new Float64Array(3 * (count + 1));
    const facets = new Uint32Array(3 * count);
    for (let i = 0; i < count; i++) {
      positions.set([Math.cos(i), Math.sin(i), i], 3 * (i + 1));
      facets.set([0, i + 1, ((i + 1) % count) + 1], 3 * i);
    }
    expect(buildAdjacency({ positions, facets })).toMatchObject({ edges: 2 * count, openEdges: count });
  });
});

describe(`health (seed ${propertySeed})`, () => {
  it('finds nothing wrong with sound solids', () => {
    for (const mesh of [cube(0, 1), tray([60, 40, 20], 2, 3), torus(10, 3, 24, 12), hollowSphere(9, 7, 2)]) {
      expect(findHealth(mesh)).toMatchObject({
        watertight: true,
        openEdges: 0,
        crowdedEdges: 0,
        flippedFacets: 0,
        degenerateFacets: 0,
        duplicateFacets: 0,
        selfTouchingFacets: null,
      });
    }
  });

  it('sorts bodies by facet count and labels each facet', () => {
    const { bodies, bodyOfFacet } = findHealth(joinMeshes(cube(0, 1), icosphere(1, 1), cube(5, 7)));
    expect(bodies.map(({ facetCount }) => facetCount)).toEqual([80, 12, 12]);
    expect(bodies.map(({ volume }) => volume && Math.round(volume))).toEqual([4, 1, 8]);
    expect([...bodyOfFacet]).toEqual([
      ...Array<number>(12).fill(1),
      ...Array<number>(80).fill(0),
      ...Array<number>(12).fill(2),
    ]);
    expect(bodies[2]).toMatchObject({ closed: true, boxMin: [5, 5, 5], boxMax: [7, 7, 7] });
  });

  it('finds any minority of turned facets and turns exactly those back', () => {
    const mesh = icosphere(10, 2);
    const facetCount = mesh.facets.length / 3;
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(facetCount - 1), { maxLength: facetCount / 2 - 1 }), (turned) => {
        const mixed = turnSome(mesh, (facet) => turned.includes(facet));
        const health = findHealth(mixed);
        expect([...health.show.flippedFacets]).toEqual(turned.toSorted((a, b) => a - b));
        expect(health.watertight).toBe(turned.length === 0);
        expect(health.bodies[0]!.closed).toBe(true);
        expect(turnedRight(mixed, health)).toEqual(mesh);
      }),
    );
  });

  it('turns a closed body by its volume even when most of its facets are wrong', () => {
    const mesh = icosphere(10, 2);
    const mixed = turnSome(mesh, (facet) => facet % 4 !== 0);
    expect(turnedRight(mixed, findHealth(mixed))).toEqual(mesh);
  });

  it('turns the minority of an open sheet, whose inside cannot be told', () => {
    const open = without(icosphere(10, 2), 7);
    const mixed = turnSome(open, (facet) => facet < 5);
    const health = findHealth(mixed);
    expect([...health.show.flippedFacets]).toEqual([0, 1, 2, 3, 4]);
    expect(health).toMatchObject({ watertight: false, openEdges: 3 });
    expect(health.bodies[0]).toMatchObject({ closed: false, volume: null });
    expect(health.show.openEdges.length).toBe(3);
  });

  it('leaves a void facing inward and an island in it facing outward', () => {
    const nested = joinMeshes(cube(0, 30), insideOut(cube(2, 28)), cube(5, 25), insideOut(cube(8, 20)));
    expect(findHealth(nested)).toMatchObject({ watertight: true, flippedFacets: 0 });
    const all = findHealth(insideOut(nested));
    expect(all.flippedFacets).toBe(48);
    expect(all.bodies.reduce((sum, { volume }) => sum + volume!, 0)).toBe(
      30 ** 3 - 26 ** 3 + 20 ** 3 - 12 ** 3,
    );
  });

  it('turns a body inside out whether it stands beside a hollow one or on the same spot of the plan', () => {
    const hollow = hollowBox([30, 30, 30], 2);
    const beside = joinMeshes(
      hollow,
      insideOut(box([40, 0, 0], [50, 10, 10])),
      insideOut(box([5, 5, 50], [9, 9, 60])),
    );
    const health = findHealth(beside);
    expect(health.flippedFacets).toBe(24);
    expect(integrate(turnedRight(beside, health)).volume).toBeCloseTo(9424 + 1000 + 160, 9);
  });

  it('leaves a solid boss that is pushed into a wall alone', () => {
    expect(findHealth(joinMeshes(cube(0, 30), cube(10, 12)))).toMatchObject({ flippedFacets: 0 });
  });

  it('counts duplicates wound either way once each, and many copies of one facet', () => {
    const mesh = cube(0, 1);
    const again = (...extra: readonly number[]) =>
      findHealth({ positions: mesh.positions, facets: Uint32Array.from([...mesh.facets, ...extra]) });
    expect([...again(0, 2, 1).show.duplicateFacets]).toEqual([12]);
    expect([...again(0, 1, 2).show.duplicateFacets]).toEqual([12]);
    expect([...again(0, 2, 1, 1, 0, 2, 2, 0, 1).show.duplicateFacets]).toEqual([12, 13, 14]);
    expect(again(0, 2, 1)).toMatchObject({ crowdedEdges: 3, watertight: false, flippedFacets: 0 });
    const doubled = findHealth({
      positions: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0),
      facets: Uint32Array.of(0, 1, 2, 0, 2, 1),
    });
    expect(doubled).toMatchObject({ duplicateFacets: 1, watertight: true, flippedFacets: 0 });
  });

  it('does not call a band with one side closed or sound', () => {
    // Moebius band of five facets over five vertices.
    const positions = Float64Array.from({ length: 15 }, (_, i) => Math.sin(7 * i));
    const facets = Uint32Array.of(0, 1, 2, 1, 2, 3, 2, 3, 4, 3, 4, 0, 4, 0, 1);
    const health = findHealth({ positions, facets });
    expect(health.watertight).toBe(false);
    expect(health.bodies[0]!.closed).toBe(false);
  });

  it('keeps two boxes that share an edge closed, with the edge counted as crowded', () => {
    const joined = joinMeshes(cube(0, 1), cube(1, 2));
    // The second box is moved onto the first along one edge and uses its vertices there.
    const positions = joined.positions.slice();
    for (let vertex = 8; vertex < 16; vertex++) positions[3 * vertex + 2]! -= 1;
    const same = new Map([
      [8, 2],
      [12, 6],
    ]);
    const facets = joined.facets.map((vertex) => same.get(vertex) ?? vertex);
    const health = findHealth({ positions, facets });
    expect(health).toMatchObject({ watertight: false, crowdedEdges: 1, openEdges: 0, flippedFacets: 0 });
    expect(health.bodies).toMatchObject([{ facetCount: 24, closed: true, volume: 2 }]);
  });

  it('says nothing but zero about an empty mesh', () => {
    const health = findHealth({ positions: new Float64Array(0), facets: new Uint32Array(0) });
    expect(health).toMatchObject({ facetCount: 0, watertight: true, bodies: [] });
  });
});
