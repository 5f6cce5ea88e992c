/** The wind meter's own mark: the rotor of a cup wind gauge seen from above, three cups on three arms. */
import { smoothStep } from './shellDesign';

export interface RotorMark {
  readonly centerXMm: number;
  readonly centerYMm: number;
  readonly heightMm: number;
}

const armLengthMm = 6.2;
const armHalfWidthMm = 1;
const cupRadiusMm = 2.5;
/** Half width of the slope around the mark; wide enough that the wall can follow it on the inside. */
const slopeMm = 1;

/** Height of the mark over the face at a place. */
export function rotorMarkMm(mark: RotorMark, xMm: number, yMm: number): number {
  const x = xMm - mark.centerXMm;
  const y = yMm - mark.centerYMm;
  let distance = Infinity;
  for (let arm = 0; arm < 3; arm++) {
    const angle = (2 * Math.PI * arm) / 3;
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const along = Math.min(armLengthMm, Math.max(0, x * cos + y * sin));
    const fromArm = Math.hypot(x - along * cos, y - along * sin) - armHalfWidthMm;
    const fromCup = Math.hypot(x - armLengthMm * cos, y - armLengthMm * sin) - cupRadiusMm;
    distance = softMinimum(distance, softMinimum(fromArm, fromCup));
  }
  return mark.heightMm * smoothStep(slopeMm, -slopeMm, distance);
}

/** The smaller of two distances, rounded over 1 mm where they are alike, so that corners between arms stay open. */
function softMinimum(a: number, b: number): number {
  const roundMm = 1;
  const near = Math.max(0, roundMm - Math.abs(a - b)) / roundMm;
  return Math.min(a, b) - (near * near * roundMm) / 4;
}
