/** A public enclosure as the part that is measured: its file's way through reading, saving and repair. */
import { findHealth } from '../../src/core/mesh/health';
import { partFromSaved } from '../../src/core/mesh/partFromSaved';
import type { IndexedMesh } from '../../src/core/mesh/types';
import type { LengthUnit } from '../../src/core/units/length';
import { readPatternFile } from '../../src/pipeline/patternFile';
import { sharedMesh } from './sharedMeshes';

/** Of the switch box, which comes in two halves, the first one. */
export async function publicPart(name: string, unit: LengthUnit | null = null): Promise<IndexedMesh> {
  const { facts, canonical } = await readPatternFile(
    sharedMesh(`public/${name}`).slice(),
    name,
    () => undefined,
  );
  return partFromSaved(canonical.mesh, findHealth(canonical.mesh), {
    unit,
    declaredUnit: facts.declaredUnit,
    body: name === 'switch_box_halves.3mf' ? 1 : 0,
    scale: 1,
    winding: 'repair',
  }).partMesh;
}
