/** Parts that the reports are asked about: measured, cast and heated once, so that a case costs milliseconds. */
import { closedMoldVoxels } from '../../src/core/cure/closedMold';
import { predictCure, type CurePrediction } from '../../src/core/cure/predictCure';
import { canonicalMesh } from '../../src/core/mesh/canonicalMesh';
import { measureSaved } from '../support/measureSaved';
import { preparePack } from '../../src/core/mesh/pack';
import { findPatches } from '../../src/core/mesh/patches';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { castHalves } from '../../src/core/stone/pours/castHalves';
import { prepareSolids } from '../../src/core/stone/pours/solids';
import { patchBand } from '../../src/steps/shared/band';
import type { StepContext } from '../../src/steps/shared/context';
import { cureChoicesOf } from '../../src/steps/cure/cureChoicesOf';
import type { ProjectInputs } from '../../src/steps/inputs/project';
import { pourChoicesOf } from '../../src/steps/mold/pourChoicesOf';
import { inputsWith, trayPattern } from '../steps/contexts';
import { box, domeShell, tray } from '../support/meshes';

await preparePack();
await prepareSolids();

export interface FuzzPart {
  readonly mesh: IndexedMesh;
  readonly context: StepContext;
}

export const plainInputs = inputsWith({ part: { unit: 'mm', pull: [0, 0, 1] }, cure: { voxelMm: 6 } });

export function ovenRun(mesh: IndexedMesh, inputs: ProjectInputs): CurePrediction | null {
  const choices = cureChoicesOf(inputs);
  if (!choices.known) return null;
  return predictCure(choices.value, (mm) => closedMoldVoxels(mesh, choices.value.pour, mm), 'refined');
}

function partOf(drawn: IndexedMesh): FuzzPart {
  const { part } = plainInputs;
  const saved = canonicalMesh(drawn).mesh;
  const measured = measureSaved(saved, {
    unit: 'mm',
    declaredUnit: null,
    body: 0,
    scale: 1,
    pull: part.pull,
    winding: part.winding,
  });
  const { geometry, findings } = castHalves(measured.partMesh, pourChoicesOf(plainInputs));
  const { health, summary, unitGuess, fileBoxSize } = measured;
  return {
    mesh: measured.partMesh,
    context: {
      inputs: plainInputs,
      pattern: trayPattern,
      measured: {
        health,
        summary,
        unitGuess,
        fileBoxSize,
        patches: findPatches(measured.measuring.mesh, measured.measurement, patchBand(plainInputs)),
      },
      mold: geometry,
      pourFindings: findings,
      cure: ovenRun(measured.partMesh, plainInputs),
    },
  };
}

/** A tray open below, a dome, and a block drawn solid. */
const turned = ({ positions, facets }: IndexedMesh): IndexedMesh => ({
  positions: positions.map((coordinate, at) => (at % 3 === 0 ? coordinate : -coordinate)),
  facets,
});
export const fuzzParts: readonly FuzzPart[] = [
  turned(tray([60, 40, 15], 1, 3)),
  domeShell(12, 24, (tiltRad) => 0.8 + 1.2 * Math.cos(tiltRad)),
  box([0, 0, 0], [50, 30, 12]),
].map(partOf);
