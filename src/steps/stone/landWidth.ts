/** Stone on which the halves meet beside the part: the narrowest of the four sides; the side cover is never less than the land. */
import type { ProjectInputs } from '../inputs/project';

export function landWidthMm({ mold }: Pick<ProjectInputs, 'mold'>): number {
  const { coverXLowMm, coverXHighMm, coverYLowMm, coverYHighMm } = mold;
  return Math.max(mold.landWidthMm, Math.min(coverXLowMm, coverXHighMm, coverYLowMm, coverYHighMm));
}
