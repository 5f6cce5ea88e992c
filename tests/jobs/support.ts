import type { IndexedMesh } from '../../src/core/mesh/types';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { BenchSession } from '../../src/jobs/benchSession';
import type { BenchWorker } from '../../src/jobs/protocol';
import type { MeasureSlots } from '../../src/pipeline/partStages';
import { ignore, questionWith } from '../pipeline/support';

export { ignore };

export const stlBlob = (mesh: IndexedMesh): Blob => new Blob([new Uint8Array(writeStlBinary(mesh))]);

/** Name under which the questions of `questionWith` and `trayQuestion` expect the mesh. */
export const meshName = questionWith().mesh;

/** A bench on the own thread with the mesh imported. */
export async function sessionWith(mesh: IndexedMesh, measureSlots?: MeasureSlots): Promise<BenchSession> {
  const session = new BenchSession(measureSlots);
  await session.importFile(stlBlob(mesh), 'part.stl', meshName, ignore);
  return session;
}

/** Shape and measurement, which is all that others may have a hand in. */
export const measuredBy = async (bench: BenchWorker, question = questionWith()) => ({
  shape: await bench.tell('part', question, ignore),
  reply: await bench.tell('measurement', question, ignore),
});
