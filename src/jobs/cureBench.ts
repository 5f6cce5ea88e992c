import { closedMoldVoxels } from '../core/cure/closedMold';
import type { MoldVoxels } from '../core/cure/moldVoxels';
import { predictCure, type CureChoices, type CurePrediction } from '../core/cure/predictCure';
import type { IndexedMesh } from '../core/mesh/types';
import type { OnProgress } from './protocol';

/** Predicts the oven run through the mold around the part on the bench; a program changed in the same mold fills it once. */
export class CureBench {
  private held: {
    readonly mesh: IndexedMesh;
    readonly pour: string;
    readonly filled: Map<number, MoldVoxels>;
  } | null = null;

  predict(
    mesh: IndexedMesh,
    choices: CureChoices,
    stage: CurePrediction['stage'],
    progress: OnProgress,
  ): CurePrediction {
    const pour = JSON.stringify(choices.pour);
    if (this.held?.mesh !== mesh || this.held.pour !== pour) this.held = { mesh, pour, filled: new Map() };
    const { filled } = this.held;
    const voxelsAt = (voxelMm: number): MoldVoxels => {
      const kept = filled.get(voxelMm);
      if (kept !== undefined) return kept;
      const made = closedMoldVoxels(mesh, choices.pour, voxelMm);
      filled.set(voxelMm, made);
      return made;
    };
    return predictCure(choices, voxelsAt, stage, (doing, share) => progress({ doing, share }));
  }

  forget(): void {
    this.held = null;
  }
}
