/** Is the box thick enough all round, do the halves add up, and where does the stone break first? */
import type { Verdict } from '../../core/figure';
import { placeName } from '../../core/mesh/place';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../context';
import { mm } from './say';
import type { MoldWork } from './work';

/** Least cover that is trusted (common practice). */
const usualCoverMm = 10;
/** How far the sum of all volumes may be off the box, by method. */
const volumeTolerance = { 'solid booleans': 1e-3, 'integration along the pull': 5e-3 } as const;
/** Stone thinner than this is an edge, not a wall (common practice). */
const knifeEdgeMm = 1;

export function boxVerdict({ inputs }: StepContext, { geometry }: MoldWork): Verdict {
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
  const { box, method, why, volumeCheck } = geometry.value;
  if (Math.abs(volumeCheck - 1) > volumeTolerance[method])
    return {
      id,
      word: 'stop',
      reason: `Halves, pattern and gaps add up to ${formatNumber(100 * volumeCheck, 2)} % of the box, so the volumes are not right. ${why}`,
      fix: 'Look for self-touching or flipped facets at the Part step, mend the model and import it again.',
    };
  const size = `${box.innerMm.map((side) => formatNumber(side, 1)).join(' × ')} mm inside`;
  if (least < usualCoverMm)
    return {
      id,
      word: 'look again',
      reason: `Box ${size}; the thinnest cover is ${mm(least)}, under the ${usualCoverMm} mm that is common practice.`,
      fix: `Give ${usualCoverMm} mm or more on every side, or brace the stone with a frame.`,
    };
  if (method === 'integration along the pull')
    return {
      id,
      word: 'look again',
      reason: `Box ${size}. The volumes come from integration along the pull: ${why}`,
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
  if (thinnest === null) return unknown('The halves are no solids, so the thinnest stone was not measured.');
  const { leastStoneMm } = inputs.mold;
  const inNegative = thinnest.negative.mm <= thinnest.positive.mm;
  const worst = inNegative ? thinnest.negative : thinnest.positive;
  const half = inNegative ? 'negative' : 'positive';
  const place =
    measured === null
      ? ''
      : `, ${placeName({ boxMinMm: measured.summary.boxMinMm, boxMaxMm: measured.summary.boxMaxMm, pull: inputs.part.pull }, worst.atMm, inNegative ? 'show' : 'core')}`;
  const reason = `The thinnest stone is ${mm(worst.mm)}, in the ${half}${place}; you accept ${mm(leastStoneMm)}.`;
  if (worst.mm >= leastStoneMm) return { id, word: 'go', reason, fix: '' };
  if (worst.mm < knifeEdgeMm)
    return {
      id,
      word: 'stop',
      reason: `${reason} That is a knife edge: it breaks when the mold first opens.`,
      fix: 'Round the edge in the model, fill the gap on the pattern, or move the cover there.',
    };
  return {
    id,
    word: 'look again',
    reason: `${reason} Thin ribs between cavities break first.`,
    fix: 'Give that side more cover, widen the gap in the model, or set a wire or glass fiber into the stone there.',
  };
}
