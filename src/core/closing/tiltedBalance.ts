/**
 * The full balance: stand-off and two tilts, as the least of a convex energy (bed, clamp springs, lands that only push).
 * Newton's steps on that energy, limits kept at every step; the position is unique when what is loaded has rank three.
 */
import { Problem } from '../problem';
import { translationBalance } from './balance';
import { pressureAt, stiffnessAt, type BedCurve } from './bedCurve';
import { clampForceN, totalClampForceN, type ClampSpring } from './clamps';
import type { ClosingSamples } from './closingTypes';
import { leastQuadratic, type LinearLimit, type Triple } from './smallQuadratic';

/** Flat stone on stone round the part. */
export interface Lands {
  /** Half the size of their outline on plan, mm along u and v; the mold rocks over its corners. */
  readonly outlineHalfMm: readonly [number, number];
  /** Shim laid on them, mm. */
  readonly shimMm: number;
}

export interface ClosingProblem {
  readonly samples: ClosingSamples;
  readonly curve: BedCurve;
  readonly clamps: readonly ClampSpring[];
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
const mostSteps = 400;
/** A mold that leans so far over half its plan has tipped, mm. */
const tippedMm = 20;
/** Longest single step, mm. */
const longestStepMm = 2;
/** Corners within this share of the plan's half size of their limit rest on it. */
const contactMm = 1e-9;
/** Steps shorter than this are taken whole, mm. */
const surelyMm = 1e-7;
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

  const startQ: Triple | null =
    start === undefined ? null : [start.standOffMm, start.tiltURad * spanMm, start.tiltVRad * spanMm];
  let q: Triple;
  if (startQ !== null && limits.every(({ row, least }) => valueOf(row, startQ) >= least)) q = startQ;
  else {
    const level = translationBalance({
      samples: problem.samples,
      curve: problem.curve,
      clampForceAt: (standOffMm) => totalClampForceN(clamps, standOffMm),
      landsAtMm: lands?.shimMm ?? null,
    });
    q = [level.standOffMm, 0, 0];
    if (sealed !== null && valueOf(sealed.row, q) < sealed.least) q = [sealed.least / sealed.row[0], 0, 0];
    if (!level.held)
      return answer(
        q,
        'nothing holds',
        limits.map(() => 0),
      );
  }
  const startMm = q[0];

  const scaleN = Math.max(1e-9, totalClampForceN(clamps, Math.max(0, startMm)));
  let push: readonly number[] = limits.map(() => 0);
  let tips = false;
  for (let stepCount = 0; ; stepCount++) {
    const { gradient, hessian } = slopes(problem, q, spanMm, true);
    const newton = newtonStep(hessian, gradient, limits, q, scaleN);
    push = newton.push;
    if (newton.missN <= balanceShare * scaleN && newton.reachMm <= contactMm * spanMm) break;
    if (stepCount >= mostSteps)
      throw new Problem(
        'closing.noBalance',
        'No balance of the mold was found for these numbers: check the clamps and the walls for values that cannot be.',
      );
    q = searched(problem, q, newton.step, gradient, spanMm);
    tips = Math.max(Math.abs(q[1]), Math.abs(q[2])) > tippedMm;
    if (tips) break;
  }
  return answer(q, tips ? 'tips' : null, push);

  function answer(at: Triple, known: ClosingOutcome | null, pushes: readonly number[]): ClosingSolution {
    const position = { standOffMm: at[0], tiltURad: at[1] / spanMm, tiltVRad: at[2] / spanMm };
    const cornerStandOffMm = corners.map(
      ([u, v]) => at[0] + (at[1] * v) / spanMm - (at[2] * u) / spanMm,
    ) as unknown as [number, number, number, number];
    const clampN = clamps.reduce((sum, clamp) => sum + clampForceN(clamp, openingAt(clamp, at, spanMm)), 0);
    const laminateForceN = bedPushN(problem, at, spanMm);
    const resinPush = sealed === null ? 0 : (pushes[limits.length - 1] ?? 0);
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
}

function cornersOf([halfU, halfV]: readonly [number, number]): readonly (readonly [number, number])[] {
  return [
    [halfU, halfV],
    [-halfU, halfV],
    [-halfU, -halfV],
    [halfU, -halfV],
  ];
}

const valueOf = (row: Triple, q: Triple) => row[0] * q[0] + row[1] * q[1] + row[2] * q[2];

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

function openingAt({ planMm }: ClampSpring, q: Triple, spanMm: number): number {
  return q[0] + (q[1] * planMm[1]) / spanMm - (q[2] * planMm[0]) / spanMm;
}

interface Slopes {
  readonly gradient: Triple;
  readonly hessian: readonly [Triple, Triple, Triple];
}

/** First and second derivatives of the energy over (stand-off, tilts × span): N and N/mm. */
function slopes(
  { samples, curve, clamps }: ClosingProblem,
  q: Triple,
  spanMm: number,
  second: boolean,
): Slopes {
  const { areaMm2, wallMm, pullCosine, armUMm, armVMm } = samples;
  const { unloadedGapMm } = curve;
  const [s, tu, tv] = [q[0], q[1] / spanMm, q[2] / spanMm];
  let [g0, g1, g2] = [0, 0, 0];
  let [h00, h01, h02, h11, h12, h22] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < areaMm2.length; i++) {
    const gap = wallMm[i]! + s * pullCosine[i]! + tu * armUMm[i]! + tv * armVMm[i]!;
    if (gap >= unloadedGapMm) continue;
    const area = areaMm2[i]!;
    if (area === 0) continue;
    const c = pullCosine[i]!;
    const u = armUMm[i]! / spanMm;
    const v = armVMm[i]! / spanMm;
    const force = pressureAt(curve, gap) * area;
    g0 -= force * c;
    g1 -= force * u;
    g2 -= force * v;
    if (!second) continue;
    const k = stiffnessAt(curve, gap) * area;
    h00 += k * c * c;
    h01 += k * c * u;
    h02 += k * c * v;
    h11 += k * u * u;
    h12 += k * u * v;
    h22 += k * v * v;
  }
  for (const clamp of clamps) {
    const force = clampForceN(clamp, openingAt(clamp, q, spanMm));
    const u = clamp.planMm[1] / spanMm;
    const v = -clamp.planMm[0] / spanMm;
    g0 += force;
    g1 += force * u;
    g2 += force * v;
    const k = force > 0 ? clamp.rateNPerMm : 0;
    h00 += k;
    h01 += k * u;
    h02 += k * v;
    h11 += k * u * u;
    h12 += k * u * v;
    h22 += k * v * v;
  }
  return {
    gradient: [g0, g1, g2],
    hessian: [
      [h00, h01, h02],
      [h01, h11, h12],
      [h02, h12, h22],
    ],
  };
}

function bedPushN(problem: ClosingProblem, q: Triple, spanMm: number): number {
  return -slopes({ ...problem, clamps: [] }, q, spanMm, false).gradient[0];
}

/** A step and what is known of it. */
interface NewtonStep {
  readonly step: Triple;
  /** Push of each limit. */
  readonly push: readonly number[];
  /** What is out of balance before the step, N. */
  readonly missN: number;
  /** How far the limits that push are still away, mm. */
  readonly reachMm: number;
}

/** Newton's step within the limits, held short by stiffening what gives way without end. */
function newtonStep(
  hessian: readonly [Triple, Triple, Triple],
  gradient: Triple,
  limits: readonly LinearLimit[],
  q: Triple,
  scaleN: number,
): NewtonStep {
  const near = limits.map(({ row, least }) => ({ row, least: least - valueOf(row, q) }));
  for (let extra = 1e-9 * scaleN; ; extra *= 10) {
    const [a, b, c] = hessian;
    const stiffened: readonly [Triple, Triple, Triple] = [
      [a[0] + extra, a[1], a[2]],
      [b[0], b[1] + extra, b[2]],
      [c[0], c[1], c[2] + extra],
    ];
    const found = leastQuadratic(stiffened, gradient, near);
    const tooLong = found !== null && Math.max(...found.step.map(Math.abs)) > longestStepMm;
    if ((found === null || tooLong) && extra <= 1e6 * scaleN) continue;
    if (found === null) throw new Error('limits of a closing mold contradict each other');
    return {
      ...found,
      missN: Math.max(...stiffened.map((row) => Math.abs(valueOf(row, found.step)))),
      reachMm: Math.max(0, ...near.map(({ least }, i) => (found.push[i]! > 0 ? -least : 0))),
    };
  }
}

/** How far to go along a step: all of it when the energy still falls there or has flattened, else to where it is flat. */
function searched(
  problem: ClosingProblem,
  q: Triple,
  step: Triple,
  gradient: Triple,
  spanMm: number,
): Triple {
  const at = (share: number): Triple => [
    q[0] + share * step[0],
    q[1] + share * step[1],
    q[2] + share * step[2],
  ];
  // So near, Newton is exact and the slopes along the step are rounding.
  if (Math.max(...step.map(Math.abs)) < surelyMm) return at(1);
  const slopeAt = (share: number) => valueOf(slopes(problem, at(share), spanMm, false).gradient, step);
  const first = valueOf(gradient, step);
  const last = slopeAt(1);
  if (last <= 0.5 * Math.abs(first)) return at(1);
  let low = 0;
  let high = 1;
  for (let halving = 0; halving < 40; halving++) {
    const middle = (low + high) / 2;
    const slope = slopeAt(middle);
    if (Math.abs(slope) <= 0.25 * Math.abs(first)) return at(middle);
    if (slope > 0) high = middle;
    else low = middle;
  }
  return at(low > 0 ? low : high);
}
