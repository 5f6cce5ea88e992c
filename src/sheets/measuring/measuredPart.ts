import type { Patch } from '../../core/mesh/types';
import type { MeasuredShape } from '../../jobs/protocol';
import type { MeasuredPart } from '../../steps/context';

/** What the step reports work from. */
export const measuredPart = (reply: MeasuredShape, patches: readonly Patch[] | null): MeasuredPart => ({
  health: reply.health,
  summary: reply.summary,
  patches,
  unitGuess: reply.shape.unitGuess,
  fileBoxSize: reply.shape.fileBoxSize,
});
