/** The frame that a pull and a part's points give. */
import type { Vec3 } from '../mesh/types';
import type { ClosingFrame } from './closingTypes';

const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const along = (a: Vec3, by: number): Vec3 => [a[0] * by, a[1] * by, a[2] * by];
const plus = (...vectors: readonly Vec3[]): Vec3 =>
  vectors.reduce<Vec3>((sum, one) => [sum[0] + one[0], sum[1] + one[1], sum[2] + one[2]], [0, 0, 0]);
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** `positions`: 3 numbers per point, mm. `pull` a unit vector. */
export function closingFrame(positions: ArrayLike<number>, pull: Vec3): ClosingFrame {
  const size = pull.map(Math.abs);
  const most = size.indexOf(Math.max(...size));
  const start: Vec3 = most === 0 ? [0, 1, 0] : most === 1 ? [0, 0, 1] : [1, 0, 0];
  const flat = plus(start, along(pull, -dot(start, pull)));
  const u = along(flat, 1 / Math.hypot(...flat));
  const v = cross(pull, u);
  if (positions.length < 3) return { pull, u, v, originMm: [0, 0, 0], halfSizeMm: [0, 0], depthMm: 0 };
  const [lowU, highU] = extent(positions, u);
  const [lowV, highV] = extent(positions, v);
  const [bottom, top] = extent(positions, pull);
  return {
    pull,
    u,
    v,
    originMm: plus(along(u, (lowU + highU) / 2), along(v, (lowV + highV) / 2), along(pull, bottom)),
    halfSizeMm: [(highU - lowU) / 2, (highV - lowV) / 2],
    depthMm: top - bottom,
  };
}

/** Least and most of the points along a direction. */
function extent(positions: ArrayLike<number>, [x, y, z]: Vec3): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (let at = 0; at + 2 < positions.length; at += 3) {
    const place = positions[at]! * x + positions[at + 1]! * y + positions[at + 2]! * z;
    if (place < low) low = place;
    if (place > high) high = place;
  }
  return [low, high];
}

/** A point of the part as [along u, along v, height over the lands], mm from the middle of the plan. */
export function onPlan(frame: ClosingFrame, pointMm: Vec3): Vec3 {
  const from: Vec3 = [
    pointMm[0] - frame.originMm[0],
    pointMm[1] - frame.originMm[1],
    pointMm[2] - frame.originMm[2],
  ];
  return [dot(from, frame.u), dot(from, frame.v), dot(from, frame.pull)];
}
