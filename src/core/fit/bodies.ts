/** What goes inside of an enclosure, as boxes and cylinders that are placed and turned. */
import type { Matrix3, Vector3 } from '../numeric/matrix3';
import { timesMatrix, timesVector, transposed } from '../numeric/matrix3';
import { dot, minus, plus, times } from '../numeric/vectors';

export type BodyShape = 'box' | 'cylinder';

export interface Body {
  readonly name: string;
  readonly shape: BodyShape;
  /** Box: its three lengths. Cylinder: diameter, diameter, length along its third axis. */
  readonly sizeMm: Vector3;
  /** Its middle, in the axes of the part. */
  readonly placeMm: Vector3;
  /** Turned about x, then y, then z, all axes of the part, right-handed. */
  readonly turnDeg: Vector3;
}

/** A body as it lies: columns of `turn` are its own axes. */
export interface PlacedBody {
  readonly shape: BodyShape;
  readonly halfMm: Vector3;
  readonly placeMm: Vector3;
  readonly turn: Matrix3;
}

/** A change of place of all bodies together: turned about `aboutMm`, then shifted. */
export interface Move {
  readonly turn: Matrix3;
  readonly aboutMm: Vector3;
  readonly shiftMm: Vector3;
}

export const noTurn: Matrix3 = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

function aboutAxis(axis: 0 | 1 | 2, deg: number): Matrix3 {
  const [cos, sin] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  if (axis === 0)
    return [
      [1, 0, 0],
      [0, cos, -sin],
      [0, sin, cos],
    ];
  if (axis === 1)
    return [
      [cos, 0, sin],
      [0, 1, 0],
      [-sin, 0, cos],
    ];
  return [
    [cos, -sin, 0],
    [sin, cos, 0],
    [0, 0, 1],
  ];
}

export function placed({ shape, sizeMm, placeMm, turnDeg: [x, y, z] }: Body): PlacedBody {
  const turn = timesMatrix(aboutAxis(2, z), timesMatrix(aboutAxis(1, y), aboutAxis(0, x)));
  return { shape, halfMm: times(sizeMm, 0.5), placeMm, turn };
}

export function movedBody(body: PlacedBody, { turn, aboutMm, shiftMm }: Move): PlacedBody {
  const placeMm = plus(plus(timesVector(turn, minus(body.placeMm, aboutMm)), aboutMm), shiftMm);
  return { ...body, placeMm, turn: timesMatrix(turn, body.turn) };
}

/** The rotation by a vector of angles, radians (Rodrigues). */
export function turnBy([x, y, z]: Vector3): Matrix3 {
  const angle = Math.hypot(x, y, z);
  if (angle === 0) return noTurn;
  const [a, b, c] = [x / angle, y / angle, z / angle];
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const rest = 1 - cos;
  return [
    [cos + a * a * rest, a * b * rest - c * sin, a * c * rest + b * sin],
    [b * a * rest + c * sin, cos + b * b * rest, b * c * rest - a * sin],
    [c * a * rest - b * sin, c * b * rest + a * sin, cos + c * c * rest],
  ];
}

/** The point of the body that lies farthest along a direction. */
export function farthest({ shape, halfMm, placeMm, turn }: PlacedBody, direction: Vector3): Vector3 {
  const own = timesVector(transposed(turn), direction);
  const radial = Math.hypot(own[0], own[1]);
  const flat: readonly [number, number] =
    shape === 'box'
      ? [own[0] < 0 ? -halfMm[0] : halfMm[0], own[1] < 0 ? -halfMm[1] : halfMm[1]]
      : radial > 0
        ? [(halfMm[0] * own[0]) / radial, (halfMm[0] * own[1]) / radial]
        : [0, 0];
  return plus(placeMm, timesVector(turn, [flat[0], flat[1], own[2] < 0 ? -halfMm[2] : halfMm[2]]));
}

/**
 * How far a box along the axes (center, half widths) is from the box round the body, at least: the widest gap between their shadows on
 * the axes of either, or the way from its middle less its reach. For pruning.
 */
export function apartFrom({ halfMm, placeMm, turn }: PlacedBody) {
  const [[a, b, c], [d, e, f], [g, h, i]] = turn;
  const [px, py, pz] = placeMm;
  const [wx, wy, wz] = halfMm;
  const reachX = Math.abs(a) * wx + Math.abs(b) * wy + Math.abs(c) * wz;
  const reachY = Math.abs(d) * wx + Math.abs(e) * wy + Math.abs(f) * wz;
  const reachZ = Math.abs(g) * wx + Math.abs(h) * wy + Math.abs(i) * wz;
  return (cx: number, cy: number, cz: number, hx: number, hy: number, hz: number): number => {
    const [x, y, z] = [cx - px, cy - py, cz - pz];
    const shadows = Math.max(Math.abs(x) - hx - reachX, Math.abs(y) - hy - reachY, Math.abs(z) - hz - reachZ);
    const ownX = Math.abs(a * x + d * y + g * z) - wx;
    const ownY = Math.abs(b * x + e * y + h * z) - wy;
    const ownZ = Math.abs(c * x + f * y + i * z) - wz;
    const ownShadows = Math.max(
      ownX - Math.abs(a) * hx - Math.abs(d) * hy - Math.abs(g) * hz,
      ownY - Math.abs(b) * hx - Math.abs(e) * hy - Math.abs(h) * hz,
      ownZ - Math.abs(c) * hx - Math.abs(f) * hy - Math.abs(i) * hz,
    );
    const fromMiddle =
      Math.hypot(Math.max(0, ownX), Math.max(0, ownY), Math.max(0, ownZ)) - Math.hypot(hx, hy, hz);
    return Math.max(0, shadows, ownShadows, fromMiddle);
  };
}

/** Points of the surface about a step apart, corners and edges among them. */
export function surfacePoints(
  { shape, halfMm, placeMm, turn }: PlacedBody,
  stepMm: number,
): readonly Vector3[] {
  const points: Vector3[] = [];
  const add = (x: number, y: number, z: number) => points.push(plus(placeMm, timesVector(turn, [x, y, z])));
  const along = (half: number) => {
    const steps = Math.min(40, Math.max(1, Math.ceil((2 * half) / stepMm)));
    return Array.from({ length: steps + 1 }, (_, k) => -half + (2 * half * k) / steps);
  };
  const [hx, hy, hz] = halfMm;
  if (shape === 'box') {
    for (const x of along(hx))
      for (const y of along(hy))
        for (const z of along(hz))
          if (Math.abs(x) >= hx || Math.abs(y) >= hy || Math.abs(z) >= hz) add(x, y, z);
    return points;
  }
  const turns = Math.min(96, Math.max(24, Math.ceil((2 * Math.PI * hx) / stepMm)));
  for (let k = 0; k < turns; k++) {
    const [x, y] = [hx * Math.cos((2 * Math.PI * k) / turns), hx * Math.sin((2 * Math.PI * k) / turns)];
    for (const z of along(hz)) add(x, y, z);
    for (const share of [0.33, 0.67]) for (const z of [-hz, hz]) add(share * x, share * y, z);
  }
  return points;
}

/** Middle of the box, along the axes of the part, round all bodies. */
export function middleOf(bodies: readonly PlacedBody[]): Vector3 {
  const ends = (axis: 0 | 1 | 2): number => {
    const along: Vector3 = [axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0];
    const high = Math.max(...bodies.map((body) => dot(farthest(body, along), along)));
    const low = Math.min(...bodies.map((body) => dot(farthest(body, times(along, -1)), along)));
    return (high + low) / 2;
  };
  return [ends(0), ends(1), ends(2)];
}
