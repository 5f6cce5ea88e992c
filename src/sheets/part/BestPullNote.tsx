import type { BestPull } from '../../core/mesh/bestPull';
import type { PullChoice, Vec3 } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import { Button } from '../../ui/Button';

export interface BestPullNoteProps {
  readonly best: BestPull;
  readonly pull: Vec3;
  readonly disabled: boolean;
  readonly onPull: (pull: Vec3) => void;
}

const isAlong = (one: Vec3, other: Vec3) => one.every((value, axis) => Math.abs(value - other[axis]!) < 1e-9);

function gainOf({ trappedShare, medianDraftDeg }: PullChoice): string {
  return `${formatNumber(100 * trappedShare, 2)} % of the surface is undercut, and half of it has ${formatNumber(medianDraftDeg, 1)}° of draft or more`;
}

/** What the search found along the rim's normal, and what leaning off it would gain, for the maker to choose. */
export function BestPullNote({ best, pull, disabled, onPull }: BestPullNoteProps) {
  const { leaning } = best;
  if (leaning === null)
    return (
      <p className="quiet" role="status">
        Along the best pull {gainOf(best)}. No other direction gains anything.
      </p>
    );
  const leans = isAlong(pull, leaning.pull);
  return (
    <div role="status">
      <p className="quiet">
        Along the normal of the rim {gainOf(best)}. Leaning by {formatNumber(leaning.byDeg, 1)}°,{' '}
        {gainOf(leaning)}; the halves then part on a slope.
      </p>
      <Button disabled={disabled} onClick={() => onPull(leans ? best.pull : leaning.pull)}>
        {leans ? 'Back to the normal of the rim' : `Lean the pull by ${formatNumber(leaning.byDeg, 1)}°`}
      </Button>
    </div>
  );
}
