/** Clamps on the closed mold: forces as springs, their sum, and where the sum acts. */
import { Problem } from '../problem';

/** One clamp at one place. Its force is `forceN + rateNPerMm × (stand-off there − atOpeningMm)`, never less than 0. */
export interface ClampSpring {
  readonly forceN: number;
  /** How far the mold stood off under the clamp when the force was measured; 0 is shut. */
  readonly atOpeningMm: number;
  readonly rateNPerMm: number;
  /** Place on the plan from the middle of the part, mm along u and v. */
  readonly planMm: readonly [number, number];
}

/** Some equal clamps as the maker lists them. */
export interface ClampGroup {
  readonly count: number;
  readonly forceN: number;
  readonly atOpeningMm: number;
  readonly rateNPerMm: number;
  /** null: spread evenly round the rim. */
  readonly planMm: readonly [number, number] | null;
}

/** Force of a spring clamp after the stack has thinned: k (x0 − d), N; 0 once it is slack. */
export function springForceAfterThinning(
  rateNPerMm: number,
  preloadTravelMm: number,
  thinningMm: number,
): number {
  return Math.max(0, rateNPerMm * (preloadTravelMm - thinningMm));
}

/** Spring rate from two measured points, N/mm. */
export function rateFromTwoPoints(
  one: { readonly forceN: number; readonly openingMm: number },
  other: { readonly forceN: number; readonly openingMm: number },
): number {
  const rate = (other.forceN - one.forceN) / (other.openingMm - one.openingMm);
  if (!(rate >= 0 && Number.isFinite(rate)))
    throw new Problem(
      'closing.clampRate',
      'The two measured points of a clamp need two different openings, with more force at the wider one.',
    );
  return rate;
}

/** Mean pressure of a force on an area, kPa: N / mm² × 1000. */
export function meanPressureKpa(forceN: number, areaMm2: number): number {
  return (1000 * forceN) / areaMm2;
}

/** Pressure of a vacuum bag, kPa, at a share of full vacuum. */
export function vacuumBagKpa(vacuumShare: number, atmosphereKpa = 101.325): number {
  return vacuumShare * atmosphereKpa;
}

/**
 * Every clamp at its place.
 * @param halfSizeMm half the part's plan, round which unplaced clamps are spread
 * @throws Problem `closing.noClamps` when nothing presses
 */
export function placedClamps(
  groups: readonly ClampGroup[],
  halfSizeMm: readonly [number, number],
): readonly ClampSpring[] {
  const clamps = groups.flatMap(({ count, planMm, ...spring }) =>
    Array.from({ length: count }, (_, i) => ({
      ...spring,
      planMm: planMm ?? placeOnRim(halfSizeMm, (i + 0.5) / count),
    })),
  );
  if (!clamps.some(({ forceN, rateNPerMm }) => forceN > 0 || rateNPerMm > 0))
    throw new Problem(
      'closing.noClamps',
      'No clamp presses on the mold: give at least one clamp with a force.',
    );
  return clamps;
}

/** A place on the outline of the plan's box, `share` of the way round from its +u +v corner. */
function placeOnRim([halfU, halfV]: readonly [number, number], share: number): readonly [number, number] {
  const round = 4 * (halfU + halfV);
  const at = share * round;
  if (at < 2 * halfU) return [halfU - at, halfV];
  if (at < 2 * halfU + 2 * halfV) return [-halfU, halfV - (at - 2 * halfU)];
  if (at < 4 * halfU + 2 * halfV) return [-halfU + (at - 2 * halfU - 2 * halfV), -halfV];
  return [halfU, -halfV + (at - 4 * halfU - 2 * halfV)];
}

export function clampForceN(clamp: ClampSpring, openingMm: number): number {
  return Math.max(0, clamp.forceN + clamp.rateNPerMm * (openingMm - clamp.atOpeningMm));
}

/** Sum of the forces with the mold standing off by the same everywhere, N. */
export function totalClampForceN(clamps: readonly ClampSpring[], standOffMm: number): number {
  return clamps.reduce((sum, clamp) => sum + clampForceN(clamp, standOffMm), 0);
}

/** Where the sum of the forces acts on the plan, mm along u and v from the middle; null without force. */
export function lineOfActionMm(
  clamps: readonly ClampSpring[],
  standOffMm: number,
): readonly [number, number] | null {
  let force = 0;
  let u = 0;
  let v = 0;
  for (const clamp of clamps) {
    const own = clampForceN(clamp, standOffMm);
    force += own;
    u += own * clamp.planMm[0];
    v += own * clamp.planMm[1];
  }
  return force > 0 ? [u / force, v / force] : null;
}
