import { writeStlBinary } from '../../src/core/mesh/writeStl';
import type { IndexedMesh } from '../../src/core/mesh/types';
import type { MeasureChoices } from '../../src/jobs/protocol';
import type { PartShape } from '../../src/pipeline/told';

export const stlBlob = (mesh: IndexedMesh): Blob => new Blob([new Uint8Array(writeStlBinary(mesh))]);

export const alongZ: MeasureChoices = {
  unit: 'mm',
  declaredUnit: null,
  body: 0,
  scale: 1,
  pull: [0, 0, 1],
  winding: 'repair',
};

export const ignore = () => undefined;

/** Keeps the last shape told. */
export function shapeCatcher() {
  const shapes: PartShape[] = [];
  return { shapes, onShape: (shape: PartShape) => void shapes.push(shape) };
}
