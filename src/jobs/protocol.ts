/**
 * What the page may ask of the bench worker: plain data and flat typed arrays only; arrays in replies are transferred. The
 * stages and the questions about them are named in the pipeline's tables, so a new one needs nothing here.
 */
import type { AskName, Asks } from '../pipeline/asks';
import type { PackedMesh } from '../pipeline/patternFile';
import type { Question } from '../pipeline/question';
import type { FileFacts, OnProgress, StageName, Told } from '../pipeline/told';

export interface Progress {
  /** What is being done, in the maker's words, e.g. "measuring walls". */
  readonly doing: string;
  /** 0 to 1. */
  readonly share: number;
}

/** A thrown `Problem` or an unexpected error, as plain data. */
export interface JobFailure {
  readonly code: string;
  readonly message: string;
}

/** Offered by the worker; one mesh is open at a time, and an import that fails leaves the one that was open before. */
export interface BenchWorker {
  /** Opens the mesh of the file under a name for the questions about it. */
  importFile(file: Blob, fileName: string, meshName: string, progress: OnProgress): Promise<FileFacts>;
  /** The text that is saved; asked for last, so that encoding never delays the maps. */
  packOpenMesh(): Promise<PackedMesh>;
  openMesh(packed: string, meshName: string): Promise<void>;
  /** What a stage tells; what it needs is worked out first. */
  tell<Name extends StageName>(name: Name, question: Question, progress: OnProgress): Promise<Told[Name]>;
  /** @param question null for what is asked of no open mesh */
  ask<Name extends AskName>(
    name: Name,
    question: Question | null,
    given: Asks[Name]['given'],
    progress: OnProgress,
  ): Promise<Asks[Name]['reply']>;
}

export interface JobOptions {
  /** Aborting drops the job, whether it waits or runs. */
  readonly signal?: AbortSignal;
  /** Called at most every 100 ms, and not after the job has settled. */
  readonly onProgress?: (progress: Progress) => void;
}

/**
 * What the page uses. One job runs at a time, the others wait in order. Every rejection is a `Problem`; codes:
 * `job.canceled` (signal or `dispose`), `job.outdated`, `job.memory`, `job.crashed`, or whatever core threw.
 * `wasDropped(error)` (client.ts) tells the first two apart from real failures.
 */
export interface BenchClient {
  importFile(file: Blob, fileName: string, meshName: string, options?: JobOptions): Promise<FileFacts>;
  packOpenMesh(options?: JobOptions): Promise<PackedMesh>;
  openMesh(packed: string, meshName: string, options?: JobOptions): Promise<void>;
  tell<Name extends StageName>(name: Name, question: Question, options?: JobOptions): Promise<Told[Name]>;
  /** A newer question of the same name makes an older one outdated. */
  ask<Name extends AskName>(
    name: Name,
    question: Question | null,
    given: Asks[Name]['given'],
    options?: JobOptions,
  ): Promise<Asks[Name]['reply']>;
  /** Nothing has been heard of the running job for long: it may be at a long step, or its worker may have ended. */
  readonly isSilent: () => boolean;
  /** Called when `isSilent` has changed; returns how to stop listening. */
  readonly onSilence: (listener: () => void) => () => void;
  /** Ends the worker and begins the running job again in a new one. */
  startAnew(): void;
  /** Ends the worker; waiting and running jobs are canceled. The client is of no use afterwards. */
  dispose(): void;
}
