import type { MeasuredShape } from '../../jobs/protocol';
import type { PatternRecord, StepContext } from '../../steps/context';
import type { ProjectInputs } from '../../steps/inputs';
import { measuredPart } from './measuredPart';

/** What the reports will need of a measurement, in pieces. */
export type WorkAhead = (context: StepContext) => Iterator<unknown>;

/** Lets everything that waits for the page's thread have its turn. */
const nextTask = () => new Promise<void>((resolve) => setTimeout(resolve));

/**
 * Does the pieces, each in a task of its own, before anyone is told of the measurement: at once, with all that is drawn then,
 * the page would stand still.
 */
export async function doAhead(
  workAhead: WorkAhead,
  pattern: PatternRecord,
  inputs: ProjectInputs,
  reply: MeasuredShape,
): Promise<void> {
  const pieces = workAhead({ inputs, pattern, measured: measuredPart(reply, null), mold: null });
  do await nextTask();
  while (pieces.next().done !== true);
  await nextTask();
}

/** Stands for the pattern of a part that was made up for rehearsal. */
export const madeUpPattern: PatternRecord = {
  fileName: '',
  sha256: '',
  format: 'stl-binary',
  declaredUnit: null,
  triangles: 0,
  meshKey: '',
  packErrorFileUnits: 0,
  degenerateFacets: 0,
  notes: [],
};
