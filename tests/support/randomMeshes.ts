import * as fc from 'fast-check';
import type { IndexedMesh, Vec3 } from '../../src/core/mesh/types';

/** A finite coordinate that single precision holds exactly, of a size that a drawing has. */
const coordinate = fc
  .float({ min: -500, max: 500, noNaN: true })
  // Below this the float is a denormal or nearly: no drawing, and refused as a whole if alone.
  .map((value) => (Math.abs(value) < 1e-6 ? 0 : value));

/** Any triangles over a few vertices, most of them nonsense as a solid: for reading and writing. */
export const triangleSoup: fc.Arbitrary<IndexedMesh> = fc
  .record({
    points: fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 3, maxLength: 24 }),
    picks: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.nat()), { minLength: 1, maxLength: 40 }),
  })
  .map(({ points, picks }) => ({
    positions: Float64Array.from(points.flat()),
    facets: Uint32Array.from(picks.flat(), (pick) => pick % points.length),
  }))
  .filter(({ positions, facets }) => boxDiagonal(positions, facets) > 1e-3);

/** Triangles over a coarse grid: many are flat, doubled or share edges, and no two corners nearly meet. */
export const gridSoup: fc.Arbitrary<IndexedMesh> = fc
  .array(fc.tuple(fc.nat(3), fc.nat(3), fc.nat(2)), { minLength: 3, maxLength: 120 })
  .map((corners) => corners.slice(0, corners.length - (corners.length % 3)))
  .map((corners) => ({
    positions: Float64Array.from(corners.flat()),
    facets: Uint32Array.from(corners, (_, corner) => corner),
  }));

function boxDiagonal(positions: Float64Array, facets: Uint32Array): number {
  let square = 0;
  for (let axis = 0; axis < 3; axis++) {
    const values = Array.from(facets, (vertex) => positions[3 * vertex + axis]!);
    square += (Math.max(...values) - Math.min(...values)) ** 2;
  }
  return Math.sqrt(square);
}

/** (u, v) turned by an angle in radians. */
const turn = (u: number, v: number, angle: number): readonly [number, number] => [
  u * Math.cos(angle) - v * Math.sin(angle),
  u * Math.sin(angle) + v * Math.cos(angle),
];

/** A rigid motion: turn by Euler angles, then shift. */
export const rigidMotion: fc.Arbitrary<(vertex: Vec3) => Vec3> = fc
  .tuple(
    fc.double({ min: -3, max: 3, noNaN: true }),
    fc.double({ min: -3, max: 3, noNaN: true }),
    fc.double({ min: -3, max: 3, noNaN: true }),
    fc.tuple(coordinate, coordinate, coordinate),
  )
  .map(([aboutX, aboutY, aboutZ, shift]) => (vertex: Vec3): Vec3 => {
    const [x, y, z] = vertex;
    const [y1, z1] = turn(y, z, aboutX);
    const [z2, x1] = turn(z1, x, aboutY);
    const [x2, y2] = turn(x1, y1, aboutZ);
    return [x2 + shift[0], y2 + shift[1], z2 + shift[2]];
  });
