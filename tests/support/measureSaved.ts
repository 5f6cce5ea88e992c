/** From the saved mesh to what is measured on it in one straight line, without stages: what the pipeline is checked against. */
import { closingSamples } from '../../src/core/closing/closingSamples';
import { drawnBasis, drawnFacets } from '../../src/core/mesh/drawnFacets';
import { findHealth } from '../../src/core/mesh/health';
import { measurePart, type MeasureHooks } from '../../src/core/mesh/measure';
import { partFromSaved, type PartInMm, type SavedMeshChoices } from '../../src/core/mesh/partFromSaved';
import { refineForMeasuring, type MeasuringMesh } from '../../src/core/mesh/refineForMeasuring';
import { summarize } from '../../src/core/part/summary';
import type { IndexedMesh, Measurement } from '../../src/core/mesh/types';
import type { PartSummary } from '../../src/core/part/partSummary';

export interface SavedMeshHooks extends Pick<MeasureHooks, 'onProgress'> {
  /** The part as soon as it is known, long before its walls are. */
  readonly onPart?: (part: PartInMm) => void;
}

export interface MeasuredMesh extends PartInMm {
  /** The part with its long edges split: the facets that `measurement` speaks of. */
  readonly measuring: MeasuringMesh;
  readonly measurement: Measurement;
  readonly summary: PartSummary;
}

/**
 * @param mesh the saved mesh, file units
 * @throws Problem `part.noSuchBody`, `part.scale`, `pull.zero`
 */
export function measureSaved(
  mesh: IndexedMesh,
  choices: SavedMeshChoices,
  hooks: SavedMeshHooks = {},
): MeasuredMesh {
  hooks.onProgress?.('checking the model', 0);
  const part = partFromSaved(mesh, findHealth(mesh), choices);
  hooks.onPart?.(part);
  const measuring = refineForMeasuring(part.partMesh);
  const { mesh: measured, split } = measuring;
  const basis = split && drawnBasis(part.partMesh, measured, split);
  const measurement = measurePart(measured, choices.pull, {
    ...hooks,
    ...(basis && { corners: basis.cornersOfChildren, convexRadiusMm: basis.convexOfChildren }),
  });
  const drawn = basis ? drawnFacets(basis, measurement) : measurement;
  return {
    ...part,
    measuring,
    measurement,
    summary: summarize(part.partMesh, part.health, measurement, drawn, closingSamples(measured, measurement)),
  };
}
