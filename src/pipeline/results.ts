/** What each stage holds for the stages and questions after it; `told.ts` is what of it leaves the thread. */
import type { DehydrationTreatment } from '../core/cure/dehydration';
import type { HeatFields } from '../core/cure/heatFields';
import type { MoldVoxels } from '../core/cure/moldVoxels';
import type { CurePrediction } from '../core/cure/predictCure';
import type { DrawnBasis } from '../core/mesh/drawnFacets';
import type { WholePart } from '../core/mesh/enclosedVolume';
import type { FacetSurroundings } from '../core/mesh/measure';
import type { PartInMm } from '../core/mesh/partFromSaved';
import type { MeasuringMesh } from '../core/mesh/refineForMeasuring';
import type { Measurement, Patch } from '../core/mesh/types';
import type { PartSummary } from '../core/part/partSummary';
import type { FacetSamples } from '../core/closing/closingTypes';
import type { CastMold } from '../core/stone/pours/castHalves';
import type { PullFrame } from '../core/stone/pours/pullFrame';
import type { RepairedWalls } from './told';
import type { WallsBench } from './wallsBench';

/** The part in mm, split for measuring, with the index that rays are sent through. */
export interface IndexedPart extends PartInMm {
  readonly measuring: MeasuringMesh;
  /** Null when nothing was split. */
  readonly basis: DrawnBasis | null;
  /** Of `measuring.mesh`. */
  readonly bench: WallsBench;
}

/** What of the part is known whatever the pull; the walls themselves lie on its bench. */
export interface PartWalls {
  readonly whole: WholePart;
  readonly surroundings: FacetSurroundings;
}

export interface MeasuredFacets {
  readonly measurement: Measurement;
  /** What closing knows of each facet. */
  readonly faces: FacetSamples;
  readonly summary: PartSummary;
}

/** The closed mold around the part, filled once for each size of voxel. */
export interface FilledMold {
  readonly voxelsAt: (voxelMm: number) => MoldVoxels;
}

export interface HeatedMold {
  readonly prediction: CurePrediction;
  readonly frame: PullFrame;
  readonly fields: ReadonlyMap<DehydrationTreatment, HeatFields>;
}

export interface Results {
  readonly part: IndexedPart;
  readonly walls: PartWalls;
  readonly measurement: MeasuredFacets;
  readonly places: readonly Patch[];
  readonly 'repaired walls': RepairedWalls | null;
  readonly halves: CastMold;
  readonly 'filled mold': FilledMold;
  readonly 'oven run': HeatedMold;
  readonly 'fine oven run': HeatedMold;
}
