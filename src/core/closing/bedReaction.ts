/** Where the push of the fiber bed acts on the plan, to be held against where the clamps act. */
import { pressureAt, type BedCurve } from './bedCurve';
import type { ClosingSamples } from './closingTypes';
import { gapMm, type ClosingPosition } from './tiltedBalance';

export interface BedReaction {
  /** Along the pull. */
  readonly forceN: number;
  /** mm along u and v from the middle of the plan: a force along the pull there turns the mold as the whole bed does. */
  readonly planMm: readonly [number, number];
}

/**
 * Sideways pushes of steep walls turn the mold too and are in it, so on a deep one-sided part the place may lie outside
 * of the plan. null when next to nothing presses.
 */
export function bedReaction(
  samples: ClosingSamples,
  position: ClosingPosition,
  curve: BedCurve,
): BedReaction | null {
  const { areaMm2, pullCosine, armUMm, armVMm } = samples;
  let [forceN, aboutU, aboutV] = [0, 0, 0];
  for (let place = 0; place < areaMm2.length; place++) {
    const area = areaMm2[place]!;
    if (area === 0) continue;
    const load = pressureAt(curve, gapMm(samples, position, place)) * area;
    forceN += load * pullCosine[place]!;
    aboutU += load * armUMm[place]!;
    aboutV += load * armVMm[place]!;
  }
  // A force at (u, v) turns by v about u and by −u about v.
  return forceN > 1e-6 ? { forceN, planMm: [-aboutV / forceN, aboutU / forceN] } : null;
}
