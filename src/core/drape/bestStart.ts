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
  const costOf = (point: PlanPoint, ownStepMm: number): number => {
    const start = placeOver(surface, datum, point);
    if (start === null) return Infinity;
    const warpRad = warpAngleAt(surface, datum, start, fiberDeg);
    const cutRad = (lockingDeg * Math.PI) / 180;
    const drape = drapePly(surface, { stepMm: ownStepMm, start, warpRad, cutRad, first: 'warp' }, null);
    const { coveredMm2, shareOverWarning } = shearFigures(drape, warningDeg);
    return Math.max(0, 1 - (coveredMm2 * (1 - shareOverWarning)) / wanted);
  };
  const coarseMm = Math.max(stepMm, Math.sqrt(wanted / triedNodes));
  const tried = triedAlong
    .flatMap((share) =>
      triedAcross.map((other) => ({ alongMm: share * datum.lengthMm, acrossMm: other * datum.acrossMm })),
    )
    .map((point) => ({ point, cost: costOf(point, coarseMm) }))
    .filter(({ cost }) => cost < Infinity);
  const [middle] = tried;
  if (middle === undefined) return null;
  const best = tried.reduce((least, one) => (one.cost < least.cost ? one : least), middle);
  if (best === middle || best.cost > middle.cost - leastGain) return middle.point;
  // A coarse net errs on small radii: what it prefers must also hold on the fine one.
  return costOf(best.point, stepMm) < costOf(middle.point, stepMm) - leastGain ? best.point : middle.point;
}
