import { leastRectangle } from '../../mesh/leastRectangle';
import { unitVector } from '../../mesh/measure';
import type { IndexedMesh, Vec3 } from '../../mesh/types';

/** Right-handed axes with the third along the pull, their origin in the middle of the pattern's box. */
export interface PullFrame {
  readonly axes: readonly [Vec3, Vec3, Vec3];
  /** Place of the frame's origin in the part's own axes, mm. */
  readonly originMm: Vec3;
  /**
   * By which the first two axes are turned about the third from where the part's own axes put them, counter-clockwise seen
   * against the pull; over -45 up to 45 degrees.
   */
  readonly turnDeg: number;
}

/**
 * The frame of a pull. Its first axis is the part axis that lies most across the pull, made square to it, then turned
 * about the pull until the axes lie along the least rectangle round the part: a part that was drawn or imported askew
 * stands as square in its box as one drawn upright. Keeping the origin near the part keeps single precision good to about
 * 1e-5 mm on 100 mm.
 * @throws Problem `pull.zero`
 */
export function pullFrame(mesh: IndexedMesh, pull: Vec3): PullFrame {
  const [first, second, third] = axesByPart(pull);
  const { turnDeg } = leastRectangle(seenAlong(mesh.positions, first, second));
  const { low, high } = boxOf(mesh.positions);
  return {
    axes: [...turnedAxes(first, second, turnDeg), third],
    originMm: [(low[0]! + high[0]!) / 2, (low[1]! + high[1]!) / 2, (low[2]! + high[2]!) / 2],
    turnDeg,
  };
}

/** Right-handed axes of which the first lies as a part axis does, as far as the pull allows. */
function axesByPart(pull: Vec3): readonly [Vec3, Vec3, Vec3] {
  const third = unitVector(pull);
  const least = Math.min(...third.map(Math.abs));
  const across = third.findIndex((share) => Math.abs(share) === least);
  const first = unitVector([
    (across === 0 ? 1 : 0) - third[across]! * third[0],
    (across === 1 ? 1 : 0) - third[across]! * third[1],
    (across === 2 ? 1 : 0) - third[across]! * third[2],
  ]);
  const second: Vec3 = [
    third[1] * first[2] - third[2] * first[1],
    third[2] * first[0] - third[0] * first[2],
    third[0] * first[1] - third[1] * first[0],
  ];
  return [first, second, third];
}

function seenAlong(positions: Float64Array, first: Vec3, second: Vec3): Float64Array {
  const plan = new Float64Array((positions.length / 3) * 2);
  for (let at = 0, to = 0; at < positions.length; at += 3) {
    const [x, y, z] = [positions[at]!, positions[at + 1]!, positions[at + 2]!];
    plan[to++] = first[0] * x + first[1] * y + first[2] * z;
    plan[to++] = second[0] * x + second[1] * y + second[2] * z;
  }
  return plan;
}

const mix = (a: Vec3, b: Vec3, ofA: number, ofB: number): Vec3 => [
  ofA * a[0] + ofB * b[0],
  ofA * a[1] + ofB * b[1],
  ofA * a[2] + ofB * b[2],
];

function turnedAxes(first: Vec3, second: Vec3, turnDeg: number): readonly [Vec3, Vec3] {
  const [cos, sin] = cosSin(turnDeg);
  return [mix(first, second, cos, sin), mix(second, first, cos, -sin)];
}

const cosSin = (deg: number) => [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)] as const;

/** Points across the pull with the turn of the frame taken back: in the axes that the part's own put there. */
export function turnedBack(
  { turnDeg }: Pick<PullFrame, 'turnDeg'>,
  points: readonly (readonly [number, number])[],
): readonly (readonly [number, number])[] {
  const [cos, sin] = cosSin(turnDeg);
  return points.map(([x, y]) => [cos * x - sin * y, sin * x + cos * y] as const);
}

export function intoFrame({ axes, originMm }: PullFrame, positions: Float64Array): Float64Array {
  const [a, b, c] = axes;
  const [ox, oy, oz] = originMm;
  const turned = new Float64Array(positions.length);
  for (let at = 0; at < positions.length; at += 3) {
    const x = positions[at]! - ox;
    const y = positions[at + 1]! - oy;
    const z = positions[at + 2]! - oz;
    turned[at] = a[0] * x + a[1] * y + a[2] * z;
    turned[at + 1] = b[0] * x + b[1] * y + b[2] * z;
    turned[at + 2] = c[0] * x + c[1] * y + c[2] * z;
  }
  return turned;
}

export function outOfFrame({ axes, originMm }: PullFrame, positions: Float64Array): Float64Array {
  const [a, b, c] = axes;
  const turned = new Float64Array(positions.length);
  for (let at = 0; at < positions.length; at += 3) {
    const x = positions[at]!;
    const y = positions[at + 1]!;
    const z = positions[at + 2]!;
    for (let axis = 0; axis < 3; axis++) {
      turned[at + axis] = originMm[axis]! + a[axis]! * x + b[axis]! * y + c[axis]! * z;
    }
  }
  return turned;
}

export interface FrameBox {
  readonly low: readonly number[];
  readonly high: readonly number[];
}

export function boxOf(positions: Float64Array): FrameBox {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let at = 0; at < positions.length; at += 3) {
    for (let axis = 0; axis < 3; axis++) {
      const value = positions[at + axis]!;
      if (value < low[axis]!) low[axis] = value;
      if (value > high[axis]!) high[axis] = value;
    }
  }
  return { low, high };
}
