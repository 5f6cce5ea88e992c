import { facetBox } from './integrals';
import { partMesh } from './partMesh';
import type { IndexedMesh, MeshHealth, Vec3 } from './types';
import type { LengthUnit } from '../units/length';
import { guessUnit, type UnitGuess } from './unitGuess';

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

/**
 * @param mesh the saved mesh, file units
 * @param health of `mesh`
 * @throws Problem `part.noSuchBody`, `part.scale`
 */
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
