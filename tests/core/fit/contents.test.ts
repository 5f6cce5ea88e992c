/** Contents in a shell: clearance against brute force, and the least scale and shift by hand. */
import { describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import { middleOf, noTurn, placed, surfacePoints, type Body } from '../../../src/core/fit/bodies';
import { cavityFacets, someFacets } from '../../../src/core/fit/cavity';
import { clearances } from '../../../src/core/fit/clearance';
import { wayToBody } from '../../../src/core/fit/convexDistance';
import { findFit } from '../../../src/core/fit/leastScale';
import { findRim } from '../../../src/core/fit/rim';
import { nearestTo, nearestToBody, triangleTree } from '../../../src/core/fit/triangleTree';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { closestOnTriangle } from '../../../src/core/mesh/closestOnTriangle';
import { domeShell } from '../../support/meshes';
import { propertySeed } from '../../support/propertySeed';
import { codeOf } from '../../support/codeOf';
import { boxShell } from './shells';

const up: Vec3 = [0, 0, 1];
const body = (sizeMm: Vec3, placeMm: Vec3, more: Partial<Body> = {}): Body => ({
  name: 'board',
  shape: 'box',
  sizeMm,
  placeMm,
  turnDeg: [0, 0, 0],
  ...more,
});
function coreOf(mesh: IndexedMesh) {
  const found = findRim(mesh, up);
  return { found, core: triangleTree(someFacets(mesh, cavityFacets(mesh, found), null)) };
}

describe('the core face', () => {
  it('of a box shell is its five inner faces', () => {
    const mesh = boxShell(100, 50, 20, 2);
    const facets = someFacets(mesh, cavityFacets(mesh, findRim(mesh, up)), null);
    const inside = Array.from(facets.facets, (vertex) => Math.abs(mesh.positions[3 * vertex]!));
    expect(Math.max(...inside)).toBe(48);
  });
});

describe('clearance', () => {
  const { core, found } = coreOf(boxShell(100, 50, 20, 2));
  const half = { pull: up, rim: found.rim.frame, hasMate: false };

  it('of boxes and cylinders by hand', () => {
    // Inside from -48 to 48, -23 to 23, 0 to 18.
    const [one] = clearances(core, [body([60, 30, 4], [10, 2, 10])], half);
    expect(one!.clearanceMm).toBeCloseTo(6, 6);
    const [deep] = clearances(core, [body([80, 30, 4], [10, 0, 10])], half);
    expect(deep!.clearanceMm).toBeCloseTo(-2, 6);
    const [cell] = clearances(
      core,
      [body([18, 18, 65], [0, 0, 8.5], { shape: 'cylinder', turnDeg: [0, 90, 0] })],
      half,
    );
    expect(cell!.clearanceMm).toBeCloseTo(0.5, 4);
    expect(cell!.overRimMm).toBeCloseTo(0.5, 6);
  });

  it('under a window of the roof stand inside; over it they are outside', () => {
    // The roof is a fan about its middle: without two of its facets it is open there.
    const open = boxShell(100, 50, 20, 2);
    const roof = (facet: number) => {
      const corners = [0, 1, 2].map((k) => open.positions[3 * open.facets[3 * facet + k]! + 2]!);
      return Math.min(...corners) === 20 || (Math.min(...corners) === 18 && Math.max(...corners) === 18);
    };
    const without = Array.from({ length: open.facets.length / 3 }, (_, facet) => facet)
      .filter(roof)
      .slice(0, 2);
    const facets = open.facets.filter((_, corner) => !without.includes(Math.floor(corner / 3)));
    const windowed = triangleTree(
      someFacets(
        { ...open, facets },
        cavityFacets(open, findRim(open, up)).filter((_, facet) => !without.includes(facet)),
        null,
      ),
    );
    const middle = (zMm: number) => () => clearances(windowed, [body([4, 4, 4], [0, 18, zMm])], half);
    expect(codeOf(middle(10))).toBeNull();
    expect(codeOf(middle(40))).toBe('fit.outside');
  });

  it('refuses what is outside, by its name', () => {
    for (const placeMm of [
      [200, 0, 10],
      [0, 0, 40],
      [0, 0, -30],
    ] as const)
      expect(codeOf(() => clearances(core, [body([10, 10, 4], placeMm)], half))).toBe('fit.outside');
  });

  it(`is exact within 0.02 mm against trying every triangle with many points (seed ${propertySeed})`, () => {
    const mesh = domeShell(5, 16);
    const tree = triangleTree(mesh);
    const length = fc.double({ min: 1, max: 12, noNaN: true });
    const place = fc.double({ min: -60, max: 60, noNaN: true });
    const turn = fc.double({ min: -180, max: 180, noNaN: true });
    fc.assert(
      fc.property(
        fc.tuple(length, length, length),
        fc.tuple(place, place, place),
        fc.tuple(turn, turn, turn),
        fc.boolean(),
        (sizeMm, placeMm, turnDeg, isBox) => {
          const one = placed(body(sizeMm, placeMm, { turnDeg, shape: isBox ? 'box' : 'cylinder' }));
          const fast = nearestToBody(tree, one)!;
          const brute = bruteDistance(mesh, one);
          if (fast.way === null) expect(brute).toBeLessThan(0.02);
          else expect(Math.abs(fast.distanceMm - brute)).toBeLessThan(0.02);
        },
      ),
      { seed: propertySeed, numRuns: 12 },
    );
  });

  it('of a box to a triangle by hand: corner to face, edge to edge, through', () => {
    const cube = placed(body([2, 2, 2], [0, 0, 0]));
    const way = (z: number) =>
      wayToBody(cube, [
        [-9, -9, z],
        [9, -9, z],
        [0, 9, z],
      ]);
    expect(Math.hypot(...way(3)!)).toBeCloseTo(2, 6);
    expect(way(0.5)).toBeNull();
    expect(
      Math.hypot(
        ...wayToBody(cube, [
          [3, 3, -9],
          [3, 3, 9],
          [9, 9, 0],
        ])!,
      ),
    ).toBeCloseTo(2 * Math.SQRT2, 6);
  });
});

/** By alternating between the two convex sets from many starts: slow, and told by nothing of ours but a closest point each. */
function bruteDistance(mesh: IndexedMesh, one: ReturnType<typeof placed>): number {
  const points = surfacePoints(one, 6);
  let least = Number.POSITIVE_INFINITY;
  const corner = (vertex: number): Vec3 => [
    mesh.positions[3 * vertex]!,
    mesh.positions[3 * vertex + 1]!,
    mesh.positions[3 * vertex + 2]!,
  ];
  for (let facet = 0; facet < mesh.facets.length; facet += 3) {
    const triangle = [
      corner(mesh.facets[facet]!),
      corner(mesh.facets[facet + 1]!),
      corner(mesh.facets[facet + 2]!),
    ] as const;
    let start: Vec3 = points[0]!;
    let best = Number.POSITIVE_INFINITY;
    for (const point of points) {
      const q = closestOnTriangle(point, ...triangle);
      const mm = Math.hypot(point[0] - q[0], point[1] - q[1], point[2] - q[2]);
      if (mm < best) [best, start] = [mm, q];
    }
    if (best > least + 8) continue;
    // Projections in turn converge for two convex sets.
    for (let round = 0; round < 200; round++) {
      const inBody = clamped(one, start);
      const q = closestOnTriangle(inBody, ...triangle);
      const mm = Math.hypot(inBody[0] - q[0], inBody[1] - q[1], inBody[2] - q[2]);
      best = Math.min(best, mm);
      start = q;
      if (mm < 1e-9) break;
    }
    least = Math.min(least, best);
  }
  return least;
}

const limit = (value: number, half: number) => Math.min(half, Math.max(-half, value));

function clamped({ shape, halfMm, placeMm, turn }: ReturnType<typeof placed>, point: Vec3): Vec3 {
  const from = [0, 1, 2].map((axis) => point[axis]! - placeMm[axis]!);
  const own = [0, 1, 2].map(
    (axis) => turn[0][axis]! * from[0]! + turn[1][axis]! * from[1]! + turn[2][axis]! * from[2]!,
  );
  let [x, y] = [limit(own[0]!, halfMm[0]), limit(own[1]!, halfMm[1])];
  if (shape === 'cylinder') {
    const radial = Math.hypot(own[0]!, own[1]!);
    const share = radial > halfMm[0] ? halfMm[0] / radial : 1;
    [x, y] = [own[0]! * share, own[1]! * share];
  }
  const z = limit(own[2]!, halfMm[2]);
  return [0, 1, 2].map(
    (axis) => turn[axis]![0] * x + turn[axis]![1] * y + turn[axis]![2] * z + placeMm[axis]!,
  ) as unknown as Vec3;
}

const wish = (clearanceMm: number) => ({ clearanceMm, wallMm: 2, aboutMm: [0, 0, 0] as const, axis: up });

describe('the least scale', () => {
  // Shell 100 x 60 x 40 outside, wall 2: at scale s the inside is 100 s - 4, 60 s - 4 and open below, 40 s - 2 high.
  const { core } = coreOf(boxShell(100, 60, 40, 2));
  const scaleOf = (bodies: readonly Body[], clearanceMm: number) =>
    findFit(core, bodies.map(placed), wish(clearanceMm), true);

  it.each<[string, readonly Body[], number, number]>([
    // 100 s - 4 >= 76 + 2 x 0.5
    ['0.8100: a board of 76 mm along the length', [body([76, 20, 3], [3, 1, 20])], 0.5, 0.81],
    // 60 s - 4 >= 46 + 2 x 0.5
    ['0.8500: a board of 46 mm across', [body([30, 46, 3], [-5, 2, 15])], 0.5, 0.85],
    // 100 s - 4 >= 40 + 29.86 + 2 x 0.5: two of them end to end
    [
      '0.7486: two boards, rigid to each other',
      [body([40, 20, 3], [-15, 0, 10]), body([29.86, 20, 3], [19.93, 0, 10])],
      0.5,
      0.7486,
    ],
  ])('%s', (_, bodies, clearanceMm, scale) => {
    const found = scaleOf(bodies, clearanceMm);
    expect(found!.scale).toBeCloseTo(scale, 4);
    expect(found!.clearanceMm).toBeGreaterThan(clearanceMm - 1e-3);
  });

  it('turns a board back that lies askew', () => {
    const found = scaleOf([body([76, 20, 3], [3, 1, 20], { turnDeg: [0, 0, 4] })], 0.5);
    expect(found!.scale).toBeCloseTo(0.81, 4);
    expect(found!.turnDeg).toBeCloseTo(4, 1);
  });

  it('shifts what fits without a change of size, by hand', () => {
    const found = findFit(core, [placed(body([80, 20, 3], [12, 0, 20]))], wish(1), false);
    // 48 - 1 - 40 = 7: back by 5.
    expect(found!.scale).toBe(1);
    expect(found!.shiftMm[0]).toBeCloseTo(-5, 3);
    expect(Math.hypot(found!.shiftMm[1], found!.shiftMm[2])).toBeLessThan(1e-3);
  });

  it('says so where no shift helps', () => {
    expect(findFit(core, [placed(body([98, 20, 3], [0, 0, 20]))], wish(1), false)).toBeNull();
  });

  it('bodies far from each other count together', () => {
    expect(middleOf([placed(body([2, 2, 2], [-9, 0, 0])), placed(body([2, 2, 2], [9, 0, 4]))])).toEqual([
      0, 0, 2,
    ]);
    expect(placed(body([2, 2, 2], [0, 0, 0])).turn).toEqual(noTurn);
    expect(nearestTo(core, [0, 0, 30])!.distanceMm).toBeCloseTo(8, 9);
  });
});
