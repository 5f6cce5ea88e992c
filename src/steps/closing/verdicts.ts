/** Verdicts of the Mold closing step: does it close, is the laminate pressed, do walls wipe, can resin leave. */
import { lineOfActionMm } from '../../core/closing/clamps';
import type { ClosingPlace } from '../../core/closing/places';
import type { Verdict, VerdictWord } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { toldOf } from '../shared/wallFit';
import { bandOver, isPlaced, outcomeText, tiltDeg } from './figures';
import { slideOf, slidePlace } from './limitFigures';
import { areaPercent, between, kilopascals, mm, newtons } from './say';
import { closingState, type ClosingState } from '../closedMold/state';

/** A place that pushes less than this share of the bed's load does not hold the mold open (common practice). */
const noticedPushShare = 0.05;
/** Below this share of area a finding is a scatter of single facets, not a place (common practice). */
const noticedShare = 0.005;
/** A wall that wipes by more than this may drag a ply with it (common practice). */
export const noticedSlideMm = 1;
/** Part of the show face that has no wall behind it before it is told. */
const missingShare = 0.01;

export function closingVerdicts(context: StepContext): readonly Verdict[] {
  const state = closingState(context);
  if (!state.known)
    return [{ id: 'closing.closes', word: 'not yet known', reason: state.reason, fix: state.fix }];
  if (!isPlaced(state)) return [restlessVerdict(state), ...coverageVerdict(state)];
  return [
    closesVerdict(context, state),
    loadVerdict(context, state),
    chokedVerdict(context, state),
    resinVerdict(context, state),
    tiltVerdict(context, state),
    slideVerdict(state),
    frictionVerdict(context, state),
    ...coverageVerdict(state),
  ];
}

function restlessVerdict(state: ClosingState): Verdict {
  const id = 'closing.closes';
  if (state.main.solution.outcome === 'nothing holds')
    return {
      id,
      word: 'stop',
      reason: `No lands and no contact: nothing stops the closing, and no wall presses on the stack of ${mm(state.laidMm)}.`,
      fix: '',
    };
  const at = lineOfActionMm(state.clamps, 0);
  const place =
    at === null
      ? ''
      : ` Their resultant stands ${mm(at[0], 0)} along x and ${mm(at[1], 0)} along y from the middle of the part.`;
  return {
    id,
    word: 'stop',
    reason: `The clamps act outside the part: the mold tips.${place}`,
    fix: '',
  };
}

/** "show face, +x side, steep (62 %, wall 1.00 mm)" for the places that carry most. */
function holders(places: readonly ClosingPlace[], most = 3): string {
  return places
    .filter(({ pushShare }) => pushShare >= noticedPushShare)
    .slice(0, most)
    .map(
      ({ place, pushShare, wallMm }) =>
        `${place} (${formatNumber(100 * pushShare, 0)} % of the load, wall ${mm(wallMm)})`,
    )
    .join('; ');
}

function closesVerdict({ inputs }: StepContext, state: ClosingState): Verdict {
  const id = 'closing.closes';
  const { solution } = state.main;
  const { acceptedStandOffMm } = inputs.closing;
  const floorMm = state.lands?.shimMm ?? 0;
  const widestMm = Math.max(...solution.cornerStandOffMm) - floorMm;
  const band = bandOver(state, (one) => Math.max(...one.solution.cornerStandOffMm) - floorMm);
  const over = floorMm === 0 ? '' : ` over the shim of ${mm(floorMm)}`;
  if (solution.outcome === 'shut' || solution.outcome === 'shut unloaded')
    return {
      id,
      word: 'go',
      reason: `The mold is ${outcomeText(state)} under ${newtons(solution.clampForceN)}: ${between(...bandOver(state, (one) => one.solution.landForceN), 0, 'N')} on the lands, ${between(...bandOver(state, (one) => one.solution.laminateForceN + one.solution.resinForceN), 0, 'N')} in the laminate.`,
      fix: '',
    };
  const onResin = solution.resinForceN > solution.laminateForceN;
  const off = `it stands off by ${mm(widestMm)}${over} at the widest (${between(band[0], band[1], 2, 'mm')} over the scatter of the bed)`;
  if (onResin && widestMm <= acceptedStandOffMm)
    return {
      id,
      word: 'go',
      reason: `The mold stands on its resin, as it should: ${mm(widestMm)} off${over}, which the laminate comes out thicker by on faces across the pull. ${newtons(solution.resinForceN)} of ${newtons(solution.clampForceN)} press on the resin.`,
      fix: '',
    };
  const holding = onResin ? '' : holders(state.places);
  const reason = `The mold ${outcomeText(state)}: ${off}. ${newtons(solution.laminateForceN + solution.resinForceN)} of ${newtons(solution.clampForceN)} go through the laminate.${holding === '' ? '' : ` What holds it open: ${holding}.`}`;
  if (widestMm <= acceptedStandOffMm) return { id, word: 'go', reason, fix: '' };
  return {
    id,
    word: widestMm <= 4 * acceptedStandOffMm ? 'look again' : 'stop',
    reason,
    fix: '',
  };
}

/** Is the cavity filled: by volume over the whole part, and place by place as far as resin travels. */
function loadVerdict(context: StepContext, state: ClosingState): Verdict {
  const id = 'closing.load';
  const { cavity, voids, walls, resin, medianWallMm } = state;
  const { goVoidPercent, lookVoidPercent, badVoidPercent, wrongShareAllowedPercent } = context.inputs.walls;
  const whole = 100 * cavity.voidShare;
  const allowed = wrongShareAllowedPercent / 100;
  const median = medianWallMm ?? 0;
  const worst =
    voids.worst !== null && 100 * voids.worst.voidShare > goVoidPercent
      ? ` Worst ${formatNumber(100 * voids.worst.voidShare, 0)} % at ${slidePlace(state, voids.worst.bin)}.`
      : '';
  const word: VerdictWord =
    whole > lookVoidPercent || voids.bad > allowed
      ? 'stop'
      : whole > goVoidPercent || voids.overLook > noticedShare
        ? 'look again'
        : 'go';
  const filled =
    cavity.airMm3 > 0
      ? `${formatNumber(cavity.laminateMm3 / 1000, 1)} cm³ of laminate stand in a cavity of ${formatNumber(cavity.cavityMm3 / 1000, 1)} cm³: ${formatNumber(whole, 1)} % voids`
      : `The cavity of ${formatNumber(cavity.cavityMm3 / 1000, 1)} cm³ is filled`;
  const places =
    voids.bad > 0
      ? `; ${areaPercent(voids.bad)} of the show face has more than ${formatNumber(badVoidPercent, 0)} %`
      : '';
  const travels =
    worst === '' || !(resin.flowLengthMm > 0)
      ? ''
      : ` Resin evens that out over ${mm(resin.flowLengthMm, 0)} only.`;
  return {
    id,
    word,
    // What this check adds to the others comes first: paper has room for two sentences.
    reason: `${filled}${places}.${worst}${travels} ${toldOf(median, walls)}`,
    fix: '',
  };
}

function chokedVerdict(context: StepContext, state: ClosingState): Verdict {
  const id = 'closing.choked';
  const { shares } = state.main;
  const { limits, sharesAtShut } = state;
  const drawn = `as drawn and shut it would be ${areaPercent(sharesAtShut.choked)}`;
  if (shares.choked <= noticedShare)
    return {
      id,
      word: sharesAtShut.choked > noticedShare ? 'look again' : 'go',
      reason:
        sharesAtShut.choked > noticedShare
          ? `${areaPercent(shares.choked)} of the show face holds too much fiber (gap under ${mm(limits.chokedUnderMm)}); ${drawn}.`
          : `Nowhere is the gap too tight for the fiber (${mm(limits.chokedUnderMm)} or less would be).`,
      fix: '',
    };
  const tight = state.places.filter(({ mostly }) => mostly === 'choked').slice(0, 3);
  const where = tight.length === 0 ? '' : ` Places: ${tight.map(({ place }) => place).join('; ')}.`;
  return {
    id,
    word: 100 * shares.choked > context.inputs.walls.wrongShareAllowedPercent ? 'stop' : 'look again',
    reason: `${areaPercent(shares.choked)} of the show face holds too much fiber (gap under ${mm(limits.chokedUnderMm)}): dry spots there, and less load for the rest; ${drawn}.${where}`,
    fix: '',
  };
}

function tiltVerdict({ inputs }: StepContext, state: ClosingState): Verdict {
  const id = 'closing.tilt';
  const { solution } = state.main;
  const { cornerStandOffMm } = solution;
  const lean = Math.max(...cornerStandOffMm) - Math.min(...cornerStandOffMm);
  const at = lineOfActionMm(state.clamps, Math.max(0, solution.standOffMm));
  const place = at === null ? '' : ` The clamps act at x ${mm(at[0], 1)}, y ${mm(at[1], 1)} from the middle.`;
  if (lean <= Math.max(inputs.closing.acceptedStandOffMm, 1e-6))
    return { id, word: 'go', reason: `The halves close level within ${mm(lean)}.${place}`, fix: '' };
  const [u, v] = highSide(cornerStandOffMm);
  return {
    id,
    word: 'look again',
    reason: `The mold tilts by ${formatNumber(tiltDeg(solution), 2)}°: one side stands off ${mm(lean)} more than the other, the ${u}${v} side most.${place}`,
    fix: '',
  };
}

function highSide([pp, mp, mm2, pm]: readonly [number, number, number, number]): readonly [string, string] {
  const u = pp + pm - mp - mm2;
  const v = pp + mp - mm2 - pm;
  const noticed = 0.3 * Math.max(Math.abs(u), Math.abs(v));
  return [
    Math.abs(u) < noticed ? '' : u > 0 ? '+x' : '−x',
    Math.abs(v) < noticed ? '' : v > 0 ? ' +y' : ' −y',
  ];
}

function slideVerdict(state: ClosingState): Verdict {
  const id = 'closing.slide';
  const slide = slideOf(state);
  if (slide.place < 0)
    return {
      id,
      word: 'go',
      reason: `No steep wall is narrower than the stack of ${mm(state.laidMm)}: none wipes over the plies.`,
      fix: '',
    };
  const places = state.places
    .filter((place) => place.steep && place.slideMm > noticedSlideMm)
    .sort((a, b) => b.slideMm - a.slideMm)
    .slice(0, 3)
    .map((place) => `${place.place}: ${mm(place.slideMm, 1)}`);
  const all = slide.allTheWayShare > noticedShare;
  return {
    id,
    word: slide.slideMm > noticedSlideMm ? 'look again' : 'go',
    reason: `Steep walls touch the stack ${mm(slide.slideMm, 1)} before the mold is closed, most at ${slidePlace(state, slide.place)}.${all ? ` ${areaPercent(slide.allTheWayShare)} of the show face wipes over its whole depth.` : ''}${places.length > 1 ? ` ${places.join('; ')}.` : ''}`,
    fix: '',
  };
}

function frictionVerdict({ inputs }: StepContext, state: ClosingState): Verdict {
  const id = 'closing.friction';
  const { withFriction, free } = state;
  const { allTheWayShare } = slideOf(state);
  const more = withFriction.standOffMm - free.solution.standOffMm;
  const reason = `Without resin to ride on, the mold stands off ${between(free.solution.standOffMm, withFriction.standOffMm, 2, 'mm')} between no friction and ${formatNumber(inputs.closing.frictionCoefficient, 2)} on the stone.`;
  const wipes = allTheWayShare > noticedShare;
  if (more <= inputs.closing.acceptedStandOffMm && !wipes) return { id, word: 'go', reason, fix: '' };
  return {
    id,
    word: 'look again',
    reason: wipes
      ? `${reason} ${areaPercent(allTheWayShare)} of the show face has so little draft that it wipes the plies all the way down.`
      : `${reason} Friction on steep walls can take up the clamp force before the faces are pressed.`,
    fix: '',
  };
}

/** What the resin has when it gels against what it needs; an open rim is the warning beside it. */
function resinVerdict({ inputs }: StepContext, { resin, main, free }: ClosingState): Verdict {
  const id = 'closing.resin';
  const { need, atGelKPa, heldInKPa, lostAfterS, gelS } = resin;
  const { resinMarginKPa, resin: rim } = inputs.closing;
  const wanted = need.neededKPa + resinMarginKPa;
  const against = `${kilopascals(need.neededKPa)} against ${need.stoneKPa > need.moistureKPa ? 'the steam of unsealed stone' : 'moisture'} at ${formatNumber(need.atC, 0)} °C and ${kilopascals(resinMarginKPa)} to be sure`;
  if (!(atGelKPa > 0.5))
    return {
      id,
      word: 'stop',
      reason:
        heldInKPa > 0
          ? `With an open rim the resin has no pressure left when it gels: the clamps press on fibers and lands alone (stand-off ${mm(free.solution.standOffMm)}). It wants ${kilopascals(wanted)}.`
          : `The resin has no pressure when it gels: the walls are wider than the plies fill, so stone or fibers carry all ${newtons(main.solution.clampForceN)}. It wants ${kilopascals(wanted)}, ${against}.`,
      fix: '',
    };
  const open =
    rim === 'trapped' && lostAfterS !== null && lostAfterS < gelS
      ? ` Over an open rim it would be under the need after ${formatNumber(lostAfterS / 60, 0)} min, before it gels.`
      : '';
  const reason = `The resin has ${kilopascals(atGelKPa)} when it gels; it wants ${kilopascals(wanted)}: ${against}.${open}`;
  if (atGelKPa >= wanted) return { id, word: 'go', reason, fix: '' };
  return {
    id,
    word: 'look again',
    reason,
    fix: '',
  };
}

function coverageVerdict({ measured: { summary } }: ClosingState): readonly Verdict[] {
  const { unmeasured, show } = summary.kindAreaMm2;
  const share = unmeasured / (unmeasured + show);
  if (!(share > missingShare)) return [];
  return [
    {
      id: 'closing.coverage',
      word: 'look again',
      reason: `${formatNumber(unmeasured, 0)} mm² of the surface have no wall behind them (${areaPercent(share)} beside the show face); the balance leaves them out.`,
      fix: 'Close the holes of the model, or import the shell with both skins.',
    },
  ];
}
