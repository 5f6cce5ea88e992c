/**
 * The full balance: stand-off and two tilts, as the least of a convex energy (bed, clamp springs, lands that only push).
 * Newton's steps down that energy, limits kept at every step; the position is unique when what is loaded has rank three.
 */
import { Problem } from '../problem';
import { translationBalance } from './balance';
import { clampForceN, totalClampForceN } from './clamps';
import { bedPushN, openingAt, slopes, type ClosingLoads } from './closingEnergy';
import type { ClosingSamples } from './closingTypes';
import { isRounding, newtonStep, steppedDown } from './newtonDescent';
import { valueOf, type LinearLimit, type Triple } from './smallQuadratic';

/** Flat stone on stone round the part. */
export interface Lands {
  /** Half the size of their outline on plan, mm along u and v; the mold rocks over its corners. */
  readonly outlineHalfMm: readonly [number, number];
  /** Shim laid on them, mm. */
  readonly shimMm: number;
}

export interface ClosingProblem extends ClosingLoads {
  /** null for a mold whose halves meet nowhere but through the laminate. */
  readonly lands: Lands | null;
  /** Half the part's plan, mm: tilts are measured over it. */
  readonly halfSizeMm: readonly [number, number];
  /**
   * With resin that cannot leave: the thickness of the laminate without voids, mm. The gaps together then never hold less
   * than the laminate, and the resin pressure (the same everywhere) is what that takes.
   */
  readonly sealedAtMm: number | null;
}

/** Where the mold stands. */
export interface ClosingPosition {
  /** In the middle of the plan, along the pull, mm. */
  readonly standOffMm: number;
  /** Small turns about u and v, rad. */
  readonly tiltURad: number;
  readonly tiltVRad: number;
}

/**
 * 'shut unloaded': on the lands all round, nothing on the laminate. 'shut': on the lands all round. 'leans': on part of
 * the lands. 'stands off': on the laminate alone. 'nothing holds': no lands and no contact. 'tips': the clamps act outside
 * of everything that could hold the mold.
 */
export type ClosingOutcome = 'shut unloaded' | 'shut' | 'leans' | 'stands off' | 'nothing holds' | 'tips';

export interface ClosingSolution extends ClosingPosition {
  readonly outcome: ClosingOutcome;
  /** At the corners of the lands (of the plan without lands): +u +v, −u +v, −u −v, +u −v; mm. */
  readonly cornerStandOffMm: readonly [number, number, number, number];
  readonly clampForceN: number;
  /** Along the pull, from the fibers. */
  readonly laminateForceN: number;
  readonly landForceN: number;
  /** Along the pull, from resin that cannot leave. */
  readonly resinForceN: number;
  readonly resinPressureMPa: number;
}

/** Forces balance to this share of the clamp force. */
const balanceShare = 1e-9;
/** Steps that each lower the energy need a few dozen, some hundred while a mold tips; then it has to be as good as this. */
const mostSteps = 2000;
const nearlyShare = 1e-6;
/** A mold that leans so far over half its plan has tipped, mm. */
const tippedMm = 20;
/** Corners within this share of the plan's half size of their limit rest on it. */
const contactMm = 1e-9;
/** A laminate that carries less than this share of the clamps is unloaded. */
const unloadedShare = 1e-6;

/** The gap of every place, mm. */
export function gapMm(samples: ClosingSamples, position: ClosingPosition, place: number): number {
  return (
    samples.wallMm[place]! +
    position.standOffMm * samples.pullCosine[place]! +
    position.tiltURad * samples.armUMm[place]! +
    position.tiltVRad * samples.armVMm[place]!
  );
}

/** `start`: where a like mold stands, to save steps; the answer does not depend on it. */
export function tiltedBalance(problem: ClosingProblem, start?: ClosingPosition): ClosingSolution {
  const { clamps, lands, halfSizeMm } = problem;
  const spanMm = Math.max(...halfSizeMm, 1e-9);
  const outline = lands?.outlineHalfMm ?? halfSizeMm;
  const corners = cornersOf(outline);
  const sealed = sealedLimit(problem, spanMm);
  const limits: LinearLimit[] = [];
  if (lands !== null)
    for (const [u, v] of corners) limits.push({ row: [1, v / spanMm, -u / spanMm], least: lands.shimMm });
  if (sealed !== null) limits.push(sealed);

  const answer = (at: Triple, known: ClosingOutcome | null, pushes: readonly number[]) =>
    restingPlace(problem, { at, spanMm, corners, sealed, pushes }, known);
  const standing = standsFrom(problem, limits, sealed, spanMm, start);
  let { q } = standing;
  if (!standing.held)
    return answer(
      q,
      'nothing holds',
      limits.map(() => 0),
    );
  const scaleN = Math.max(1e-9, totalClampForceN(clamps, Math.max(0, q[0])));
  let push: readonly number[] = limits.map(() => 0);
  let tips = false;
  for (let stepCount = 0; ; stepCount++) {
    const newton = newtonStep(slopes(problem, q, spanMm, true), limits, q, scaleN);
    push = newton.push;
    if (newton.missN <= balanceShare * scaleN && newton.reachMm <= contactMm * spanMm) break;
    if (isRounding(newton.step, q)) break;
    if (stepCount >= mostSteps) {
      if (newton.missN <= nearlyShare * scaleN) break;
      throw new Problem(
        'closing.noBalance',
        'Where this mold comes to rest could not be worked out. Nothing is wrong with your numbers: this program stops looking after so many steps. Change the force of one clamp by a newton or two and it looks again from elsewhere.',
      );
    }
    q = steppedDown((at) => slopes(problem, at, spanMm, false).gradient, q, newton, limits);
    tips = Math.max(Math.abs(q[1]), Math.abs(q[2])) > tippedMm;
    if (tips) break;
  }
  return answer(q, tips ? 'tips' : null, push);
}

/** Where the search begins: at `start` where the limits allow it, else level, on what holds it there. */
function standsFrom(
  problem: ClosingProblem,
  limits: readonly LinearLimit[],
  sealed: LinearLimit | null,
  spanMm: number,
  start: ClosingPosition | undefined,
): { readonly q: Triple; readonly held: boolean } {
  const startQ: Triple | null =
    start === undefined ? null : [start.standOffMm, start.tiltURad * spanMm, start.tiltVRad * spanMm];
  if (startQ !== null && limits.every(({ row, least }) => valueOf(row, startQ) >= least))
    return { q: startQ, held: true };
  const level = translationBalance({
    samples: problem.samples,
    curve: problem.curve,
    clampForceAt: (standOffMm) => totalClampForceN(problem.clamps, standOffMm),
    landsAtMm: problem.lands?.shimMm ?? null,
  });
  const q: Triple = [level.standOffMm, 0, 0];
  const short = sealed !== null && valueOf(sealed.row, q) < sealed.least;
  return { q: short ? [sealed.least / sealed.row[0], 0, 0] : q, held: level.held };
}

interface Resting {
  readonly at: Triple;
  readonly spanMm: number;
  readonly corners: readonly (readonly [number, number])[];
  readonly sealed: LinearLimit | null;
  /** Of each limit: lands first, the sealed-in resin last. */
  readonly pushes: readonly number[];
}

/** What carries the mold at that place, and how it stands. */
function restingPlace(
  problem: ClosingProblem,
  { at, spanMm, corners, sealed, pushes }: Resting,
  known: ClosingOutcome | null,
): ClosingSolution {
  const { clamps, lands } = problem;
  const position = { standOffMm: at[0], tiltURad: at[1] / spanMm, tiltVRad: at[2] / spanMm };
  const cornerStandOffMm = corners.map(
    ([u, v]) => at[0] + (at[1] * v) / spanMm - (at[2] * u) / spanMm,
  ) as unknown as [number, number, number, number];
  const clampN = clamps.reduce((sum, clamp) => sum + clampForceN(clamp, openingAt(clamp, at, spanMm)), 0);
  const laminateForceN = bedPushN(problem, at, spanMm);
  const resinPush = sealed === null ? 0 : (pushes.at(-1) ?? 0);
  const resinForceN = sealed === null ? 0 : resinPush * sealed.row[0];
  const landForceN = lands === null ? 0 : pushes.slice(0, 4).reduce((sum, one) => sum + one, 0);
  const resting = cornerStandOffMm.filter(
    (one) => lands !== null && one <= lands.shimMm + contactMm * spanMm,
  ).length;
  const carried = laminateForceN + resinForceN;
  // Springs that went slack while the mold leaned hold nothing: it has tipped as surely as under weights.
  const shutN = totalClampForceN(clamps, lands?.shimMm ?? 0);
  const wentSlack = shutN > 0 && clampN <= unloadedShare * shutN;
  const outcome =
    known ??
    (wentSlack
      ? 'tips'
      : resting === 4
        ? carried <= unloadedShare * clampN
          ? 'shut unloaded'
          : 'shut'
        : resting > 0
          ? 'leans'
          : 'stands off');
  return {
    outcome,
    ...position,
    cornerStandOffMm,
    clampForceN: clampN,
    laminateForceN,
    landForceN,
    resinForceN,
    resinPressureMPa: resinPush / totalArea(problem.samples),
  };
}

function cornersOf([halfU, halfV]: readonly [number, number]): readonly (readonly [number, number])[] {
  return [
    [halfU, halfV],
    [-halfU, halfV],
    [-halfU, -halfV],
    [halfU, -halfV],
  ];
}

function totalArea({ areaMm2 }: ClosingSamples): number {
  let area = 0;
  for (const one of areaMm2) area += one;
  return area;
}

/** Mean gap at least the laminate without voids. null when the walls are so steep that no stand-off makes room. */
function sealedLimit({ samples, sealedAtMm }: ClosingProblem, spanMm: number): LinearLimit | null {
  if (sealedAtMm === null) return null;
  const { areaMm2, wallMm, pullCosine, armUMm, armVMm } = samples;
  let [area, wall, c, u, v] = [0, 0, 0, 0, 0];
  for (let i = 0; i < areaMm2.length; i++) {
    const own = areaMm2[i]!;
    area += own;
    wall += own * wallMm[i]!;
    c += own * pullCosine[i]!;
    u += own * armUMm[i]!;
    v += own * armVMm[i]!;
  }
  if (!(c > 1e-6 * area)) return null;
  return { row: [c / area, u / area / spanMm, v / area / spanMm], least: sealedAtMm - wall / area };
}
