/** Verdicts of the Walls & draft step: the wall against the stack, undercuts, draft, inside corners. */
import type { Verdict } from '../../core/figure';
import type { Patch, PartSummary } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import { leastCornerRadiusMm, wallBand } from '../band';
import type { StepContext } from '../context';
import { speckMm2, trappedIsMoreThanASpeck } from '../lockingArea';
import { availablePart } from '../missing';
import { resolveStack } from '../plies/stack';
import { wallFix } from '../wallFix';
import { wallInUse } from '../wallInUse';
import { dragsShare } from './figures';

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

function places(patches: readonly Patch[] | null, finding: Patch['finding']): string {
  const names = (patches ?? []).filter((patch) => patch.finding === finding).map(({ place }) => place);
  const distinct = [...new Set(names)];
  if (distinct.length === 0) return '';
  const shown = distinct.slice(0, 3).join('; ');
  return ` Places: ${shown}${distinct.length > 3 ? ` and ${distinct.length - 3} more` : ''}.`;
}

function bandVerdict(context: StepContext): Verdict {
  const id = 'walls.band';
  const { inputs } = context;
  const wall = wallInUse(context);
  if (!wall.known) return { id, word: 'not yet known', reason: wall.reason, fix: wall.fix };
  const stack = resolveStack(inputs.plies);
  const band = wallBand(inputs);
  if (!stack.known || band === null)
    return stack.known
      ? { id, word: 'not yet known', reason: 'The stack has no thickness.', fix: 'Check the material cards.' }
      : { id, word: 'not yet known', reason: stack.reason, fix: stack.fix };
  const accepted = `${mm(band.lowMm)} to ${mm(band.highMm)}`;
  const fix = wallFix(wall.medianMm, stack, band, inputs);
  const shares = wall.shares(band.lowMm, band.highMm);
  if (wall.nominal) {
    const fits = shares.within === 1;
    const side = shares.over === 1 ? 'over' : 'under';
    return {
      id,
      word: fits ? 'go' : 'stop',
      reason: `The print lays ${mm(wall.medianMm)} (${wall.how}); the stack accepts ${accepted}${fits ? '' : `, so the wall is ${side} it everywhere`}.`,
      fix: fits ? '' : fix,
    };
  }
  const wrongPercent = 100 * (shares.under + shares.over);
  const allowedPercent = inputs.walls.wrongShareAllowedPercent;
  const word = wrongPercent > allowedPercent ? 'stop' : wrongPercent > noticedPercent ? 'look again' : 'go';
  const worst = worstPatch(context.measured?.patches ?? null, 'thick', 'thin');
  const where =
    worst === null || word === 'go'
      ? ''
      : ` Worst: ${mm(worst.worst)} at ${worst.place}, ${formatNumber(worst.areaMm2, 0)} mm².`;
  return {
    id,
    word,
    reason: `${formatNumber(100 * shares.within, 1)} % of the show face has a wall of ${accepted}; ${formatNumber(100 * shares.over, 1)} % is over, ${formatNumber(100 * shares.under, 1)} % under (${formatNumber(allowedPercent, 0)} % may be). Median ${mm(wall.medianMm)}.${where}`,
    fix: word === 'go' ? '' : wrongFix(wrongPercent, worst, fix, band),
  };
}

/** Most of the wall wrong: change stack or wall. A place wrong: change the place. */
function wrongFix(
  wrongPercent: number,
  worst: Patch | null,
  fix: string,
  band: { readonly curedMm: number; readonly laidMm: number },
): string {
  if (wrongPercent > 50 || worst === null) return fix;
  return `Bring the wall at ${worst.place} to ${mm(Math.min(band.curedMm, band.laidMm))} to ${mm(Math.max(band.curedMm, band.laidMm))} and print again.`;
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
    reason: `${formatNumber(trapped, 1)} mm² (${share} % of the surface) lock: neither mold half reaches them along the pull, and stone hooks in there.${places(patches, 'locks')}`,
    fix: 'Turn the pull, fill the undercut before the pour, or draw it away. A loose mold piece is the last way.',
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
  if (100 * share <= noticedPercent)
    return {
      id,
      word: 'go',
      reason: `${drags} % of show and core face has less draft than ${least}.`,
      fix: '',
    };
  return {
    id,
    word: 'look again',
    reason: `${drags} % of show and core face has less draft than the ${least} you accept and drags on the stone.${places(patches, 'drags')}`,
    fix: 'Draw these faces with 3° or more, and never below 1°; else polish and release them with extra care.',
  };
}

function cornerVerdict(
  context: StepContext,
  summary: PartSummary,
  patches: readonly Patch[] | null,
): Verdict {
  const id = 'walls.corner';
  const tightest = summary.insideCornerRadiusMm.min;
  if (tightest === null) return { id, word: 'go', reason: 'No inside corner was found.', fix: '' };
  const leastMm = leastCornerRadiusMm(context.inputs);
  if (leastMm === null)
    return {
      id,
      word: 'not yet known',
      reason: `The tightest inside corner has a radius of ${mm(tightest)}; without a stack there is nothing to hold it against.`,
      fix: 'Give the plies at the Ply schedule step.',
    };
  if (tightest >= leastMm)
    return {
      id,
      word: 'go',
      reason: `The tightest inside corner has a radius of ${mm(tightest)}; the stack of ${mm(leastMm)} follows it.`,
      fix: '',
    };
  return {
    id,
    word: 'look again',
    reason: `The tightest inside corner has a radius of ${mm(tightest)}; a stack of ${mm(leastMm)} as laid bridges corners tighter than itself (common practice).${places(patches, 'tight corner')}`,
    fix: `Round inside corners to ${mm(leastMm)} or more, or press the plies in there one by one and expect resin in the corner.`,
  };
}
