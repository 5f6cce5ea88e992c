import type { MeasuredShape, PartShape } from '../../jobs/protocol';
import type { MeasuredPart, PatternRecord } from '../../steps/context';
import type { ProjectInputs } from '../../steps/inputs';
import { nothingCast, type CastState } from './castingHalves';
import type { JobState } from './deskJobs';

/** What the desk keeps measured. */
export interface DeskProject {
  readonly pattern: PatternRecord | null;
  readonly inputs: ProjectInputs;
  /** The saved mesh, null when it is gone. */
  readonly packedMesh: () => string | null;
  /** Keeps the saved mesh aside after it could not be unpacked. */
  readonly setMeshAside: () => void;
}

export interface DeskState extends CastState, JobState {
  /** The pattern just imported, until the project has it. */
  readonly incoming: PatternRecord | null;
  /** Drawn as soon as it is known, before the walls are. */
  readonly shape: PartShape | null;
  /** The last measurement; it may answer an older question, then `measured` is null. */
  readonly reply: MeasuredShape | null;
  /** What the step reports work from: only ever the answer to the present question. */
  readonly measured: MeasuredPart | null;
  /** A file is being read, measured and packed; until its pattern is known, what is shown is of the old one. */
  readonly importing: boolean;
  /** The stone has been repaired otherwise than the walls in `measured` say. */
  readonly repairsAwaited: boolean;
  /** Why the last import was refused; stays until the next one. */
  readonly importProblem: string | null;
}

/** Of a project that has just been opened. */
export const nothingKnown: DeskState = {
  incoming: null,
  shape: null,
  reply: null,
  measured: null,
  progress: null,
  stopped: false,
  problem: null,
  importing: false,
  repairsAwaited: false,
  importProblem: null,
  ...nothingCast,
};
