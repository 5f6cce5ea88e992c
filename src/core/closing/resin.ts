/** Resin that the closed gaps push out of the laminate, and the room that other gaps leave for it. */
import type { ClosingSamples } from './closingTypes';
import { gapMm, type ClosingPosition } from './tiltedBalance';

export interface ResinMoved {
  /** Pressed out where the gap is under the cured thickness, mm³. */
  readonly pressedOutMm3: number;
  /** Missing where the gap is over it: that much resin could be taken up, the rest stays air, mm³. */
  readonly roomMm3: number;
  /** What has to leave over the rim even if all room is filled, mm³. */
  readonly overTheRimMm3: number;
}

/** `curedMm`: the stack without voids and without bleed. */
export function resinMoved(samples: ClosingSamples, position: ClosingPosition, curedMm: number): ResinMoved {
  let pressedOutMm3 = 0;
  let roomMm3 = 0;
  for (let place = 0; place < samples.areaMm2.length; place++) {
    const area = samples.areaMm2[place]!;
    if (area === 0) continue;
    const over = gapMm(samples, position, place) - curedMm;
    if (over < 0) pressedOutMm3 -= area * over;
    else roomMm3 += area * over;
  }
  return { pressedOutMm3, roomMm3, overTheRimMm3: Math.max(0, pressedOutMm3 - roomMm3) };
}
