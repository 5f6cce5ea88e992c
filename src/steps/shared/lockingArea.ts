/** When trapped area is an undercut and when it is a crumb of the mesh. */
import type { PartSummary } from '../../core/part/partSummary';

/** A hook smaller than this breaks off the stone rather than hold it, and meshes hold such crumbs (common practice). */
export const speckMm2 = 1;

export function trappedIsMoreThanASpeck(summary: PartSummary): boolean {
  return summary.kindAreaMm2.trapped > speckMm2;
}
