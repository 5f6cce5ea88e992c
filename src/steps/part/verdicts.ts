/** Verdicts of the Part step: sound, right size, right way up. */
import type { Verdict } from '../../core/figure';
import type { MeshHealth } from '../../core/mesh/types';
import type { PartSummary } from '../../core/part/partSummary';
import { formatNumber } from '../../core/units/formatNumber';
import { lengthUnitNames } from '../../core/units/length';
import type { MeasuredPart, StepContext } from '../shared/context';
import { count } from '../kit/figures';
import { trappedIsMoreThanASpeck } from '../shared/lockingArea';
import { noPattern } from '../shared/held';
import { availablePart } from '../shared/missing';
import { patternVolume, type PatternVolume } from '../shared/patternVolume';
import { takenUnit } from './unit';

/** Longest side of an enclosure half that a hand mold of stone is made for, mm (common practice). */
const plausibleLongestMm = { low: 15, high: 500 } as const;

export function partVerdicts(context: StepContext): readonly Verdict[] {
  const part = availablePart(context);
  if (!part.known) return [{ id: 'part.sound', word: 'not yet known', reason: part.reason, fix: part.fix }];
  const { measured } = part;
  return [
    ...readingVerdict(part.pattern.notes),
    soundVerdict(context, measured),
    ...bodyVerdict(measured.health, context.inputs.part.body),
    ...unitVerdict(context, measured),
    sizeVerdict(measured.summary),
    solidVerdict(context, measured.summary),
    ...patternVerdict(context),
    pullVerdict(context, measured.summary),
  ];
}

/** What was odd about the file and how it was read; what that did to the surface shows in the health. */
function readingVerdict(notes: readonly string[]): readonly Verdict[] {
  if (notes.length === 0) return [];
  return [{ id: 'part.reading', word: 'go', reason: `Read with a note: ${notes.join(' ')}`, fix: '' }];
}

function soundVerdict(context: StepContext, { health, summary }: MeasuredPart): Verdict {
  const id = 'part.sound';
  if (summary.facetCount === 0 || !(summary.areaMm2 > 0))
    return {
      id,
      word: 'stop',
      reason: 'Nothing can be measured: the chosen body has no surface.',
      fix: 'Choose another body, or export the model again.',
    };
  if (!summary.solid && summary.rayWall.hitShare === 0)
    return {
      id,
      word: 'stop',
      reason:
        'Nothing lies behind any facet, so no wall can be measured: the model is a single skin without thickness.',
      fix: 'Give the skin its wall in the drawing program and export it as a closed body.',
    };
  const findings = healthFindings(health, summary, patternVolume(context), context.inputs.part.winding);
  if (findings.length === 0)
    return {
      id,
      word: 'go',
      reason: `The surface is closed and wound one way: ${count(health.facetCount, 'facet')}, no finding.`,
      fix: '',
    };
  return {
    id,
    word: 'look again',
    reason: findings.join(' '),
    fix: 'Show the places on the view, mend them where the model was drawn, and import it again. What can be measured is measured all the same.',
  };
}

/** One sentence per finding: the count, and what it means for the measurements. */
function healthFindings(
  health: MeshHealth,
  summary: PartSummary,
  volume: PatternVolume | null,
  winding: 'repair' | 'asFile',
): readonly string[] {
  const findings: string[] = [];
  const unhit = formatNumber((1 - summary.rayWall.hitShare) * 100, 1);
  if (health.openEdges > 0)
    findings.push(
      `${count(health.openEdges, 'open edge')}: the surface does not close there, so walls next to the gaps may be wrong or missing (${unhit} % of the area has no wall behind it)${volume === null ? ' and there is no volume' : volume.bandMm3 === null ? '' : ', and the volume is open by what the holes could hold'}.`,
    );
  if (health.crowdedEdges > 0)
    findings.push(
      `${count(health.crowdedEdges, 'edge')} with more than two facets: inside and outside are not clear there.`,
    );
  if (health.flippedFacets > 0)
    findings.push(
      winding === 'repair'
        ? `${count(health.flippedFacets, 'flipped facet')}: turned right for measuring, so walls and draft hold; the file itself is unchanged.`
        : `${count(health.flippedFacets, 'flipped facet')}, left as in the file: wall and draft there are measured the wrong way round.`,
    );
  if (health.duplicateFacets > 0)
    findings.push(
      `${count(health.duplicateFacets, 'duplicate facet')}: their area counts twice, and a wall behind them can read as nothing.`,
    );
  if (health.selfTouchingFacets !== null && health.selfTouchingFacets > 0)
    findings.push(
      `${count(health.selfTouchingFacets, 'facet')} cut through others: walls there end at the crossing, and the volume counts the overlap twice.`,
    );
  return findings;
}

function bodyVerdict(health: MeshHealth, body: number): readonly Verdict[] {
  const bodies = health.bodies.length;
  if (bodies <= 1 || body !== 0) return [];
  return [
    {
      id: 'part.body',
      word: 'look again',
      reason: `The file holds ${count(bodies, 'separate body', 'separate bodies')}, measured together.`,
      fix: 'Choose the body that is the part, unless all of them belong to it.',
    },
  ];
}

function unitVerdict(context: StepContext, { unitGuess }: MeasuredPart): readonly Verdict[] {
  const taken = takenUnit(context);
  if (taken === null) return [];
  const name = lengthUnitNames[taken.unit];
  const id = 'part.unit';
  if (taken.how === 'guessed')
    return [
      {
        id,
        word: 'look again',
        reason: `Read in ${name}, which nobody has confirmed. ${unitGuess.reason}`,
        fix: 'Compare the size with the drawing and confirm the unit.',
      },
    ];
  const reasons = {
    confirmed: `The file is read in ${name}, as you confirmed.`,
    declared: `The file says that it is drawn in ${name}.`,
    plausible: `Read in ${name}. ${unitGuess.reason}`,
  };
  return [{ id, word: 'go', reason: reasons[taken.how], fix: '' }];
}

function sizeVerdict({ boxMinMm, boxMaxMm }: PartSummary): Verdict {
  const sides = boxMaxMm.map((high, axis) => high - (boxMinMm[axis] ?? 0));
  const longest = Math.max(...sides);
  const size = `${sides.map((side) => formatNumber(side, 1)).join(' × ')} mm`;
  const plausible = longest >= plausibleLongestMm.low && longest <= plausibleLongestMm.high;
  return {
    id: 'part.size',
    word: plausible ? 'go' : 'look again',
    reason: plausible
      ? `${size}: a size that a hand mold is made for.`
      : `${size}: outside the ${plausibleLongestMm.low} to ${plausibleLongestMm.high} mm that a hand mold is usually made for (common practice).`,
    fix: plausible ? '' : 'Check unit and scale.',
  };
}

function solidVerdict({ inputs }: StepContext, summary: PartSummary): Verdict {
  const id = 'part.solid';
  const { nominalWall, printLines, openFace } = inputs.part;
  const open = openFace === 'againstPull' ? 'away from the pull' : `toward ${openFace}`;
  const wallMm = formatNumber(printLines * inputs.plies.lineWidthMm, 2);
  if (!summary.solid && nominalWall === 'model')
    return {
      id,
      word: 'go',
      reason: 'The model has an inner skin: walls are measured between the two.',
      fix: '',
    };
  if (!summary.solid)
    return {
      id,
      word: 'look again',
      reason: `The model has an inner skin, yet the wall is taken from the print: ${wallMm} mm, your entry.`,
      fix: 'Take the wall from the model, unless the print really ignores the inner skin.',
    };
  if (nominalWall === 'print')
    return {
      id,
      word: 'go',
      reason: `Drawn solid and hollowed by the print: the wall is ${count(printLines, 'bead')} across, ${wallMm} mm everywhere, open on the side ${open}, your entries. Draft, undercuts and corners come from the solid.`,
      fix: '',
    };
  return {
    id,
    word: 'look again',
    reason:
      'The model is drawn solid: no inner skin stands behind the show face, so there is no wall to measure.',
    fix: 'If the print hollows it, take the wall from the print and give its beads and the open face. Else draw the shell and import that.',
  };
}

/** A model that cannot be a pattern is told here, and no other step gives a recipe for it. */
function patternVerdict(context: StepContext): readonly Verdict[] {
  const none = noPattern(context);
  return none === null ? [] : [{ id: 'part.pattern', word: 'stop', ...none }];
}

function pullVerdict({ inputs }: StepContext, summary: PartSummary): Verdict {
  const id = 'part.pull';
  if (inputs.part.rightWayUp === 'asked')
    return {
      id,
      word: 'not yet known',
      reason: 'The shape does not tell which face people see.',
      fix: 'Choose one of the two pictures, or give the pull.',
    };
  const pull = `(${inputs.part.pull.map((one) => formatNumber(one, 2)).join(', ')})`;
  const along = trappedIsMoreThanASpeck(summary)
    ? 'what is undercut along it stands at Walls & draft'
    : 'both mold halves reach the whole surface';
  return { id, word: 'go', reason: `The negative leaves along ${pull}; ${along}.`, fix: '' };
}
