/** Does the part end at its size, and do the two rims meet? */
import type { Verdict } from '../../core/figure';
import { matchRims } from '../../core/stone/rimMatch';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { mm } from './say';
import { axisSizes, finishedRim } from './sizes';

const signed = (value: number) => `${value > 0 ? '+' : ''}${formatNumber(value, 2)}`;

export function sizeVerdict(context: StepContext): Verdict {
  const id = 'mold.size';
  const sizes = axisSizes(context);
  if (!sizes.known)
    return {
      id,
      word: 'not yet known',
      reason: sizes.why,
      fix: 'The sizes follow from the measured pattern.',
    };
  const { sizeToleranceMm } = context.inputs.mold;
  const worst = sizes.value.reduce((most, one) =>
    Math.abs(one.chain.finishedMm - one.wantedMm) > Math.abs(most.chain.finishedMm - most.wantedMm)
      ? one
      : most,
  );
  const offMm = worst.chain.finishedMm - worst.wantedMm;
  const reason = `The part comes out at ${sizes.value.map(({ chain }) => formatNumber(chain.finishedMm, 2)).join(' × ')} mm: ${signed(offMm)} mm along ${worst.axis} against the ${worst.asDrawn ? 'drawn' : 'wanted'} ${mm(worst.wantedMm, 2)} (${mm(sizeToleranceMm, 2)} may be).`;
  return Math.abs(offMm) <= sizeToleranceMm
    ? { id, word: 'go', reason, fix: '' }
    : {
        id,
        word: 'look again',
        reason,
        fix: 'Measure the setting expansion on a cast bar first.',
      };
}

/** One verdict when the other half is known, none else. */
export function rimsVerdict(context: StepContext): readonly Verdict[] {
  const own = finishedRim(context);
  const other = context.otherHalf ?? null;
  if (own === null || other === null) return [];
  const { sizeToleranceMm } = context.inputs.mold;
  const { lengthMm, widthMm, outlineMm } = matchRims(own, other.rim);
  const fits = Math.max(Math.abs(lengthMm), Math.abs(widthMm), outlineMm) <= sizeToleranceMm;
  return [
    {
      id: 'mold.rims',
      word: fits ? 'go' : 'look again',
      reason: `Against “${other.name}” the finished rim is ${signed(lengthMm)} mm long and ${signed(widthMm)} mm wide, with a step of at most ${mm(outlineMm, 2)} (${mm(sizeToleranceMm, 2)} may be).`,
      fix: fits
        ? ''
        : 'Pour both molds from the same bag and cure both at the same temperature, or print one half at another scale.',
    },
  ];
}
