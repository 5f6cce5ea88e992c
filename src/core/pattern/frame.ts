/** The frame that a pattern is made in: third axis along the pull, the first two along the sides of the part. */
import { leastRectangle } from '../mesh/leastRectangle';
import { unitVector } from '../mesh/measure';
import type { Vec3 } from '../mesh/types';

/** Right-handed axes, each a unit vector of the part's own axes. */
export interface PatternFrame {
  readonly axes: readonly [Vec3, Vec3, Vec3];
}

const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/**
 * Turned about the pull until the part stands square in its box: walls along the grid come out smoother than walls across it.
 * @throws Problem `pull.zero`
 */
export function patternFrame(positions: Float64Array, pull: Vec3): PatternFrame {
  const third = unitVector(pull);
  const least = Math.min(...third.map(Math.abs));
  const across = third.findIndex((share) => Math.abs(share) === least);
  const start: Vec3 = [across === 0 ? 1 : 0, across === 1 ? 1 : 0, across === 2 ? 1 : 0];
  const second = unitVector(cross(third, start));
  const first = cross(second, third);
  const plan = new Float64Array((positions.length / 3) * 2);
  for (let at = 0, to = 0; at < positions.length; at += 3) {
    const [x, y, z] = [positions[at]!, positions[at + 1]!, positions[at + 2]!];
    plan[to++] = first[0] * x + first[1] * y + first[2] * z;
    plan[to++] = second[0] * x + second[1] * y + second[2] * z;
  }
  const turn = (leastRectangle(plan).turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const turned: Vec3 = [
    cos * first[0] + sin * second[0],
    cos * first[1] + sin * second[1],
    cos * first[2] + sin * second[2],
  ];
  return { axes: [turned, cross(third, turned), third] };
}

/** Points of the part's own axes, in the frame. */
export function intoFrame({ axes: [a, b, c] }: PatternFrame, positions: Float64Array): Float64Array {
  const turned = new Float64Array(positions.length);
  for (let at = 0; at < positions.length; at += 3) {
    const [x, y, z] = [positions[at]!, positions[at + 1]!, positions[at + 2]!];
    turned[at] = a[0] * x + a[1] * y + a[2] * z;
    turned[at + 1] = b[0] * x + b[1] * y + b[2] * z;
    turned[at + 2] = c[0] * x + c[1] * y + c[2] * z;
  }
  return turned;
}

/** Points of the frame, in the part's own axes. */
export function outOfFrame({ axes: [a, b, c] }: PatternFrame, positions: Float64Array): Float64Array {
  const turned = new Float64Array(positions.length);
  for (let at = 0; at < positions.length; at += 3) {
    const [x, y, z] = [positions[at]!, positions[at + 1]!, positions[at + 2]!];
    for (let axis = 0; axis < 3; axis++) turned[at + axis] = a[axis]! * x + b[axis]! * y + c[axis]! * z;
  }
  return turned;
}
