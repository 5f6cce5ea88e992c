import { Problem } from '../problem';
import { mmPerUnit } from '../units/length';
import type { IndexedMesh, MeshHealth } from './types';
import type { LengthUnit } from '../units/length';
import { compactVertices } from './compactVertices';
import { turnedRight } from './winding';

export interface PartChoices {
  /** 0 = all bodies together, else 1-based body number. */
  readonly body: number;
  readonly unit: LengthUnit;
  /** Dimensionless factor on all lengths; 1 keeps the size. */
  readonly scale: number;
  /** `repair` turns flipped facets around first; `asFile` takes the winding of the file. */
  readonly winding: 'repair' | 'asFile';
}

/**
 * The part in mm: one body of the welded mesh, or all, scaled. Facets keep their order. `health` must belong to
 * `mesh`. Throws `part.noSuchBody` and `part.scale`.
 */
export function partMesh(mesh: IndexedMesh, health: MeshHealth, choices: PartChoices): IndexedMesh {
  const { body, unit, scale, winding } = choices;
  if (!Number.isInteger(body) || body < 0 || body > health.bodies.length) {
    throw new Problem(
      'part.noSuchBody',
      `Body ${body} does not exist: the file holds ${health.bodies.length}. Choose another body.`,
    );
  }
  if (!(scale > 0 && Number.isFinite(scale))) {
    throw new Problem('part.scale', 'The scale must be a number above zero, for example 1 or 1.005.');
  }
  const upright = winding === 'repair' ? turnedRight(mesh, health) : mesh;
  const chosen =
    body === 0
      ? upright
      : compactVertices({
          positions: upright.positions,
          facets: upright.facets.filter((_, corner) => health.bodyOfFacet[(corner / 3) | 0] === body - 1),
        });
  const factor = mmPerUnit[unit] * scale;
  if (factor === 1) return chosen; // nothing is ever written into a mesh, so it may be shared
  return { positions: chosen.positions.map((coordinate) => coordinate * factor), facets: chosen.facets };
}
