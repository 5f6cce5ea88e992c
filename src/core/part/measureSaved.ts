/** From the saved mesh to everything that figures are made of; the worker and the headless command both call it. */
import { closingSamples } from '../closing/closingSamples';
import { drawnBasis, drawnFacets } from '../mesh/drawnFacets';
import { findHealth } from '../mesh/health';
import { facetBox } from '../mesh/integrals';
import { measurePart, type MeasureHooks } from '../mesh/measure';
import { partMesh } from '../mesh/partMesh';
import { refineForMeasuring, type MeasuringMesh } from '../mesh/refineForMeasuring';
import { summarize } from './summary';
import type { IndexedMesh, MeshHealth, Measurement, Vec3 } from '../mesh/types';
import type { LengthUnit } from '../units/length';
import type { PartSummary } from './partSummary';
import { guessUnit, type UnitGuess } from '../mesh/unitGuess';

/** How the saved mesh becomes the part in mm. */
export interface SavedMeshChoices {
  /** Confirmed unit, or null to take the declared or guessed one. */
  readonly unit: LengthUnit | null;
  readonly declaredUnit: LengthUnit | null;
  /** 0 = all bodies together, else 1-based body number. */
  readonly body: number;
  readonly scale: number;
  readonly pull: Vec3;
  readonly winding: 'repair' | 'asFile';
}

export interface SavedMeshHooks extends Pick<MeasureHooks, 'onProgress'> {
  /** The part as soon as it is known, long before its walls are. */
  readonly onPart?: (part: PartInMm) => void;
}

/** The part in mm, and how it came to its size. */
export interface PartInMm {
  readonly unitGuess: UnitGuess;
  /** Unit that the part was taken in. */
  readonly unit: LengthUnit;
  /** Size of the whole file's box, file units. */
  readonly fileBoxSize: Vec3;
  /** Of the whole saved mesh. */
  readonly health: MeshHealth;
  /** As drawn. */
  readonly partMesh: IndexedMesh;
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

/** The first half of `measureSaved`, for callers that need the part alone. `health` belongs to `mesh`. */
export function partFromSaved(
  mesh: IndexedMesh,
  health: MeshHealth,
  choices: Omit<SavedMeshChoices, 'pull'>,
): PartInMm {
  const { min, max } = facetBox(mesh);
  const fileBoxSize: Vec3 = [max[0] - min[0], max[1] - min[1], max[2] - min[2]];
  const unitGuess = guessUnit(fileBoxSize, choices.declaredUnit);
  const unit = choices.unit ?? choices.declaredUnit ?? unitGuess.unit;
  const { body, scale, winding } = choices;
  return {
    unitGuess,
    unit,
    fileBoxSize,
    health,
    partMesh: partMesh(mesh, health, { body, unit, scale, winding }),
  };
}
