/** The stone mold round the part: what the stages `halves`, `filled mold`, `oven run` and `fine oven run` do. */
import { closedMoldVoxels } from '../core/cure/closedMold';
import type { DehydrationTreatment } from '../core/cure/dehydration';
import { keptFields, type HeatFields } from '../core/cure/heatFields';
import { placeInPullFrame } from '../core/cure/laminatePlace';
import type { MoldVoxels } from '../core/cure/moldVoxels';
import { predictCure, type CureChoices, type CurePrediction } from '../core/cure/predictCure';
import { facetBox } from '../core/mesh/integrals';
import type { IndexedMesh } from '../core/mesh/types';
import { castHalves, type CastMold } from '../core/stone/pours/castHalves';
import type { PourChoices } from '../core/stone/pours/pourChoices';
import { pullFrame } from '../core/stone/pours/pullFrame';
import { prepareSolids } from '../core/stone/pours/solids';
import { displayChunks } from './displayChunks';
import type { FilledMold, HeatedMold } from './results';
import type { HalfShape, MoldReply, OnProgress } from './told';

/** Room for the fields of each of the three runs, B: a mold of 90 x 60 x 40 mm takes 5 MB at 2 mm and 40 MB at 1 mm. */
const fieldBytesPerRun = 40_000_000;

/** @param solidsWasmUrl where a browser finds the solid booleans */
export async function castMold(
  mesh: IndexedMesh,
  choices: PourChoices,
  solidsWasmUrl: string | undefined,
  progress: OnProgress,
): Promise<CastMold> {
  progress('finding the parting', 0);
  await prepareSolids(solidsWasmUrl);
  return castHalves(mesh, choices, progress);
}

export const moldReply = ({ geometry, findings, halves }: CastMold): MoldReply => ({
  geometry,
  findings,
  halves: halves && { negative: halfShape(halves.negative), positive: halfShape(halves.positive) },
});

function halfShape(mesh: IndexedMesh): HalfShape {
  const { min, max } = facetBox(mesh);
  return { facetCount: mesh.facets.length / 3, boxMinMm: min, boxMaxMm: max, display: displayChunks(mesh) };
}

export function fillMold(mesh: IndexedMesh, choices: PourChoices): FilledMold {
  const filled = new Map<number, MoldVoxels>();
  return {
    voxelsAt(voxelMm) {
      const kept = filled.get(voxelMm);
      if (kept !== undefined) return kept;
      const made = closedMoldVoxels(mesh, choices, voxelMm);
      filled.set(voxelMm, made);
      return made;
    },
  };
}

export function heatMold(
  mesh: IndexedMesh,
  { voxelsAt }: FilledMold,
  choices: CureChoices,
  stage: CurePrediction['stage'],
  progress: OnProgress,
): HeatedMold {
  const { pull } = choices.pour;
  const thermocouple = choices.thermocouple && placeInPullFrame(mesh, pull, choices.thermocouple);
  const fields = new Map<DehydrationTreatment, HeatFields>();
  const prediction = predictCure(
    { ...choices, thermocouple },
    voxelsAt,
    stage,
    progress,
    (treatment, voxels, frames) => fields.set(treatment, keptFields(voxels, frames, fieldBytesPerRun)),
  );
  return { prediction, frame: pullFrame(mesh, pull), fields };
}
