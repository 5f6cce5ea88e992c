/** From the saved mesh to the measured part: what the stages `part`, `walls`, `measurement`, `places`, `repaired walls` do. */
import { closingHistogram } from '../core/closing/closingHistogram';
import { closingSamples } from '../core/closing/closingSamples';
import { repairedSamples } from '../core/closing/repairedSamples';
import { buildAdjacency } from '../core/mesh/adjacency';
import { drawnBasis, drawnFacets } from '../core/mesh/drawnFacets';
import { wholePart } from '../core/mesh/enclosedVolume';
import { findHealth } from '../core/mesh/health';
import { facetBox } from '../core/mesh/integrals';
import { facetSurroundings, measurePart, unitVector } from '../core/mesh/measure';
import { partFromSaved, type SavedMeshChoices } from '../core/mesh/partFromSaved';
import { refineForMeasuring } from '../core/mesh/refineForMeasuring';
import { summarize } from '../core/part/summary';
import { buildSurfaceIndex } from '../core/mesh/surfaceIndex';
import type { IndexedMesh, MeshHealth, Vec3 } from '../core/mesh/types';
import type { Repair } from '../core/stone/repairs';
import { displayChunks } from './displayChunks';
import { findingFacetsOfPart } from './findingFacets';
import type { IndexedPart, MeasuredFacets, PartWalls } from './results';
import type { MeasureReply, OnProgress, PartShape, RepairedWalls } from './told';
import { WallsBench, type SlotTask } from './wallsBench';

/** The saved mesh and what was found out about it; kept while it is open. */
export interface OpenMesh {
  readonly mesh: IndexedMesh;
  health: MeshHealth | null;
}

/** Measures all slots of the part, alone or with others. */
export type MeasureSlots = (
  part: IndexedPart,
  task: SlotTask,
  onShare: (share: number) => void,
  /** Work of this thread's own, done while others measure. */
  meanwhile: () => void,
) => Promise<void>;

const slotsAtATime = 16_384;

export const measureSlotsHere: MeasureSlots = async ({ bench }, task, onShare, meanwhile) => {
  meanwhile();
  const { facetCount } = bench.index;
  for (let from = 0; from < facetCount; from += slotsAtATime) {
    bench.measure(from, Math.min(facetCount, from + slotsAtATime), task);
    onShare(Math.min(1, (from + slotsAtATime) / facetCount));
  }
};

export function takePart(open: OpenMesh, choices: SavedMeshChoices, progress: OnProgress): IndexedPart {
  progress('checking the model', 0);
  open.health ??= findHealth(open.mesh);
  const part = partFromSaved(open.mesh, open.health, choices);
  const measuring = refineForMeasuring(part.partMesh);
  const { mesh, split } = measuring;
  return {
    ...part,
    measuring,
    basis: split && drawnBasis(part.partMesh, mesh, split),
    bench: new WallsBench(buildSurfaceIndex(mesh)),
  };
}

export function shapeOfPart({ unitGuess, unit, fileBoxSize, partMesh, measuring }: IndexedPart): PartShape {
  const { min, max } = facetBox(partMesh);
  return {
    unitGuess,
    unit,
    fileBoxSize,
    facetCount: measuring.mesh.facets.length / 3,
    boxMinMm: min,
    boxMaxMm: max,
    display: displayChunks(measuring.mesh),
  };
}

export async function measureWalls(
  part: IndexedPart,
  measureSlots: MeasureSlots,
  progress: OnProgress,
): Promise<PartWalls> {
  const { measuring, basis, partMesh, health } = part;
  progress('measuring walls', 0);
  let found: PartWalls | null = null;
  await measureSlots(
    part,
    { measure: 'walls' },
    (share) => progress('measuring walls', share),
    () => {
      const surroundings = facetSurroundings(
        measuring.mesh,
        buildAdjacency(measuring.mesh),
        basis === null ? {} : { corners: basis.cornersOfChildren, convexRadiusMm: basis.convexOfChildren },
      );
      found = { surroundings, whole: wholePart(partMesh, health.watertight || surroundings.closed) };
    },
  );
  if (found === null) throw new Error('the walls were measured without a look at what surrounds them');
  return found;
}

/** @throws Problem `pull.zero` */
export async function measureAlong(
  direction: Vec3,
  part: IndexedPart,
  { surroundings, whole }: PartWalls,
  measureSlots: MeasureSlots,
  progress: OnProgress,
): Promise<MeasuredFacets> {
  const { measuring, basis, bench, partMesh, health } = part;
  const pull = unitVector(direction);
  const doing = 'looking for undercuts';
  progress(doing, 0);
  await measureSlots(
    part,
    { measure: 'reach', pull },
    (share) => progress(doing, 0.6 * share),
    () => undefined,
  );
  const measurement = measurePart(measuring.mesh, pull, {
    surroundings,
    walls: bench,
    // The bench writes its reach anew for the next pull; this measurement keeps its own.
    reach: bench.reach.slice(),
    onProgress: (step, share) => progress(step, 0.6 + 0.3 * share),
  });
  progress('summing up', 0.9);
  const drawn = basis ? drawnFacets(basis, measurement) : measurement;
  const faces = closingSamples(measuring.mesh, measurement);
  const summary = summarize(partMesh, health, measurement, drawn, faces, whole);
  progress('summing up', 1);
  return { measurement, faces, summary };
}

/** Copies, since what is sent from a thread is gone there, and the questions that follow still need it. */
export function measureReply(
  { health, measuring }: IndexedPart,
  { measurement, faces, summary }: MeasuredFacets,
  body: number,
): MeasureReply {
  const { areaMm2, wallMm, pullCosine, armUMm, armVMm } = faces;
  return structuredClone({
    health,
    findingFacets: findingFacetsOfPart(health, body, measuring.split),
    summary,
    pull: measurement.pull,
    maps: {
      rayWallMm: measurement.rayWallMm,
      ballWallMm: measurement.ballWallMm,
      draftDeg: measurement.draftDeg,
      cornerRadiusMm: measurement.cornerRadiusMm,
      kind: measurement.kind,
      closing: { areaMm2, wallMm, pullCosine, armUMm, armVMm },
    },
  });
}

/** Closing sees the mold as it is: with what was filled and scraped on its stone. */
export function wallsAsRepaired(
  { faces, measurement }: MeasuredFacets,
  repairs: readonly Repair[],
): RepairedWalls | null {
  if (repairs.length === 0) return null;
  const samples = repairedSamples(faces, measurement, repairs);
  return { closing: closingHistogram(samples, measurement.centerMm), wallMm: samples.wallMm };
}
