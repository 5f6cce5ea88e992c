/** Is the box thick enough all round, do the halves add up, and where does the stone break first? */
import type { Verdict } from '../../core/figure';
import type { Vec3 } from '../../core/mesh/types';
import { placeName } from '../../core/mesh/place';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { mm } from './say';
import { halves, type MoldWork } from '../stone/work';
import { trappedIsMoreThanASpeck } from '../shared/lockingArea';

/** Least cover that is trusted (common practice). */
const usualCoverMm = 10;
/** How far the sum of all volumes may be off the box, by method. */
const volumeTolerance = { 'solid booleans': 1e-3, 'integration along the pull': 5e-3 } as const;
/** Less stone than this behind a wall is a crumb of the mesh (common practice). */
const noticedLockingMm3 = 5;
/** A sharp edge shorter than that is a corner of the facets (our own judgement). */
const noticedKnifeMm = 1;
/** Stone thinner than this is an edge, not a wall (common practice). */
const knifeEdgeMm = 1;

export function boxVerdict({ inputs, measured }: StepContext, { geometry }: MoldWork): Verdict {
  const id = 'mold.box';
  if (!geometry.known)
    return {
      id,
      word: 'not yet known',
      reason: geometry.why,
      fix: 'Wait until the two pours are worked out; a pattern drawn solid needs its shell imported.',
    };
  const { mold } = inputs;
  const covers = [
    mold.coverXLowMm,
    mold.coverXHighMm,
    mold.coverYLowMm,
    mold.coverYHighMm,
    mold.coverOverShowMm,
    mold.coverUnderRimMm,
  ];
  const least = Math.min(...covers);
  const { box, boxTurnDeg, method, why, volumeCheck } = geometry.value;
  if (Math.abs(volumeCheck - 1) > volumeTolerance[method])
    return {
      id,
      word: 'stop',
      reason: `Halves, pattern and gaps add up to ${formatNumber(100 * volumeCheck, 2)} % of the box, so the volumes are not right. ${why}`,
      fix: 'Look for self-touching or flipped facets at the Part step, mend the model and import it again.',
    };
  const turn = boxTurnDeg === 0 ? '' : `, turned by ${formatNumber(boxTurnDeg, 1)}° against the file’s axes`;
  const size = `${box.innerMm.map((side) => formatNumber(side, 1)).join(' × ')} mm inside${turn}`;
  if (measured?.summary.solid === true)
    return {
      id,
      word: 'look again',
      reason: `Box ${size}. The model is drawn solid: the negative is right, but the positive has no cavity to fill, only its backing.`,
      fix: 'Import the shell, or work out the positive from the print that is hollow.',
    };
  if (least < usualCoverMm)
    return {
      id,
      word: 'look again',
      reason: `Box ${size}; the thinnest cover is ${mm(least)}, under the ${usualCoverMm} mm that is common practice.`,
      fix: '',
    };
  if (method === 'integration along the pull')
    return {
      id,
      word: 'look again',
      reason: `Box ${size}. The volumes come from integration along the pull. ${why}`,
      fix: 'Good enough to weigh the mix. Mend the model for solid halves and the thinnest stone.',
    };
  return { id, word: 'go', reason: `Box ${size}; cover ${mm(least)} or more all round.`, fix: '' };
}

export function thinnestVerdict({ inputs, measured }: StepContext, { geometry }: MoldWork): Verdict {
  const id = 'mold.thinnest';
  const unknown = (reason: string): Verdict => ({
    id,
    word: 'not yet known',
    reason,
    fix: 'It is measured on the solid halves, which need a sound model.',
  });
  if (!geometry.known) return unknown(geometry.why);
  const { thinnest } = geometry.value;
  if (thinnest === null && geometry.value.method === 'solid booleans')
    return {
      id,
      word: 'go',
      reason: 'No two faces of stone stand face to face: nothing thin to break.',
      fix: '',
    };
  if (thinnest === null) return unknown('The halves are no solids, so the thinnest stone was not measured.');
  const { leastStoneMm } = inputs.mold;
  const inNegative = thinnest.negative.mm <= thinnest.positive.mm;
  const worst = inNegative ? thinnest.negative : thinnest.positive;
  const half = inNegative ? 'negative' : 'positive';
  const place =
    measured === null
      ? ''
      : `, ${placeName({ boxMinMm: measured.summary.boxMinMm, boxMaxMm: measured.summary.boxMaxMm, pull: inputs.part.pull }, worst.atMm, inNegative ? 'show' : 'core')}`;
  const reason = `The thinnest stone is ${mm(worst.mm, 2)}, in the ${half}${place}; you accept ${mm(leastStoneMm)}.`;
  if (worst.mm >= leastStoneMm) return { id, word: 'go', reason, fix: '' };
  if (worst.mm < knifeEdgeMm)
    return {
      id,
      word: 'look again',
      reason: `${reason} That is an edge, not a wall: it chips when the mold first opens, and the chip lies in the laminate.`,
      fix: '',
    };
  return {
    id,
    word: 'look again',
    reason: `${reason} Thin ribs between cavities break first.`,
    fix: '',
  };
}

/** Undercuts, knife edges and keys of the halves; one verdict each where there is something to say. */
export function findingVerdicts({ inputs, pourFindings = null, measured }: StepContext): readonly Verdict[] {
  if (pourFindings === null) return [];
  const { lockingMm3, lockingAtMm, keysPlaced, knifeEdges, flatRim } = pourFindings;
  const verdicts: Verdict[] = [];
  const placeOf = (atMm: Vec3, kind: 'show' | 'core') =>
    measured === null
      ? ''
      : ` at ${placeName({ boxMinMm: measured.summary.boxMinMm, boxMaxMm: measured.summary.boxMaxMm, pull: inputs.part.pull }, atMm, kind)}`;
  // Walls & draft tells the same undercut by its area; here it is told where only the stone shows it.
  if (lockingMm3 > noticedLockingMm3 && !(measured !== null && trappedIsMoreThanASpeck(measured.summary)))
    verdicts.push({
      id: 'mold.locking',
      word: 'stop',
      reason: `${formatNumber(lockingMm3 / 1000, 2)} mL of stone are caught in undercuts${lockingAtMm === null ? '' : placeOf(lockingAtMm, 'core')}: the halves lock to the pattern and to the laminate.`,
      fix: '',
    });
  if (keysPlaced < inputs.mold.keyCount)
    verdicts.push({
      id: 'mold.keys',
      word: 'look again',
      reason: `${keysPlaced} of ${inputs.mold.keyCount} keys find room on the lands.`,
      fix: '',
    });
  for (const half of halves) {
    const knife = knifeEdges[half];
    if (knife === null || knife.lengthMm < noticedKnifeMm) continue;
    verdicts.push({
      id: `mold.${half}.knifeEdge`,
      word: 'look again',
      reason: `The ${half} has ${mm(knife.lengthMm, 0)} of sharp edge, down to ${formatNumber(knife.sharpestDeg, 0)}° of stone${placeOf(knife.atMm, half === 'negative' ? 'show' : 'core')}: it chips first.`,
      fix: 'Take it out of the box with care, and seal it well.',
    });
  }
  if (!flatRim && inputs.mold.pourMethod !== 'pressed in')
    verdicts.push({
      id: 'mold.rimOnBoard',
      word: 'look again',
      reason: 'The rim does not lie in one plane, so a plain board does not seal it.',
      fix: 'Build the board up with clay to the rim, or press the pattern in from above.',
    });
  return verdicts;
}
