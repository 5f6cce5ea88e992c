/**
 * The balance of the closed mold for the present inputs: everything that figures, verdicts, the sheet and the view read.
 * Worked out once per context, and not again while nothing that the balance goes by has changed.
 */
import { bedCurve, type BedCurve } from '../../core/closing/bedCurve';
import { translationBalance, type TranslationBalance } from '../../core/closing/balance';
import {
  placedClamps,
  rateFromTwoPoints,
  totalClampForceN,
  type ClampGroup,
  type ClampSpring,
} from '../../core/closing/clamps';
import {
  cavityOf,
  evenedGaps,
  voidShares,
  type Cavity,
  type EvenedGaps,
  type VoidShares,
} from '../../core/closing/cavity';
import { classShares, type ClassLimits, type ClassShares } from '../../core/closing/classes';
import { withFilm, withUniformWall } from '../../core/closing/closingHistogram';
import type { ClosingHistogram } from '../../core/closing/closingTypes';
import {
  carryingWallMm,
  contactMeans,
  medianWallMm,
  pressedFaces,
  type ContactMeans,
  type PressedFaces,
} from '../../core/closing/fixes';
import { closingPlaces, type ClosingPlace } from '../../core/closing/places';
import {
  tiltedBalance,
  type ClosingPosition,
  type ClosingSolution,
  type Lands,
} from '../../core/closing/tiltedBalance';
import type { AcceptedWalls } from '../../core/laminate/acceptedWalls';
import type { PartSummary } from '../../core/part/partSummary';
import { Problem } from '../../core/problem';
import { filmInWallMm, wallLimits, wallsFor } from '../shared/band';
import type { MeasuredPart, StepContext } from '../shared/context';
import { availablePart, type Missing } from '../shared/missing';
import { resolveStack, type KnownStack } from '../shared/stack';
import { processOf } from '../shared/process';
import { stackBeds, type StackBeds } from './beds';
import type { ProjectInputs } from '../inputs/project';
import type { Clamp } from '../inputs/clamp';
import { landWidthMm } from '../stone/landWidth';
import { resinNeed, resinState, type ResinState } from './resinState';

/** One way that the unknowns may lie, and where the mold then stands. */
export interface ClosingCase {
  readonly solution: ClosingSolution;
  readonly shares: ClassShares;
  /** With the nominal bed; null when no fibers push back. */
  readonly contact: ContactMeans | null;
  /** Gaps as the resin evens them out before it gels; null where nothing drives it. */
  readonly evened: EvenedGaps | null;
}

export interface ClosingState {
  readonly known: true;
  readonly inputs: ProjectInputs;
  readonly measured: MeasuredPart;
  readonly histogram: ClosingHistogram;
  readonly stack: KnownStack;
  readonly beds: StackBeds;
  readonly curve: BedCurve;
  /** The walls that the stack accepts; the classes of the maps are theirs. */
  readonly walls: AcceptedWalls;
  readonly limits: ClassLimits;
  /** Thickness without bleed and without voids, t0. */
  readonly curedMm: number;
  /** Before closing, debulked where it was. */
  readonly laidMm: number;
  readonly laidIsMeasured: boolean;
  /** t0 less the tolerance of print and stone. */
  readonly wantedWallMm: number;
  /** Separator film in every wall, mm; gaps and the balance's walls are without it. */
  readonly filmMm: number;
  readonly clamps: readonly ClampSpring[];
  readonly lands: Lands | null;
  /** Area of the stone that meets stone, mm²; 0 without lands. */
  readonly landAreaMm2: number;
  /** The one that verdicts use (`closing.resin`). */
  readonly main: ClosingCase;
  readonly free: ClosingCase;
  readonly trapped: ClosingCase;
  /** With a bed softer and stiffer by the scatter, resin as in `main`. */
  readonly soft: ClosingCase;
  readonly stiff: ClosingCase;
  /** Stiffness of those two beds over the nominal one. */
  readonly scatterFactors: readonly [number, number];
  /** Drawn gaps, as if the mold were shut. */
  readonly sharesAtShut: ClassShares;
  /** Along the pull alone, with the most friction. */
  readonly withFriction: TranslationBalance;
  readonly frictionShares: ClassShares;
  /** Of the show face by area, mm; null without area. */
  readonly medianWallMm: number | null;
  /** Of the places that carry, by what they push, mm; null when none does. */
  readonly carryingWallMm: number | null;
  /** What clamps can press; null when every wall is steep. */
  readonly pressed: PressedFaces | null;
  /** Faces by place, the ones that hold the mold open first. */
  readonly places: readonly ClosingPlace[];
  /** Of the case that verdicts use. */
  readonly cavity: Cavity;
  readonly voids: VoidShares;
  readonly resin: ResinState;
}

export type ClosingAnswer = ClosingState | ({ readonly known: false } & Missing);

const answers = new WeakMap<StepContext, ClosingAnswer>();
/** The last balance of each measurement, and what it was worked out from. */
const balances = new WeakMap<
  PartSummary,
  { readonly from: readonly unknown[]; readonly state: ClosingState }
>();

export function closingState(context: StepContext): ClosingAnswer {
  const kept = answers.get(context);
  if (kept !== undefined) return kept;
  const answer = workedOut(context);
  answers.set(context, answer);
  return answer;
}

function workedOut(context: StepContext): ClosingAnswer {
  const part = availablePart(context);
  if (!part.known) return part;
  const stack = resolveStack(context.inputs.plies);
  if (!stack.known) return { known: false, reason: stack.reason, fix: stack.fix };
  const walls = wallsOf(context, part.measured);
  if (!('areaMm2' in walls)) return { known: false, ...walls };
  const { measured } = part;
  const { closing, plies, walls: limits } = context.inputs;
  const need = resinNeed(context);
  const from = [
    closing,
    plies,
    limits,
    need.atC,
    need.neededKPa,
    ...need.bandKPa,
    processOf(context.inputs).flowS,
    landWidthMm(context.inputs),
    nominalWallMm(context),
  ];
  const last = balances.get(measured.summary);
  if (last?.from.every((one, i) => one === from[i]))
    return { ...last.state, inputs: context.inputs, measured };
  try {
    const state = balanced(context, measured, stack, walls);
    balances.set(measured.summary, { from, state });
    return state;
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { known: false, reason: error.message, fix: 'Correct that input; the balance follows at once.' };
  }
}

/** Wall that the print's settings give; null where the model's own is measured. */
const nominalWallMm = ({ inputs: { part, plies } }: StepContext): number | null =>
  part.nominalWall === 'print' ? part.printLines * plies.lineWidthMm : null;

/** The measured show face, or the print's nominal wall on it. */
function wallsOf(context: StepContext, { summary }: MeasuredPart): ClosingHistogram | Missing {
  const { closing } = summary;
  if (closing.areaMm2.length === 0)
    return {
      reason: 'No show face was found along this pull, so nothing can be closed on it.',
      fix: 'Check the pull and the health of the model at the Part step.',
    };
  const nominalMm = nominalWallMm(context);
  if (nominalMm !== null) return withUniformWall(closing, nominalMm);
  if (!closing.wallsKnown || summary.solid)
    return {
      reason: 'The show face has no wall behind it, so there is no gap to close.',
      fix: 'Take the wall from the print at the Part step when the model is drawn solid; else import the shell.',
    };
  return closing;
}

function groupOf(clamp: Clamp): ClampGroup {
  const { count, forceN, atOpeningMm, secondForceN, secondOpeningMm } = clamp;
  const rateNPerMm =
    secondForceN > 0
      ? rateFromTwoPoints(
          { forceN, openingMm: atOpeningMm },
          { forceN: secondForceN, openingMm: secondOpeningMm },
        )
      : clamp.springRateNPerMm;
  // A clamp without force is no spring that pulls once the mold opens.
  return {
    count: forceN > 0 ? count : 0,
    forceN,
    atOpeningMm,
    rateNPerMm,
    planMm: clamp.placed === 'round the rim' ? null : [clamp.xMm, clamp.yMm],
  };
}

/** Before closing: measured, or as laid times what debulking leaves; never less than fiber and resin fill. */
function laidThickness(stack: KnownStack, { debulkedMm, debulkFactor }: StepContext['inputs']['closing']) {
  return debulkedMm > 0
    ? { laidMm: debulkedMm, laidIsMeasured: true }
    : {
        laidMm: Math.max(stack.volume.voidFreeMm, stack.total.laidMm * debulkFactor),
        laidIsMeasured: stack.laidStatus === 'measured',
      };
}

const level = (standOffMm: number): ClosingPosition => ({ standOffMm, tiltURad: 0, tiltVRad: 0 });

function balanced(
  context: StepContext,
  measured: MeasuredPart,
  stack: KnownStack,
  drawn: ClosingHistogram,
): ClosingState {
  const inputs = context.inputs.closing;
  const filmMm = filmInWallMm(context.inputs.walls);
  const histogram = withFilm(drawn, filmMm);
  const { halfSizeMm } = histogram.frame;
  const beds = stackBeds(stack, inputs);
  const plusFilm = (wallMm: number | null) => (wallMm === null ? null : wallMm + filmMm);
  const curve = bedCurve(beds.layers);
  const curedMm = stack.volume.voidFreeMm;
  const { laidMm, laidIsMeasured } = laidThickness(stack, inputs);
  const walls = wallsFor(stack, context.inputs.walls);
  const limits: ClassLimits = {
    chokedUnderMm: walls.lookLowMm - filmMm,
    packedUpToMm: walls.goHighMm - filmMm,
    lightUpToMm: walls.lookHighMm - filmMm,
  };
  const clamps = placedClamps(inputs.clamps.map(groupOf), halfSizeMm);
  const width = landWidthMm(context.inputs);
  const lands: Lands | null =
    inputs.lands === 'none'
      ? null
      : { outlineHalfMm: [halfSizeMm[0] + width, halfSizeMm[1] + width], shimMm: inputs.shimMm };
  const solve = (bed: BedCurve, sealed: boolean, start?: ClosingSolution): ClosingSolution =>
    tiltedBalance(
      { samples: histogram, curve: bed, clamps, lands, halfSizeMm, sealedAtMm: sealed ? curedMm : null },
      start,
    );
  const caseOf = (solution: ClosingSolution, reachMm: number): ClosingCase => {
    const evened = evenedGaps(histogram, solution, reachMm);
    return {
      solution,
      shares: classShares(histogram, solution, limits, evened?.ofBinMm),
      contact: contactMeans(histogram, solution, curve),
      evened,
    };
  };
  const whenFree = solve(curve, false);
  const whenTrapped = solve(curve, true, whenFree);
  const resin = resinState(context, {
    stack,
    histogram,
    curve,
    clamps,
    lands,
    trapped: whenTrapped,
    landMm: width,
    laidMm,
  });
  const isHeldIn = inputs.resin === 'trapped';
  const trapped = caseOf(whenTrapped, resin.heldInReachMm);
  const free = caseOf(whenFree, isHeldIn ? 0 : resin.flowLengthMm);
  const main = isHeldIn ? trapped : free;
  const scatter = inputs.scatterPercent / 100;
  const scattered = (factor: number) =>
    factor === 1
      ? main
      : caseOf(solve(bedCurve(beds.layers, factor), isHeldIn, main.solution), resin.flowLengthMm);
  const soft = scattered(1 - scatter);
  const stiff = scattered(1 + scatter);
  const withFriction = translationBalance({
    samples: histogram,
    curve,
    clampForceAt: (standOffMm) => totalClampForceN(clamps, standOffMm),
    landsAtMm: lands?.shimMm ?? null,
    friction: inputs.frictionCoefficient,
  });
  const { boxMinMm, boxMaxMm } = measured.summary;
  const places = closingPlaces(
    histogram,
    { boxMinMm, boxMaxMm, pull: histogram.frame.pull },
    main.solution,
    curve,
    limits,
    laidMm,
    main.evened?.ofBinMm,
  );
  return {
    known: true,
    inputs: context.inputs,
    measured,
    histogram,
    stack,
    beds,
    curve,
    walls,
    limits,
    curedMm,
    laidMm,
    laidIsMeasured,
    wantedWallMm: walls.wantedMm,
    filmMm,
    clamps,
    lands,
    landAreaMm2: lands === null ? 0 : 4 * width * (halfSizeMm[0] + halfSizeMm[1] + width),
    main,
    free,
    trapped,
    soft,
    stiff,
    scatterFactors: [1 - scatter, 1 + scatter],
    sharesAtShut: classShares(histogram, level(lands?.shimMm ?? 0), limits),
    withFriction,
    frictionShares: classShares(histogram, level(withFriction.standOffMm), limits),
    medianWallMm: medianWallMm(drawn),
    carryingWallMm: plusFilm(carryingWallMm(histogram, main.solution, curve)),
    pressed: pressedFaces(histogram),
    places,
    cavity: cavityOf(histogram, main.solution, curedMm),
    voids: voidShares(histogram, main.solution, curedMm, main.evened, wallLimits(context.inputs.walls)),
    resin,
  };
}
