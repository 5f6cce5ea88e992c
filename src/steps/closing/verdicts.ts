/** Verdicts of the Mold closing step: does it close, is the laminate pressed, do walls wipe, can resin leave. */
import { lineOfActionMm } from '../../core/closing/clamps';
import type { ClosingPlace } from '../../core/closing/places';
import type { Verdict, VerdictWord } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { wallBand } from '../band';
import type { StepContext } from '../context';
import { wallFix } from '../wallFix';
import { bandOver, isPlaced, outcomeText, tiltDeg } from './figures';
import { standOffForGapMm } from '../../core/closing/fixes';
import { slideOf, slidePlace } from './limitFigures';
import { areaPercent, between, mm, newtons } from './say';
import { closingState, type ClosingState } from './state';

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
    tiltVerdict(context, state),
    slideVerdict(state),
    frictionVerdict(context, state),
    resinVerdict(context, state),
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
      fix: 'Give the mold lands, or a wall across the pull that the stack fills.',
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
    fix: 'Place the clamps round the part so that their middle lies over it, or add clamps on the other side.',
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
  const holding = holders(state.places);
  const reason = `The mold ${outcomeText(state)}: it stands off by ${mm(widestMm)}${over} at the widest (${between(band[0], band[1], 2, 'mm')} over the scatter of the bed). ${newtons(solution.laminateForceN + solution.resinForceN)} of ${newtons(solution.clampForceN)} go through the laminate.${holding === '' ? '' : ` What holds it open: ${holding}.`}`;
  if (widestMm <= acceptedStandOffMm) return { id, word: 'go', reason, fix: '' };
  return {
    id,
    word: widestMm <= 4 * acceptedStandOffMm ? 'look again' : 'stop',
    reason,
    fix: opensFix(state),
  };
}

/** The first holder tells whether steep walls or the faces are too tight. */
function opensFix(state: ClosingState): string {
  const [first] = state.places;
  const wall =
    first === undefined ? '' : ` at ${first.place} from ${mm(first.wallMm)} to ${mm(state.wantedWallMm)}`;
  const start =
    first?.steep === true ? 'More clamps hardly close a steep wall. Make the wall' : 'Make the wall';
  const plies = pliesThere(state);
  return `${start}${wall}${plies}${first?.steep === true ? '.' : '; more clamp force closes it further only a little.'}`;
}

function pliesThere({ places, curedMm, stack }: ClosingState): string {
  const [first] = places;
  if (first === undefined) return '';
  const fit = Math.max(1, Math.floor(first.wallMm / (curedMm / stack.total.plies)));
  return fit < stack.total.plies ? `, or lay ${fit} ${fit === 1 ? 'ply' : 'plies'} there` : '';
}

function loadVerdict(context: StepContext, state: ClosingState): Verdict {
  const id = 'closing.load';
  const { shares, solution } = state.main;
  const { wrongShareAllowedPercent } = context.inputs.walls;
  const band = wallBand(context.inputs);
  const median = state.medianWallMm ?? 0;
  const fix =
    band === null
      ? ''
      : wallFix(
          median,
          state.stack,
          { ...band, laidMm: state.laidMm, curedMm: state.curedMm },
          context.inputs,
        );
  if (solution.outcome === 'shut unloaded')
    return {
      id,
      word: 'stop',
      reason: `Shut on the lands, laminate unloaded: all ${newtons(solution.clampForceN)} press stone on stone. The gap is ${mm(median)} in the median against ${mm(state.laidMm)} as laid, and the fibers first push at ${mm(state.curve.unloadedGapMm)}; ${areaPercent(shares.loose)} of the show face is loose.`,
      fix,
    };
  const contact = state.main.contact?.areaShare ?? 0;
  const carried = (solution.laminateForceN + solution.resinForceN) / solution.clampForceN;
  const lightly =
    shares.light > 0.5
      ? ` Light plies carry little: ${areaPercent(carried)} of the clamp force. A wall nearer to ${mm(state.curedMm)} is pressed harder. Between cured and laid the bed carries next to nothing, so where exactly plies rest there is not settled; the more closed place is taken.`
      : '';
  const reason = `${areaPercent(shares.loose)} of the show face is loose (gap over ${mm(state.laidMm)}), ${areaPercent(shares.light)} light, ${areaPercent(shares.packed)} packed, ${areaPercent(shares.choked)} choked; fibers touch on ${areaPercent(contact)}.${lightly}`;
  const word: VerdictWord =
    100 * shares.loose > wrongShareAllowedPercent
      ? 'stop'
      : shares.loose > noticedShare || contact < 0.5
        ? 'look again'
        : 'go';
  return { id, word, reason, fix: word === 'go' ? '' : looseFix(state, fix) };
}

/** Held open by something: free that first. Else the wall itself is wide. */
function looseFix(state: ClosingState, fix: string): string {
  if (state.main.solution.outcome === 'stands off' && state.sharesAtShut.loose < state.main.shares.loose / 2)
    return `As drawn and shut only ${areaPercent(state.sharesAtShut.loose)} would be loose: free what holds the mold open first. ${opensFix(state)}`;
  const faces = state.pressed;
  const change =
    faces === null || state.lands === null
      ? 0
      : standOffForGapMm(faces, state.wantedWallMm) - state.lands.shimMm;
  const lands =
    change < -0.02
      ? ` Lands lowered by ${mm(-change)} would press the faces across the pull, not the steep walls.`
      : '';
  return `${fix}${lands}`;
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
      reason: `${areaPercent(shares.choked)} of the show face is past the fiber limit (gap under ${mm(limits.chokedUnderMm)}); ${drawn}.`,
      fix: sharesAtShut.choked > noticedShare ? opensFix(state) : '',
    };
  const tight = state.places.filter(({ mostly }) => mostly === 'choked').slice(0, 3);
  const where = tight.length === 0 ? '' : ` Places: ${tight.map(({ place }) => place).join('; ')}.`;
  return {
    id,
    word: 100 * shares.choked > context.inputs.walls.wrongShareAllowedPercent ? 'stop' : 'look again',
    reason: `${areaPercent(shares.choked)} of the show face is past the fiber limit (gap under ${mm(limits.chokedUnderMm)}): dry spots there, and less load for the rest; ${drawn}.${where}`,
    fix: opensFix(state),
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
    fix: `Move clamps toward the ${u}${v} side, and tighten them crosswise in small steps.`,
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
    fix:
      slide.slideMm > noticedSlideMm
        ? 'Debulk the walls well, lay them a ply short of the edge, or give them more draft or a wall a little wider; close slowly while warm.'
        : '',
  };
}

function frictionVerdict({ inputs }: StepContext, state: ClosingState): Verdict {
  const id = 'closing.friction';
  const { withFriction, free, frictionShares } = state;
  const more = withFriction.standOffMm - free.solution.standOffMm;
  const reason = `Between no friction and ${formatNumber(inputs.closing.frictionCoefficient, 2)} on the stone the mold stands off ${between(free.solution.standOffMm, withFriction.standOffMm, 2, 'mm')}, and ${between(100 * free.shares.loose, 100 * frictionShares.loose, 1, '%')} of the show face is loose.`;
  if (more <= inputs.closing.acceptedStandOffMm) return { id, word: 'go', reason, fix: '' };
  return {
    id,
    word: 'look again',
    reason: `${reason} Steep walls can eat the clamps before the faces are pressed.`,
    fix: 'Release and polish steep walls, close when the resin has gone soft, and tighten again then; or widen the steep walls.',
  };
}

function resinVerdict({ inputs }: StepContext, state: ClosingState): Verdict {
  const id = 'closing.resin';
  const { free, trapped } = state;
  const more = trapped.solution.standOffMm - free.solution.standOffMm;
  const reason = `Resin free to leave: stand-off ${mm(free.solution.standOffMm)}. Resin held in: ${mm(trapped.solution.standOffMm)}, with ${formatNumber(1000 * trapped.solution.resinPressureMPa, 0)} kPa in the resin.`;
  if (more <= inputs.closing.acceptedStandOffMm) return { id, word: 'go', reason, fix: '' };
  return {
    id,
    word: 'look again',
    reason: `${reason} The mold closes only as resin leaves.`,
    fix: 'Leave resin a way out over the rim (a groove, an open edge), and time before it sets.',
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
