/** How far a part that its mold grips has to be lifted before it is free. */
import { Problem } from '../problem';
import type { DraftDistribution } from '../mesh/types';

/** Steeper than this a face is a wall that grips; flatter it lies across the pull (our own bound). */
const wallUnderDeg = 45;
/** Share of the walls that may be steeper than the draft that counts: crumbs of the mesh (our own bound). */
const steepestShare = 0.05;

/**
 * Draft of the steepest walls, degrees: of the show and core faces under 45°, the draft that all but the steepest
 * twentieth of their area has. null when there are no walls. Below 0: undercut.
 */
export function steepestDraftDeg({ draftDeg, cumulativeAreaMm2 }: DraftDistribution): number | null {
  const firstFlat = draftDeg.findIndex((draft) => draft >= wallUnderDeg);
  const walls = firstFlat < 0 ? draftDeg.length : firstFlat;
  if (walls === 0) return null;
  const enoughMm2 = steepestShare * cumulativeAreaMm2[walls - 1]!;
  return draftDeg[cumulativeAreaMm2.findIndex((areaMm2) => areaMm2 >= enoughMm2)]!;
}

/**
 * Lift along the pull after which two walls with draft, that squeeze a part by `mismatchMm` over its length, no longer
 * touch it, mm: each has half of the mismatch to give, and gives tan(draft) per mm of lift. mismatch / (2 tan draft).
 * @throws Problem `stone.noDraft` for a draft that is not above 0°
 */
export function liftToFreeMm(mismatchMm: number, draftDeg: number): number {
  if (!(draftDeg > 0 && draftDeg < 90))
    throw new Problem(
      'stone.noDraft',
      'Walls without draft do not come free by lifting: they rub all the way out. Give them draft along the pull.',
    );
  return Math.abs(mismatchMm) / (2 * Math.tan((draftDeg * Math.PI) / 180));
}
