import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureBallWalls } from '../../../src/core/mesh/ballWall';
import { castRay, measureRayWalls } from '../../../src/core/mesh/rayWall';
import { measureReach } from '../../../src/core/mesh/reach';
import { findSelfTouching } from '../../../src/core/mesh/selfTouching';
import { buildSurfaceIndex, slotsFrom } from '../../../src/core/mesh/surfaceIndex';
import { reachBit, type IndexedMesh, type Vec3 } from '../../../src/core/mesh/types';
import { bruteBall, bruteRay, facetStand } from '../../support/bruteWalls';
import { box, hollowBox, joinMeshes, mapVertices, torus, tray } from '../../support/meshes';
import { propertySeed } from '../../support/propertySeed';
import { rigidMotion } from '../../support/randomMeshes';

/** Even over the range (`fc.double` favors the smallest numbers there are, which no drawing has). */
const evenly = (low: number, high: number) =>
  fc.integer({ min: 0, max: 1_000_003 }).map((step) => low + ((high - low) * step) / 1_000_003);
const length = evenly(0.5, 40);

/** Free triangles of all sizes in a box of about 10 mm; each corner is a little off, so that none coincide exactly. */
const loose: fc.Arbitrary<IndexedMesh> = fc
  .array(
    fc.tuple(
      fc.tuple(evenly(-5, 5), evenly(-5, 5), evenly(-5, 5)),
      fc.array(evenly(-1, 1), { minLength: 9, maxLength: 9 }),
      fc.constantFrom(0.05, 0.5, 5),
    ),
    { minLength: 2, maxLength: 60 },
  )
  .map((triangles) => ({
    positions: Float64Array.from(
      triangles.flatMap(([at, steps, size], triangle) =>
        steps.map(
          (step, place) => at[place % 3]! + size * (step + 0.1 * Math.sin(97 * triangle + 31 * place)),
        ),
      ),
    ),
    facets: Uint32Array.from({ length: 3 * triangles.length }, (_, corner) => corner),
  }));

/** Closed parts of few large facets. */
const closed: fc.Arbitrary<IndexedMesh> = fc.oneof(
  fc.tuple(length, length, length).map((size) => box([0, 0, 0], size)),
  fc.tuple(length, length, length).map((size) => hollowBox(size, Math.min(...size) / 5)),
  fc
    .tuple(length, length, length, evenly(0, 20))
    .map(([x, y, z, draft]) => tray([x, y, z], Math.min(x, y, z) / 5, draft)),
  fc.integer({ min: 5, max: 14 }).map((around) => torus(5, 2, around, 6)),
);

const anyMesh = fc.oneof(loose, closed);

/** The facets of a mesh in another order; `order[i]` is the old number of new facet i. */
function reordered(mesh: IndexedMesh, order: readonly number[]): IndexedMesh {
  return {
    positions: mesh.positions,
    facets: Uint32Array.from(order.flatMap((facet) => [...mesh.facets.subarray(3 * facet, 3 * facet + 3)])),
  };
}

const near = (value: number, expected: number, share: number) =>
  Number.isNaN(expected) ? Number.isNaN(value) : Math.abs(value - expected) <= share * Math.abs(expected);

function measure(mesh: IndexedMesh, cuts: readonly number[] = []) {
  const index = buildSurfaceIndex(mesh);
  const { facetCount } = index;
  const rayWallMm = new Float32Array(facetCount);
  const rayFacet = new Int32Array(facetCount);
  const ballWallMm = new Float32Array(facetCount);
  const reach = new Uint8Array(facetCount);
  const places = [0, ...cuts.map((cut) => cut % (facetCount + 1)).sort((a, b) => a - b), facetCount];
  places.slice(1).forEach((to, i) => {
    const from = places[i]!;
    measureRayWalls(index, slotsFrom(from, to), rayWallMm, rayFacet);
    measureBallWalls(index, slotsFrom(from, to), rayWallMm, ballWallMm);
    measureReach(index, [0, 0, 1], slotsFrom(from, to), reach);
  });
  return { index, rayWallMm, rayFacet, ballWallMm, reach, touching: findSelfTouching(index, mesh) };
}

describe(`walls, seed ${propertySeed}`, () => {
  it('hits what trying every facet hits', () => {
    fc.assert(
      fc.property(anyMesh, (mesh) => {
        const { index, rayWallMm } = measure(mesh);
        for (let facet = 0; facet < index.facetCount; facet++) {
          const stand = facetStand(mesh, facet);
          if (stand === null) continue;
          const inward: [number, number, number] = [-stand.normal[0], -stand.normal[1], -stand.normal[2]];
          const expected = bruteRay(mesh, stand.center, inward, facet, 1e-6 * index.diagonalMm, true) ?? NaN;
          expect(near(rayWallMm[facet]!, expected, 1e-6), `${rayWallMm[facet]} for ${expected}`).toBe(true);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('casts single rays from anywhere like trying every facet', () => {
    const coordinate = evenly(-20, 20);
    const point = fc.tuple(coordinate, coordinate, coordinate);
    fc.assert(
      fc.property(anyMesh, point, point, (mesh, origin, target) => {
        const away = target.map((value, axis) => value - origin[axis]!) as [number, number, number];
        const size = Math.hypot(...away);
        fc.pre(size > 1e-3);
        const unit: [number, number, number] = [away[0] / size, away[1] / size, away[2] / size];
        const hit = castRay(buildSurfaceIndex(mesh), origin, away);
        const expected = bruteRay(mesh, origin, unit, -1, 0) ?? NaN;
        expect(near(hit?.distanceMm ?? NaN, expected, 1e-9), `${hit?.distanceMm} for ${expected}`).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('finds the largest ball that a dense search finds', () => {
    fc.assert(
      fc.property(anyMesh, fc.nat(), (mesh, pick) => {
        const { index, ballWallMm } = measure(mesh);
        const facet = pick % index.facetCount;
        const stand = facetStand(mesh, facet);
        fc.pre(stand !== null);
        const inward: [number, number, number] = [-stand.normal[0], -stand.normal[1], -stand.normal[2]];
        const ray = bruteRay(mesh, stand.center, inward, facet, 1e-6 * index.diagonalMm, true) ?? Infinity;
        const expected = Math.min(ray, bruteBall(mesh, facet, stand.center, inward, 30.1));
        const known = expected < 2 * index.diagonalMm ? expected : NaN;
        expect(near(ballWallMm[facet]!, known, 1e-5), `${ballWallMm[facet]} for ${known}`).toBe(true);
      }),
      { numRuns: 150, interruptAfterTimeLimit: 20_000 },
    );
  });

  it('never finds a ball larger than the ray wall', () => {
    fc.assert(
      fc.property(anyMesh, (mesh) => {
        const { rayWallMm, ballWallMm } = measure(mesh);
        rayWallMm.forEach((ray, facet) => expect(ballWallMm[facet]! > ray * (1 + 2e-6)).toBe(false));
      }),
    );
  });

  it('measures alike in one piece and in several, with facets in any order', () => {
    const order = fc.array(fc.nat(), { minLength: 60, maxLength: 60 });
    fc.assert(
      fc.property(anyMesh, order, fc.array(fc.nat(), { maxLength: 3 }), (mesh, keys, cuts) => {
        const whole = measure(mesh);
        const pieces = measure(mesh, cuts);
        for (const name of ['rayWallMm', 'rayFacet', 'ballWallMm', 'reach'] as const) {
          expect(pieces[name]).toEqual(whole[name]);
        }
        const facets = Array.from({ length: whole.index.facetCount }, (_, facet) => facet);
        const shuffle = facets.sort((a, b) => keys[a % 60]! - keys[b % 60]! || b - a);
        const shuffled = measure(reordered(mesh, shuffle));
        shuffle.forEach((old, facet) => {
          expect(near(shuffled.rayWallMm[facet]!, whole.rayWallMm[old]!, 1e-6)).toBe(true);
          expect(near(shuffled.ballWallMm[facet]!, whole.ballWallMm[old]!, 1e-6)).toBe(true);
          expect(shuffled.reach[facet]).toBe(whole.reach[old]);
        });
        const touching = [...shuffled.touching].map((facet) => shuffle[facet]!).sort((a, b) => a - b);
        expect(touching).toEqual([...whole.touching]);
      }),
    );
  });

  it('measures alike after a rigid motion', () => {
    fc.assert(
      fc.property(closed, rigidMotion, (mesh, move) => {
        // A speck of asymmetry, so that no ray of a regular part runs exactly through an edge.
        const uneven = mapVertices(mesh, ([x, y, z]) => [
          x + 0.01 * Math.sin(7 * y + 3 * z),
          y,
          z + 0.013 * Math.sin(5 * x),
        ]);
        const still = measure(uneven);
        const moved = measure(mapVertices(uneven, move));
        still.rayWallMm.forEach((wall, facet) => {
          expect(near(moved.rayWallMm[facet]!, wall, 1e-5)).toBe(true);
          expect(near(moved.ballWallMm[facet]!, still.ballWallMm[facet]!, 1e-5)).toBe(true);
        });
      }),
    );
  });

  it('reaches a facet exactly when nothing stands above (below) its lifted center', () => {
    fc.assert(
      fc.property(anyMesh, (mesh) => {
        const { index, reach } = measure(mesh);
        const sine = Math.sin((0.1 * Math.PI) / 180);
        for (let facet = 0; facet < index.facetCount; facet++) {
          const stand = facetStand(mesh, facet);
          if (stand === null) continue;
          const lifted = stand.center.map(
            (value, axis) => value + 1e-5 * index.diagonalMm * stand.normal[axis]!,
          ) as [number, number, number];
          const open = (up: 1 | -1) =>
            up * stand.normal[2] > -sine && bruteRay(mesh, lifted, [0, 0, up], -1, 0) === null;
          expect(reach[facet]).toBe(
            (open(1) ? reachBit.fromShowSide : 0) | (open(-1) ? reachBit.fromCoreSide : 0),
          );
        }
      }),
    );
  });

  it('tells cutting bodies from bodies apart', () => {
    const shift = evenly(-6, 6);
    fc.assert(
      fc.property(fc.tuple(shift, shift, shift), (at) => {
        const low: Vec3 = [at[0], at[1], at[2]];
        const second = box(low, [at[0] + 2, at[1] + 3, at[2] + 4]);
        const pair = joinMeshes(box([0, 0, 0], [3, 3, 3]), second);
        const size = [2, 3, 4];
        const depth = at.map((value, axis) => Math.min(3 - value, value + size[axis]!));
        // Skip the nearly touching; a body wholly inside the other cuts nothing.
        fc.pre(depth.every((value) => Math.abs(value) > 1e-3));
        fc.pre(at.every((value, axis) => Math.abs(value) > 1e-3 && Math.abs(value + size[axis]! - 3) > 1e-3));
        const meet = depth.every((value) => value > 0);
        const inside =
          at.every((value, axis) => value > 0 && value + size[axis]! < 3) ||
          at.every((value, axis) => value < 0 && value + size[axis]! > 3);
        expect(measure(pair).touching.length > 0).toBe(meet && !inside);
      }),
      { numRuns: 300 },
    );
  });
});
