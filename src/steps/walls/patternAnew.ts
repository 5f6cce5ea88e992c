/** What only another pattern can mend, in words: no entry of the maker's changes the model. */
import { formatNumber } from '../../core/units/formatNumber';
import { wallBand } from '../shared/band';
import type { StepContext } from '../shared/context';
import { wallInUse } from '../shared/wallInUse';

const ofTheWall: ReadonlySet<string> = new Set([
  'walls.band',
  'plies.fit',
  'plies.content',
  'closing.load',
  'closing.choked',
  'closing.closes',
  'closing.resin',
]);
const ofTheShape: Readonly<Record<string, string>> = {
  'walls.draft': 'with 3° of draft or more on every wall',
  'walls.locks': 'without the undercuts',
  'mold.locking': 'without the undercuts',
};

/** Whether the verdict is about the wall or the shape of what is printed. */
export const isOfThePattern = (verdictId: string): boolean =>
  ofTheWall.has(verdictId) || Object.hasOwn(ofTheShape, verdictId);

/** null where a pattern made anew is not what it takes, or the wall that it would need is not known. */
export function patternAnew(context: StepContext, verdictId: string): string | null {
  const shape = ofTheShape[verdictId];
  if (shape !== undefined) return `The pattern must be made anew ${shape}.`;
  const band = wallBand(context.inputs);
  const wall = wallInUse(context);
  if (!ofTheWall.has(verdictId) || band === null || !wall.known || band.goLowMm > band.goHighMm) return null;
  const wanted = `${formatNumber(band.wantedMm, 2)} mm`;
  const right = `${formatNumber(band.goLowMm, 2)} to ${formatNumber(band.goHighMm, 2)} mm`;
  return `The pattern must be made anew with a wall of ${wanted} everywhere (${right} is right).`;
}
