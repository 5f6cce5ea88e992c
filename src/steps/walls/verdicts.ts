/** Verdicts of the Walls & draft step: the wall against the stack, undercuts, draft, inside corners. */
import type { Verdict } from '../../core/figure';
import { placeName } from '../../core/mesh/place';
import type { Patch } from '../../core/mesh/types';
import type { PartSummary } from '../../core/part/partSummary';
import { formatNumber } from '../../core/units/formatNumber';
import { leastOuterEdgeRadiusMm } from '../shared/band';
import type { StepContext } from '../shared/context';
import { speckMm2, trappedIsMoreThanASpeck } from '../shared/lockingArea';
import { availablePart } from '../shared/missing';
import { spreadWords, wallFit } from '../shared/wallFit';
import { dragsShare } from './figures';

/** Never under this draft (composites trade handbook), on more than this share, where the part is deeper than this (common practice). */
const neverUnderDeg = 1;
const steepShareAllowed = 0.05;
const shallowMm = 5;
/** Below this share of area a finding is a scatter of single facets, not a place (common practice). */
const noticedPercent = 0.5;

const mm = (value: number) => `${formatNumber(value, 2)} mm`;

export function wallsVerdicts(context: StepContext): readonly Verdict[] {
  const part = availablePart(context);
  const band = bandVerdict(context);
  if (!part.known) return [band];
  const { summary, patches } = part.measured;
  return [
    band,
    locksVerdict(summary, patches),
    draftVerdict(context, summary, patches),
    cornerVerdict(context, summary, patches),
  ];
}

/** The first (worst ranked) patch with one of the findings. */
function worstPatch(
  patches: readonly Patch[] | null,
  ...findings: readonly Patch['finding'][]
): Patch | null {
  return patches?.find((patch) => findings.includes(patch.finding)) ?? null;
}

/** Where the worst value itself lies; its patch may reach far beyond. */
function worstPlace({ inputs, measured }: StepContext, { worstAtMm, place }: Patch): string {
  if (measured === null) return place;
  const { boxMinMm, boxMaxMm } = measured.summary;
  return placeName({ boxMinMm, boxMaxMm, pull: inputs.part.pull }, worstAtMm, 'show');
}

function places(patches: readonly Patch[] | null, finding: Patch['finding']): string {
  const names = (patches ?? []).filter((patch) => patch.finding === finding).map(({ place }) => place);
  const distinct = [...new Set(names)];
  if (distinct.length === 0) return '';
  const shown = distinct.slice(0, 3).join('; ');
  return ` Places: ${shown}${distinct.length > 3 ? ` and ${distinct.length - 3} more` : ''}.`;
}

function bandVerdict(context: StepContext): Verdict {
  const id = 'walls.band';
  const fit = wallFit(context);
  if (!fit.known) return { id, word: 'not yet known', reason: fit.reason, fix: fit.fix };
  const { word, told, wall } = fit;
  if (wall.nominal) return { id, word, reason: `${told} (${wall.how}.)`, fix: '' };
  const worst = worstPatch(context.measured?.patches ?? null, 'thick', 'thin');
  const where =
    worst === null || word === 'go' ? '' : ` Worst: ${mm(worst.worst)} at ${worstPlace(context, worst)}.`;
  return {
    id,
    word,
    reason: `${told}${spreadWords(fit)}${where}`,
    fix: '',
  };
}

function locksVerdict(summary: PartSummary, patches: readonly Patch[] | null): Verdict {
  const id = 'walls.locks';
  const trapped = summary.kindAreaMm2.trapped;
  if (!trappedIsMoreThanASpeck(summary))
    return {
      id,
      word: 'go',
      reason:
        trapped > 0
          ? `${formatNumber(trapped, 2)} mm² are hidden from both mold halves, less than the ${speckMm2} mm² that could hold stone.`
          : 'Both mold halves reach the whole surface: stone will let go.',
      fix: '',
    };
  const share = formatNumber((100 * trapped) / summary.areaMm2, 2);
  return {
    id,
    word: 'stop',
    reason: `${formatNumber(trapped, 1)} mm² (${share} % of the surface) are undercut: neither mold half reaches them along the pull, and stone hooks in there.${places(patches, 'locks')}`,
    fix: '',
  };
}

function draftVerdict(
  { inputs }: StepContext,
  summary: PartSummary,
  patches: readonly Patch[] | null,
): Verdict {
  const id = 'walls.draft';
  const { leastDraftDeg } = inputs.walls;
  const share = dragsShare(summary, leastDraftDeg);
  const least = `${formatNumber(leastDraftDeg, 1)}°`;
  if (share === null)
    return {
      id,
      word: 'not yet known',
      reason: 'No show or core face was found along this pull.',
      fix: 'Check the pull at the Part step.',
    };
  const drags = formatNumber(100 * share, 1);
  const depthMm = depthAlong(summary, inputs.part.pull);
  const steepShare = dragsShare(summary, neverUnderDeg) ?? 0;
  if (steepShare > steepShareAllowed && depthMm > shallowMm)
    return {
      id,
      word: 'stop',
      reason: `${formatNumber(100 * steepShare, 1)} % of show and core face has less than ${neverUnderDeg}° of draft over a depth of ${formatNumber(depthMm, 0)} mm: stone will not let go of it, and it wipes the plies all the way down.${places(patches, 'drags')}`,
      fix: '',
    };
  if (100 * share <= noticedPercent)
    return {
      id,
      word: 'go',
      reason:
        share > 0.0005
          ? `Only ${drags} % of show and core face has less draft than ${least}.`
          : `Show and core face have ${least} of draft or more.`,
      fix: '',
    };
  return {
    id,
    word: 'look again',
    reason: `${drags} % of show and core face has less draft than the ${least} you accept and drags on the stone.${places(patches, 'drags')}`,
    fix: '',
  };
}

/** Size of the part's box along the pull, mm. */
function depthAlong({ boxMinMm, boxMaxMm }: PartSummary, pull: readonly [number, number, number]): number {
  const length = Math.hypot(...pull);
  return boxMaxMm.reduce(
    (sum, high, axis) => sum + ((high - boxMinMm[axis]!) * Math.abs(pull[axis]!)) / (length || 1),
    0,
  );
}

/** Plies must reach the hollow corners of the half they are laid in, and be pressed into those of the other one. */
function cornerVerdict(
  { inputs }: StepContext,
  { insideCornerRadiusMm, outerEdgeRadiusMm }: PartSummary,
  patches: readonly Patch[] | null,
): Verdict {
  const id = 'walls.corner';
  const { laidIn, leastInnerRadiusMm } = inputs.walls;
  const leastOuterMm = leastOuterEdgeRadiusMm(inputs);
  const inner = insideCornerRadiusMm.min;
  const outer = outerEdgeRadiusMm.p5;
  const tightInner = inner !== null && inner < leastInnerRadiusMm;
  const tightOuter = outer !== null && outer < leastOuterMm;
  const half =
    laidIn === 'negative' ? 'hollow corners of the negative that the plies are laid in' : 'outer edges';
  const told = [
    ...(outer === null ? [] : [`Outer edges are rounded with ${mm(outer)} (tightest 5 %)`]),
    ...(inner === null ? [] : [`inside corners with ${mm(inner)}`]),
  ].join(', ');
  if (told === '') return { id, word: 'go', reason: 'No corner was found.', fix: '' };
  const sentence = `${told.charAt(0).toUpperCase()}${told.slice(1)}`;
  if (!tightInner && !tightOuter)
    return {
      id,
      word: 'go',
      reason: `${sentence}: plies reach them (${mm(leastOuterMm)} and ${mm(leastInnerRadiusMm)} wanted, common practice).`,
      fix: '',
    };
  return {
    id,
    word: 'look again',
    reason: `${sentence}; ${[
      ...(tightOuter ? [`${half} want ${mm(leastOuterMm)}`] : []),
      ...(tightInner ? [`inside corners want ${mm(leastInnerRadiusMm)}`] : []),
    ].join(', ')} (common practice).${places(patches, tightOuter ? 'tight edge' : 'tight corner')}`,
    fix: '',
  };
}
