/** Regular dodecahedron as facets, for integrals over a solid that somebody else printed. */
import type { IndexedMesh, Vec3 } from '../../src/core/mesh/types';

const golden = (1 + Math.sqrt(5)) / 2;
const signs = [-1, 1];

const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Corners of three upright golden rectangles with half sides `p` and `q`. */
const rectangles = (p: number, q: number): readonly Vec3[] =>
  signs.flatMap((a) =>
    signs.flatMap((b): Vec3[] => [
      [0, a * p, b * q],
      [a * p, b * q, 0],
      [b * q, 0, a * p],
    ]),
  );

/** Five corners turning left as seen from outside. */
function faceToward(outward: Vec3, corners: readonly Vec3[]): readonly number[] {
  const five = corners
    .map((corner, i) => ({ i, reach: dot(corner, outward) }))
    .toSorted((one, other) => other.reach - one.reach)
    .slice(0, 5)
    .map(({ i }) => i);
  const along = cross(corners[five[0]!]!, outward);
  const across = cross(outward, along);
  const scale = Math.sqrt(dot(outward, outward));
  const turn = (i: number) => Math.atan2(dot(corners[i]!, across), dot(corners[i]!, along) * scale);
  return five.toSorted((one, other) => turn(one) - turn(other));
}

/** Inscribed in a sphere round the origin: corners of a cube and of three rectangles, each face split into three facets. */
export function dodecahedron(radiusMm: number): IndexedMesh {
  const cube = signs.flatMap((x) => signs.flatMap((y) => signs.map((z): Vec3 => [x, y, z])));
  const corners = [...cube, ...rectangles(1 / golden, golden)];
  const facets = rectangles(golden, 1).flatMap((outward) => {
    const [first, ...others] = faceToward(outward, corners) as [number, ...number[]];
    return [0, 1, 2].flatMap((i) => [first, others[i]!, others[i + 1]!]);
  });
  return {
    positions: Float64Array.from(corners.flat(), (c) => (c * radiusMm) / Math.sqrt(3)),
    facets: Uint32Array.from(facets),
  };
}
