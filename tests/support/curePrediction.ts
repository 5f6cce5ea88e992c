/** A quick prediction through a simplified mold: a flat laminate in a block, in coarse cells. */
import { boxMoldVoxels } from '../../src/core/cure/moldVoxels';
import { predictCure, type CurePrediction } from '../../src/core/cure/predictCure';
import { cureChoicesOf } from '../../src/steps/cure/cureChoicesOf';
import type { ProjectInputs } from '../../src/steps/inputs/project';

const blockMm = [90, 60, 40] as const;
const laminateMm = [70, 40, 1] as const;

export function blockPrediction(
  inputs: ProjectInputs,
  stage: CurePrediction['stage'] = 'refined',
): CurePrediction {
  const choices = cureChoicesOf(inputs);
  if (!choices.known) throw new Error(choices.why);
  return predictCure(
    { ...choices.value, voxelMm: 5 },
    (voxelMm) => boxMoldVoxels({ blockMm, laminateMm, voxelMm }),
    stage,
  );
}

/** The prepreg of the hand case: 16 h at 70 °C or 25 min at 120 °C. */
export const lowTemperatureCures = [
  { hours: 16, temperatureC: 70 },
  { hours: 25 / 60, temperatureC: 120 },
];
