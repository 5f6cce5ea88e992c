import type { LaminatePlace } from '../../core/cure/laminatePlace';
import type { CurePrediction } from '../../core/cure/predictCure';
import type { Progress } from '../../jobs/protocol';
import type { Answers } from '../../pipeline/evaluate';
import type { Question } from '../../pipeline/question';
import type { MeasuredShape, PartShape, StageName } from '../../pipeline/told';
import type { PatternRecord } from '../../steps/shared/context';
import type { ProjectInputs } from '../../steps/inputs/project';

/** What the desk keeps worked out. */
export interface DeskProject {
  readonly pattern: PatternRecord | null;
  readonly inputs: ProjectInputs;
  /** Where a thermocouple sits whose curve is wanted too; null: nowhere. */
  readonly thermocouple: LaminatePlace | null;
  /** The saved mesh, null when it is gone. */
  readonly packedMesh: () => string | null;
  /** Keeps the saved mesh aside after it could not be unpacked. */
  readonly setMeshAside: () => void;
}

export interface DeskState {
  /** What is asked now; null without a pattern. */
  readonly question: Question | null;
  /** Only ever answers to that question. */
  readonly answers: Answers;
  /** The pattern just imported, until the project has it. */
  readonly incoming: PatternRecord | null;
  /** Drawn as soon as it is known, before the walls are. */
  readonly shape: PartShape | null;
  /** The last measurement, its closing walls as the stone was repaired; it may answer an older question. */
  readonly reply: MeasuredShape | null;
  /** The last oven run; it may answer an older question. */
  readonly lastRun: CurePrediction | null;
  /** A file is being read, measured and packed; until its pattern is known, what is shown is of the old one. */
  readonly importing: boolean;
  /** Why the last import was refused; stays until the next one. */
  readonly importProblem: string | null;
  /** What is being done; `stage` is null for what the maker asked for. */
  readonly progress: (Progress & { readonly stage: StageName | null }) | null;
  /** Of this stage nothing comes by itself: it was canceled or has failed. */
  readonly stopped: StageName | null;
  /** A sentence on what went wrong and what to do. */
  readonly problem: string | null;
}

/** Of a project that has just been opened. */
export const nothingKnown: DeskState = {
  question: null,
  answers: {},
  incoming: null,
  shape: null,
  reply: null,
  lastRun: null,
  importing: false,
  importProblem: null,
  progress: null,
  stopped: null,
  problem: null,
};
