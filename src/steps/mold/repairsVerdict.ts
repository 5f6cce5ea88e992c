/** What repairs of the stone do to the wall. */
import type { Verdict } from '../../core/figure';
import { repairStepMm } from '../../core/stone/repairs';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { count } from '../kit/figures';
import { wallBand } from '../shared/band';
import { wallInUse } from '../shared/wallInUse';

/** One verdict when there are repairs, none else. */
export function repairsVerdict(context: StepContext): readonly Verdict[] {
  const { repairs } = context.inputs.mold;
  if (repairs.length === 0) return [];
  const id = 'mold.repairs';
  const steps = repairs.map(repairStepMm);
  const [thinnest, thickest] = [Math.min(...steps), Math.max(...steps)];
  const wall = wallInUse(context);
  const toleranceMm = wallBand(context.inputs)?.toleranceMm ?? 0;
  const reason = `${count(repairs.length, 'repair')}: the wall changes by ${formatNumber(thinnest, 2)} to ${formatNumber(thickest, 2)} mm at these places.`;
  if (wall.known && -thinnest >= wall.medianMm)
    return [
      {
        id,
        word: 'stop',
        reason: `${reason} Filler stands as far out as the whole wall of ${formatNumber(wall.medianMm, 2)} mm: the halves would meet there.`,
        fix: 'Scrape the filler down to the cast surface.',
      },
    ];
  if (Math.max(-thinnest, thickest) > toleranceMm)
    return [
      {
        id,
        word: 'look again',
        reason,
        fix: 'Where it got thicker add a local patch of prepreg or fill and sand the stone; where thinner, scrape it flush.',
      },
    ];
  return [{ id, word: 'go', reason, fix: '' }];
}
