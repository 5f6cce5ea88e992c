/** What a pattern is made with, from the inputs of the project. */
import type { PatternChoices } from '../../core/pattern/makePattern';
import { Problem } from '../../core/problem';
import { wallBand } from '../shared/band';
import type { ProjectInputs } from '../inputs/project';

/** No coarser, however thick the wall: walls on a coarser grid were out by more than 0.02 mm. */
const coarsestMm = 0.4;

/** As fine as keeps the wall within 0.02 mm: triangles as long as a step cut across inside corners. */
export const proposedGridMm = (wallMm: number, insideRadiusMm: number): number =>
  Math.floor(100 * Math.min(coarsestMm, wallMm / 2, insideRadiusMm / 2.75)) / 100;

/**
 * The wall is the one that the stack wants until another is entered.
 * @throws Problem `pattern.noWall`
 */
export function patternChoicesOf(inputs: ProjectInputs): PatternChoices {
  const { gridMm, wallMm: entered, nozzleMm: _nozzle, layerMm: _layer, ...given } = inputs.pattern;
  const wallMm = entered ?? wallBand(inputs)?.wantedMm;
  if (wallMm === undefined)
    throw new Problem(
      'pattern.noWall',
      'The wall is not known: the ply stack is not complete. Complete it at Ply schedule, or enter a wall at Pattern.',
    );
  return {
    ...given,
    pull: inputs.part.pull,
    wallMm,
    gridMm: gridMm ?? proposedGridMm(wallMm, given.insideRadiusMm),
  };
}
