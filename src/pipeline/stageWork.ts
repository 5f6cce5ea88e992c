/** What each stage of the table does, and what of its result leaves the thread. */
import type { CurePrediction } from '../core/cure/predictCure';
import { findPatches } from '../core/mesh/patches';
import { patchBand } from '../steps/shared/band';
import { pourChoicesOf } from '../steps/mold/pourChoicesOf';
import { castMold, fillMold, heatMold, moldReply } from './moldStages';
import {
  measureAlong,
  measureReply,
  measureWalls,
  shapeOfPart,
  takePart,
  wallsAsRepaired,
  type MeasureSlots,
  type OpenMesh,
} from './partStages';
import { meshChoices, type Question } from './question';
import type { Results } from './results';
import { heatChoices } from './stages';
import type { OnProgress, StageName, Told } from './told';

/** What a stage may use beside the results that it needs. */
export interface StageHost {
  readonly open: OpenMesh;
  readonly measureSlots: MeasureSlots;
  readonly solidsWasmUrl: string | undefined;
  readonly progress: OnProgress;
}

interface StageWork<Name extends StageName> {
  /** @param got the results that it needs are there */
  readonly run: (question: Question, got: Results, host: StageHost) => Results[Name] | Promise<Results[Name]>;
  readonly tell: (result: Results[Name], question: Question, got: Results) => Told[Name];
}

const ovenRun = (fineness: CurePrediction['stage']): StageWork<'oven run'> & StageWork<'fine oven run'> => ({
  run(question, got, { progress }) {
    const choices = heatChoices(question, got.halves.geometry);
    if (choices === null) throw new Error('the mold was to be heated without choices');
    return heatMold(got.part.partMesh, got['filled mold'], choices, fineness, progress);
  },
  tell: ({ prediction }) => structuredClone(prediction),
});

export const stageWork: { readonly [Name in StageName]: StageWork<Name> } = {
  part: {
    run: (question, _, { open, progress }) => takePart(open, meshChoices(question), progress),
    tell: shapeOfPart,
  },
  walls: {
    run: (_, { part }, { measureSlots, progress }) => measureWalls(part, measureSlots, progress),
    tell: () => null,
  },
  measurement: {
    run: ({ inputs }, { part, walls }, { measureSlots, progress }) =>
      measureAlong(inputs.part.pull, part, walls, measureSlots, progress),
    tell: (result, { inputs }, { part }) => measureReply(part, result, inputs.part.body),
  },
  places: {
    run: ({ inputs }, { part, measurement }) =>
      findPatches(part.measuring.mesh, measurement.measurement, patchBand(inputs)),
    tell: (patches) => structuredClone(patches),
  },
  'repaired walls': {
    run: ({ inputs }, { measurement }) => wallsAsRepaired(measurement, inputs.mold.repairs),
    tell: (walls) => structuredClone(walls),
  },
  halves: {
    run: ({ inputs }, { part }, { solidsWasmUrl, progress }) =>
      castMold(part.partMesh, pourChoicesOf(inputs), solidsWasmUrl, progress),
    tell: moldReply,
  },
  'filled mold': {
    run: ({ inputs }, { part }) => fillMold(part.partMesh, pourChoicesOf(inputs)),
    tell: () => null,
  },
  'oven run': ovenRun('coarse'),
  'fine oven run': ovenRun('refined'),
};
