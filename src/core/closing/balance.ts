/** Balance along the pull alone: the mold stands off by the same everywhere and nothing tilts. */
import { pressureAt, stiffnessAt, type BedCurve } from './bedCurve';
import type { ClosingSamples } from './closingTypes';

export interface TranslationProblem {
  readonly samples: ClosingSamples;
  readonly curve: BedCurve;
  readonly clampForceAt: (standOffMm: number) => number;
  /** Height of the lands over their drawn place (shim), mm; null when the mold has no lands. */
  readonly landsAtMm: number | null;
  /**
   * Friction of the stack on the stone, dimensionless. The bed then resists by p (c + μ √(1 − c²)) per area: the
   * most that friction can take while the mold closes. 0 is the other bound.
   */
  readonly friction?: number;
}

export interface TranslationBalance {
  readonly standOffMm: number;
  readonly clampForceN: number;
  /** Along the pull, friction included. */
  readonly laminateForceN: number;
  readonly landForceN: number;
  readonly onLands: boolean;
  /** False when the mold closed as far as was looked without anything pushing back. */
  readonly held: boolean;
}

/** A mold without lands is followed this far past its drawn place, mm. */
const deepestMm = -20;

/** What the bed pushes back along the pull at a stand-off, N. Falls as the mold opens. */
export function bedForceN(
  { areaMm2, wallMm, pullCosine }: ClosingSamples,
  curve: BedCurve,
  standOffMm: number,
  friction = 0,
): number {
  let sum = 0;
  for (let i = 0; i < areaMm2.length; i++) {
    const area = areaMm2[i]!;
    if (area === 0) continue;
    const c = pullCosine[i]!;
    const pressure = pressureAt(curve, wallMm[i]! + standOffMm * c);
    if (pressure === 0) continue;
    const resisting = friction === 0 ? c : c + friction * Math.sqrt(Math.max(0, 1 - c * c));
    sum += pressure * resisting * area;
  }
  return sum;
}

/** How quickly that falls as the mold opens, N/mm. */
function bedStiffnessN(
  { areaMm2, wallMm, pullCosine }: ClosingSamples,
  curve: BedCurve,
  standOffMm: number,
  friction: number,
): number {
  let sum = 0;
  for (let i = 0; i < areaMm2.length; i++) {
    const c = pullCosine[i]!;
    const stiffness = stiffnessAt(curve, wallMm[i]! + standOffMm * c);
    if (stiffness === 0) continue;
    sum += stiffness * c * (c + friction * Math.sqrt(Math.max(0, 1 - c * c))) * areaMm2[i]!;
  }
  return sum;
}

/**
 * Bed force = clamp force − land force, with the land force zero unless the mold stands on its lands. Where a whole span
 * of stand-offs balances (nothing presses anywhere), the most closed one is taken.
 */
export function translationBalance(problem: TranslationProblem): TranslationBalance {
  const { samples, curve, clampForceAt, landsAtMm, friction = 0 } = problem;
  const excess = (standOffMm: number) =>
    bedForceN(samples, curve, standOffMm, friction) - clampForceAt(standOffMm);
  const closed = landsAtMm ?? deepestMm;
  if (excess(closed) <= 0) {
    const laminateForceN = bedForceN(samples, curve, closed, friction);
    const clampForceN = clampForceAt(closed);
    return {
      standOffMm: closed,
      clampForceN,
      laminateForceN,
      landForceN: landsAtMm === null ? 0 : clampForceN - laminateForceN,
      onLands: landsAtMm !== null,
      held: landsAtMm !== null,
    };
  }
  let low = closed;
  let high = Math.max(closed, 0) + 0.1;
  while (excess(high) > 0) {
    low = high;
    high *= 2;
    // Upright walls with friction can hold the mold open at any stand-off.
    if (high > 1e4) break;
  }
  // The bed's push is convex in the stand-off: Newton's steps from the closed side never pass the balance, except where
  // clamps stiffen as they open; then the bracket is halved.
  let at = low;
  for (let step = 0; step < 200 && high - low > 1e-14 * (1 + Math.abs(high)); step++) {
    const over = excess(at);
    if (over > 0) low = at;
    else high = at;
    const slope =
      bedStiffnessN(samples, curve, at, friction) + (clampForceAt(at + 1e-3) - clampForceAt(at)) * 1e3;
    const next = at + over / slope;
    if (Math.abs(next - at) <= 1e-15 * (1 + Math.abs(at))) {
      high = at;
      break;
    }
    at = next > low && next < high ? next : (low + high) / 2;
  }
  const standOffMm = high;
  const clampForceN = clampForceAt(standOffMm);
  return {
    standOffMm,
    clampForceN,
    laminateForceN: bedForceN(samples, curve, standOffMm, friction),
    landForceN: 0,
    onLands: false,
    held: true,
  };
}
