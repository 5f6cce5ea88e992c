import type { IndexedMesh } from '../../mesh/types';
import { partPattern } from './parting';
import { checkPourChoices, type PourChoices } from './pourChoices';
import { intoFrame, pullFrame, turnedBack } from './pullFrame';
import { rimOutline } from './rimOutline';

/** Columns of the grid: 513 along each side, as for the parting of solids. */
const rimLevels = 9;

/**
 * The outer outline of a part along its pull, without casting its halves: what `castHalves` tells as `rimOutlineMm`.
 * null when there is none.
 * @param mesh the part in mm
 * @throws Problem as `castHalves`
 */
export function rimOfPart(
  mesh: IndexedMesh,
  choices: PourChoices,
): readonly (readonly [number, number])[] | null {
  checkPourChoices(choices);
  const frame = pullFrame(mesh, choices.pull);
  const pattern: IndexedMesh = { positions: intoFrame(frame, mesh.positions), facets: mesh.facets };
  const outline = rimOutline(partPattern(pattern, choices, rimLevels));
  return outline && turnedBack(frame, outline);
}
