/** Where to begin: the start that leaves the least area over the limit or without cloth. */
import type { DrapeSurface } from './drapeSurface';
import { drapePly, shearFigures, wantedMm2 } from './drapePly';
import { placeOver, warpAngleAt, type PartDatum, type PlanPoint } from './partDatum';
import type { ShearLimits } from './weaveLimits';

/** Tried on a net of about that many nodes. */
const triedNodes = 1200;
/** Shares of length and width from the middle. */
const triedAlong = [0, -0.2, 0.2] as const;
const triedAcross = [0, -0.2, 0.2] as const;
/** Another place than the middle must be better by this share of the face: the middle is easier to find at the bench. */
const leastGain = 0.005;

/** @returns null where no tried place lies on the face */
export function bestStart(
  surface: DrapeSurface,
  datum: PartDatum,
  fiberDeg: number,
  { warningDeg, lockingDeg }: ShearLimits,
  stepMm: number,
): PlanPoint | null {
  const wanted = wantedMm2(surface);
  const coarseMm = Math.max(stepMm, Math.sqrt(wanted / triedNodes));
  let best: { readonly point: PlanPoint; readonly cost: number } | null = null;
  for (const share of triedAlong)
    for (const shareAcross of triedAcross) {
      const point = { alongMm: share * datum.lengthMm, acrossMm: shareAcross * datum.acrossMm };
      const start = placeOver(surface, datum, point);
      if (start === null) continue;
      const warpRad = warpAngleAt(surface, datum, start, fiberDeg);
      const cutRad = (lockingDeg * Math.PI) / 180;
      const drape = drapePly(surface, { stepMm: coarseMm, start, warpRad, cutRad, first: 'warp' }, null);
      const { coveredMm2, shareOverWarning } = shearFigures(drape, warningDeg);
      const cost = Math.max(0, 1 - (coveredMm2 * (1 - shareOverWarning)) / wanted);
      if (best === null || cost < best.cost - leastGain) best = { point, cost };
    }
  return best === null ? null : best.point;
}
