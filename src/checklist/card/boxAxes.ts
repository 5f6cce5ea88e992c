/** Points of the plan in the axes of the box, which lies along the least rectangle round the part. */
import type { ClosingFrame } from '../../core/closing/closingTypes';
import type { Vec3 } from '../../core/mesh/types';
import type { Point } from './drawing';

const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Turned back by an angle, counter-clockwise positive. */
function turnedBack([x, y]: Point, angleRad: number): Point {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  return [cos * x + sin * y, cos * y - sin * x];
}

/**
 * The first axis of the pours is the part axis that lies most across the pull (`core/stone/pours/pullFrame`), that of the
 * balance of closing may be another; the box is turned from the former.
 */
export function boxAxes({ pull, u, v }: ClosingFrame, boxTurnDeg: number) {
  const shares = pull.map(Math.abs);
  const across = shares.indexOf(Math.min(...shares));
  const first: Vec3 = [Number(across === 0), Number(across === 1), Number(across === 2)];
  const betweenRad = Math.atan2(dot(first, v), dot(first, u));
  const turnRad = (boxTurnDeg * Math.PI) / 180;
  return {
    /** From u and v of the balance. */
    ofPlan: (point: Point): Point => turnedBack(point, betweenRad + turnRad),
    /** From the axes of the rim's outline. */
    ofOutline: (point: Point): Point => turnedBack(point, turnRad),
  };
}
