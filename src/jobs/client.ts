/**
 * The page's side of the bench worker: one job at a time, cancel by terminating, replies to outdated questions dropped. A new
 * worker is given the open mesh again; the rest comes back by being asked.
 */
import { Problem } from '../core/problem';
import { longAsks } from '../pipeline/asks';
import { stages } from '../pipeline/stages';
import { failureOf } from './failureOf';
import type { BenchClient, BenchWorker, JobOptions } from './protocol';
import { benchSilenceMs, createSilenceWatch } from './silenceWatch';
import { startBenchWorker, type StartedBench } from './startBench';

interface Job {
  /** A newer job of the same name leaves nobody interested in this one's answer; null: there is no such name. */
  readonly replacedBy: string | null;
  /** Gives the worker another mesh: nobody waits for what was asked of the old one. */
  readonly bringsMesh: boolean;
  /** Worth a new worker when nobody waits for it any longer; the others end before one has started. */
  readonly isLong: boolean;
  /** Long, but not worth a new worker when a newer question is all that has happened. */
  readonly endsSoon: boolean;
  readonly run: (bench: BenchWorker) => Promise<void>;
  readonly reject: (problem: Problem) => void;
  settled: boolean;
}
type JobNature = Omit<Job, 'run' | 'reject' | 'settled'>;

const shortJob: JobNature = { replacedBy: null, bringsMesh: false, isLong: false, endsSoon: false };

/** Reason of an abort that says: a newer question has taken the place of this one. */
export const outdatedReason = 'outdated';

const canceled = () => new Problem('job.canceled', 'Canceled. Nothing was changed.');
const outdated = () => new Problem('job.outdated', 'A newer question has taken the place of this one.');

/** True for a rejection that nobody needs to be told about: canceled by the maker, or outdated. */
export function wasDropped(error: unknown): boolean {
  return error instanceof Problem && (error.code === 'job.canceled' || error.code === 'job.outdated');
}

/** Gives a new worker the open mesh. */
type OpenMesh = (bench: BenchWorker) => Promise<unknown>;

/** A client on a bench worker of its own, started with the first job. `start` is for tests and other hosts. */
export function createBench(
  start: () => StartedBench = startBenchWorker,
  silenceMs = benchSilenceMs,
): BenchClient {
  let started: StartedBench | null = null;
  let running: Job | null = null;
  let waiting: Job[] = [];
  let disposed = false;
  let openMesh: OpenMesh | null = null;
  /** The worker that has the open mesh. */
  let holder: StartedBench | null = null;

  let isSilent = false;
  const listeners = new Set<() => void>();
  const watch = createSilenceWatch((silent) => {
    isSilent = silent;
    listeners.forEach((tell) => tell());
  }, silenceMs);
  const heard = () => watch.heard();

  function endWorker(): void {
    started?.terminate();
    started = null;
    holder = null;
  }

  function ensureWorker(): StartedBench {
    if (started !== null) return started;
    const fresh = start();
    started = fresh;
    void fresh.crashed.then((problem) => {
      if (started !== fresh) return;
      endWorker();
      const lost = running;
      running = null;
      if (lost !== null) settle(lost, () => lost.reject(problem));
      next();
    });
    return fresh;
  }

  function settle(job: Job, tell: () => void): void {
    if (job.settled) return;
    job.settled = true;
    tell();
  }

  /** Nobody waits for this job any longer. */
  function drop(job: Job, problem: Problem, isWorthNewWorker = job.isLong): void {
    settle(job, () => job.reject(problem));
    waiting = waiting.filter((other) => other !== job);
    if (running !== job || !isWorthNewWorker) return;
    running = null;
    endWorker();
    next();
  }

  function next(): void {
    if (running !== null || disposed) return;
    const job = waiting.shift();
    if (job === undefined) {
      watch.rest();
      return;
    }
    watch.heard();
    running = job;
    void work(job);
  }

  async function work(job: Job): Promise<void> {
    let worker: StartedBench | null = null;
    try {
      worker = ensureWorker();
      if (!job.bringsMesh && holder !== worker && openMesh !== null) {
        await openMesh(worker.bench);
        if (started === worker) holder = worker;
      }
      if (started === worker && !job.settled) await job.run(worker.bench);
    } catch (error) {
      const { code, message } = failureOf(error);
      settle(job, () => job.reject(new Problem(code, message)));
      // A worker that ran out of memory once is not trusted with the next job.
      if (code === 'job.memory' && started === worker) endWorker();
    }
    if (running !== job) return;
    running = null;
    next();
  }

  function put<Reply>(
    nature: JobNature,
    { signal, onProgress }: JobOptions,
    question: (bench: BenchWorker, progress: (doing: string, share: number) => void) => Promise<Reply>,
    learn: (reply: Reply) => void = () => undefined,
  ): Promise<Reply> {
    return new Promise((resolve, reject) => {
      if (disposed || signal?.aborted === true) {
        reject(canceled());
        return;
      }
      const abort = () => {
        const isOutdated = signal?.reason === outdatedReason;
        drop(job, isOutdated ? outdated() : canceled(), job.isLong && !(isOutdated && job.endsSoon));
      };
      const forget = () => signal?.removeEventListener('abort', abort);
      const job: Job = {
        ...nature,
        settled: false,
        reject(problem) {
          forget();
          reject(problem);
        },
        async run(bench) {
          const reply = await question(bench, (doing, share) => {
            watch.heard();
            if (!job.settled) onProgress?.({ doing, share });
          });
          // Also when outdated meanwhile: the worker holds what it has answered. Not after a restart.
          if (running === job) learn(reply);
          settle(job, () => {
            forget();
            resolve(reply);
          });
        },
      };
      signal?.addEventListener('abort', abort);
      for (const older of [...waiting, ...(running === null ? [] : [running])]) {
        const isReplaced = job.replacedBy !== null && job.replacedBy === older.replacedBy;
        if (!older.settled && (job.bringsMesh || isReplaced)) drop(older, outdated());
      }
      waiting.push(job);
      next();
    });
  }

  return {
    importFile: (file, fileName, meshName, options = {}) =>
      put(
        { ...shortJob, bringsMesh: true, isLong: true },
        options,
        (bench, progress) => bench.importFile(file, fileName, meshName, progress),
        () => {
          holder = started;
          openMesh = (bench) => bench.importFile(file, fileName, meshName, heard);
        },
      ),
    packOpenMesh: (options = {}) =>
      put({ ...shortJob, isLong: true }, options, (bench) => bench.packOpenMesh()),
    openMesh: (packed, meshName, options = {}) =>
      put(
        { ...shortJob, bringsMesh: true },
        options,
        (bench) => bench.openMesh(packed, meshName),
        () => {
          holder = started;
          openMesh = (bench) => bench.openMesh(packed, meshName);
        },
      ),
    tell: (name, question, options = {}) =>
      put(
        { ...shortJob, isLong: stages[name].isLong, endsSoon: stages[name].endsSoon ?? false },
        options,
        (bench, progress) => bench.tell(name, question, progress),
      ),
    ask: (name, question, given, options = {}) =>
      put(
        // Both halves may be saved one after the other.
        { ...shortJob, replacedBy: name === 'saved half' ? null : name, isLong: longAsks.has(name) },
        options,
        (bench, progress) => bench.ask(name, question, given, progress),
      ),
    isSilent: () => isSilent,
    onSilence: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    startAnew: () => {
      endWorker();
      if (running !== null && !running.settled) waiting.unshift(running);
      running = null;
      next();
    },
    dispose: () => {
      disposed = true;
      watch.rest();
      for (const job of [...waiting, ...(running === null ? [] : [running])])
        settle(job, () => job.reject(canceled()));
      waiting = [];
      running = null;
      endWorker();
    },
  };
}
