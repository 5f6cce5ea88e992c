import { compareCure, type CureComparison } from '../core/cure/compareCure';
import { closedMoldVoxels } from '../core/cure/closedMold';
import { endOf } from '../core/cure/curve';
import type { DehydrationTreatment } from '../core/cure/dehydration';
import { fitToLog, type LogFit, type LogToFit } from '../core/cure/fitToLog';
import { placeInPullFrame } from '../core/cure/laminatePlace';
import {
  cutFields,
  fieldBounds,
  heatAtPoint,
  keptFields,
  type HeatAtPoint,
  type HeatFields,
} from '../core/cure/heatFields';
import type { MoldVoxels } from '../core/cure/moldVoxels';
import {
  coarseVoxelMm,
  heatCaseOf,
  predictCure,
  type CureChoices,
  type CurePrediction,
} from '../core/cure/predictCure';
import type { IndexedMesh, Vec3 } from '../core/mesh/types';
import { intoFrame, pullFrame, type PullFrame } from '../core/stone/pours/pullFrame';
import type { HeatCutQuestion, HeatCutReply, OnProgress } from './protocol';

/** Room for the fields of each of the three runs, B: a mold of 90 x 60 x 40 mm takes 5 MB at 2 mm and 40 MB at 1 mm. */
const fieldBytesPerRun = 40_000_000;

/** Predicts the oven run through the mold around the part on the bench; a program changed in the same mold fills it once. */
export class CureBench {
  private heated: {
    readonly frame: PullFrame;
    readonly fields: ReadonlyMap<DehydrationTreatment, HeatFields>;
  } | null = null;
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
    const voxelsAt = (voxelMm: number) => this.filled(mesh, choices, voxelMm);
    const thermocouple =
      choices.thermocouple && placeInPullFrame(mesh, choices.pour.pull, choices.thermocouple);
    const fields = new Map<DehydrationTreatment, HeatFields>();
    const prediction = predictCure(
      { ...choices, thermocouple },
      voxelsAt,
      stage,
      (doing, share) => progress({ doing, share }),
      (treatment, voxels, frames) => fields.set(treatment, keptFields(voxels, frames, fieldBytesPerRun)),
    );
    this.heated = { frame: pullFrame(mesh, choices.pour.pull), fields };
    return prediction;
  }

  /** The mold of the last prediction, cut; null when there is none. */
  cut({ treatment, axis, atMm, timeS }: HeatCutQuestion): HeatCutReply | null {
    const fields = this.heated?.fields.get(treatment);
    if (this.heated === null || fields === undefined) return null;
    const { lowMm, highMm } = fieldBounds(fields);
    return {
      cut: cutFields(fields, axis, atMm ?? (lowMm[axis] + highMm[axis]) / 2, timeS),
      lowMm,
      highMm,
      frame: this.heated.frame,
    };
  }

  /** @param pointMm in the part's own axes */
  at(treatment: DehydrationTreatment, pointMm: Vec3): HeatAtPoint | null {
    const fields = this.heated?.fields.get(treatment);
    if (this.heated === null || fields === undefined) return null;
    const [x, y, z] = intoFrame(this.heated.frame, Float64Array.from(pointMm));
    return heatAtPoint(fields, [x!, y!, z!]);
  }

  /** In coarse voxels: the log is not read to a tenth of a kelvin either. A given point is one of the part's own axes. */
  fit(mesh: IndexedMesh, choices: CureChoices, log: LogToFit, progress: OnProgress): LogFit {
    const place = placeInPullFrame(mesh, choices.pour.pull, log.place);
    const voxels = this.filled(mesh, choices, Math.max(coarseVoxelMm, choices.voxelMm));
    const one = heatCaseOf(choices, voxels, 'vapor-held', Math.max(1, endOf(log.laminate)));
    progress({ doing: 'fitting to the log', share: 0 });
    return fitToLog(one, { ...log, place }, (share) => progress({ doing: 'fitting to the log', share }));
  }

  compare(mesh: IndexedMesh, choices: CureChoices, mostC: number, progress: OnProgress): CureComparison {
    const voxelsOf = (changed: CureChoices, voxelMm: number) => closedMoldVoxels(mesh, changed.pour, voxelMm);
    return compareCure(choices, voxelsOf, mostC, (doing, share) => progress({ doing, share }));
  }

  private filled(mesh: IndexedMesh, choices: CureChoices, voxelMm: number): MoldVoxels {
    const pour = JSON.stringify(choices.pour);
    if (this.held?.mesh !== mesh || this.held.pour !== pour) this.held = { mesh, pour, filled: new Map() };
    const kept = this.held.filled.get(voxelMm);
    if (kept !== undefined) return kept;
    const made = closedMoldVoxels(mesh, choices.pour, voxelMm);
    this.held.filled.set(voxelMm, made);
    return made;
  }

  forget(): void {
    this.held = null;
    this.heated = null;
  }
}
