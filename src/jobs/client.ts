/**
 * The page's side of the bench worker: one job at a time, cancel by terminating, replies to outdated questions
 * dropped, and after a restart the mesh, its measurement and the last oven run put back before the next job that needs them.
 */
import { Problem } from '../core/problem';
import { failureOf } from './failureOf';
import type { BenchClient, BenchWorker, JobOptions, MeasureChoices, PartShape } from './protocol';
import { benchSilenceMs, createSilenceWatch } from './silenceWatch';
import { startBenchWorker, type StartedBench } from './startBench';

type JobKind = Exclude<keyof BenchClient, 'dispose' | 'startAnew' | 'isSilent' | 'onSilence'>;

interface Job {
  readonly kind: JobKind;
  readonly run: (bench: BenchWorker) => Promise<void>;
  readonly reject: (problem: Problem) => void;
  settled: boolean;
}

/** What must be in the worker before a job of this kind can run. */
const needs: Record<JobKind, 'nothing' | 'mesh' | 'measurement' | 'oven run'> = {
  getReady: 'nothing',
  importFile: 'nothing',
  openMesh: 'nothing',
  packOpenMesh: 'mesh',
  measure: 'mesh',
  findPatches: 'measurement',
  cut: 'measurement',
  probe: 'measurement',
  bestPull: 'measurement',
  findSelfTouching: 'measurement',
  castHalves: 'measurement',
  predictCure: 'measurement',
  heatCut: 'oven run',
  heatAt: 'oven run',
  fitCure: 'measurement',
  compareCure: 'measurement',
  saveHalf: 'measurement',
  repairedWalls: 'measurement',
  rimOf: 'nothing',
};

/** Jobs worth a restart when nobody waits for them any longer; the others end before a worker has started. */
const longKinds: ReadonlySet<JobKind> = new Set([
  'importFile',
  'packOpenMesh',
  'measure',
  'bestPull',
  'findSelfTouching',
  'castHalves',
  'predictCure',
  'fitCure',
  'compareCure',
  'saveHalf',
]);

/** Ended by cancel, but not by a newer question: it ends sooner than a new worker has measured the part again. */
const endsSoon: ReadonlySet<JobKind> = new Set(['predictCure']);

const needsMeasurement = (kind: JobKind) => needs[kind] === 'measurement' || needs[kind] === 'oven run';

/** True when a newer question of kind `newer` leaves nobody interested in the answer to `older`. */
function outdates(newer: JobKind, older: JobKind): boolean {
  if (newer === 'importFile' || newer === 'openMesh') return true;
  if (newer === 'measure') return older === 'measure' || needsMeasurement(older);
  // Both halves may be saved one after the other.
  return newer === older && newer !== 'saveHalf';
}

const canceled = () => new Problem('job.canceled', 'Canceled. Nothing was changed.');
const outdated = () => new Problem('job.outdated', 'A newer question has taken the place of this one.');

/** True for a rejection that nobody needs to be told about: canceled by the maker, or outdated. */
export function wasDropped(error: unknown): boolean {
  return error instanceof Problem && (error.code === 'job.canceled' || error.code === 'job.outdated');
}

/** Where the open mesh can be had from again. */
type MeshSource =
  | { readonly from: 'file'; readonly file: Blob; readonly fileName: string }
  | { readonly from: 'packed'; readonly packed: string };

const nothingHeld = { mesh: false, measurement: false, ovenRun: false };

const ignore = () => undefined;

/** A client on a bench worker of its own, started with the first job. `start` is for tests and other hosts. */
export function createBench(
  start: () => StartedBench = startBenchWorker,
  silenceMs = benchSilenceMs,
): BenchClient {
  let started: StartedBench | null = null;
  let running: Job | null = null;
  let waiting: Job[] = [];
  let disposed = false;

  let source: MeshSource | null = null;
  let choices: MeasureChoices | null = null;
  let shape: PartShape | null = null;
  let ovenRun: Parameters<BenchClient['predictCure']> | null = null;
  let held = nothingHeld;

  let isSilent = false;
  const listeners = new Set<() => void>();
  const watch = createSilenceWatch((silent) => {
    isSilent = silent;
    listeners.forEach((tell) => tell());
  }, silenceMs);

  function endWorker(): void {
    started?.terminate();
    started = null;
    held = nothingHeld;
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
  function drop(job: Job, problem: Problem, endRunning = longKinds.has(job.kind)): void {
    settle(job, () => job.reject(problem));
    waiting = waiting.filter((other) => other !== job);
    // The rehearsal stops by itself once the worker is asked something, which therefore must not wait for it.
    const stopsWhenAsked = job.kind === 'getReady';
    if (running === job && (endRunning || stopsWhenAsked)) {
      running = null;
      if (!stopsWhenAsked) endWorker();
      next();
    }
  }

  /** Puts back what a restart has cost. */
  async function restore(worker: StartedBench, kind: JobKind): Promise<void> {
    if (needs[kind] === 'nothing') return;
    if (!held.mesh && source !== null) {
      if (source.from === 'packed') await worker.bench.openMesh(source.packed);
      else await worker.bench.importFile(source.file, source.fileName, watch.heard);
      if (started === worker) held = { ...nothingHeld, mesh: true };
    }
    if (needsMeasurement(kind) && !held.measurement && choices !== null) {
      await worker.bench.measure(choices, watch.heard, (told) => {
        shape = told;
      });
      if (started === worker) held = { ...held, measurement: true };
    }
    if (needs[kind] === 'oven run' && !held.ovenRun && ovenRun !== null) {
      const [wanted, stage] = ovenRun;
      await worker.bench.predictCure(wanted, stage, watch.heard);
      if (started === worker) held = { ...held, ovenRun: true };
    }
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
      await restore(worker, job.kind);
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

  function ask<Reply>(
    kind: JobKind,
    options: JobOptions,
    question: (bench: BenchWorker, progress: NonNullable<JobOptions['onProgress']>) => Promise<Reply>,
    learn: (reply: Reply) => void = ignore,
  ): Promise<Reply> {
    return new Promise((resolve, reject) => {
      const { signal } = options;
      if (disposed || signal?.aborted === true) {
        reject(canceled());
        return;
      }
      const abort = () => drop(job, canceled());
      const forget = () => signal?.removeEventListener('abort', abort);
      const job: Job = {
        kind,
        settled: false,
        reject: (problem) => {
          forget();
          reject(problem);
        },
        run: async (bench) => {
          const reply = await question(bench, (progress) => {
            watch.heard();
            if (!job.settled) options.onProgress?.(progress);
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
        if (!older.settled && outdates(kind, older.kind)) {
          drop(older, outdated(), longKinds.has(older.kind) && !endsSoon.has(older.kind));
        }
      }
      waiting.push(job);
      next();
    });
  }

  return {
    getReady: (options = {}) => ask('getReady', options, (bench) => bench.getReady()),
    importFile: (file, fileName, options = {}) =>
      ask(
        'importFile',
        options,
        (bench, progress) => bench.importFile(file, fileName, progress),
        () => {
          source = { from: 'file', file, fileName };
          choices = null;
          ovenRun = null;
          held = { ...nothingHeld, mesh: true };
        },
      ),
    packOpenMesh: (options = {}) =>
      ask(
        'packOpenMesh',
        options,
        (bench) => bench.packOpenMesh(),
        ({ packed }) => {
          source = { from: 'packed', packed };
        },
      ),
    openMesh: (packed, options = {}) =>
      ask(
        'openMesh',
        options,
        (bench) => bench.openMesh(packed),
        () => {
          source = { from: 'packed', packed };
          choices = null;
          ovenRun = null;
          held = { ...nothingHeld, mesh: true };
        },
      ),
    measure: (wanted, options = {}) =>
      ask(
        'measure',
        options,
        async (bench, progress) => {
          const reply = await bench.measure(wanted, progress, (told) => {
            shape = told;
            if (options.signal?.aborted !== true) options.onShape?.(told);
          });
          // The worker tells a shape only when it has changed, so the last one told is the one measured.
          if (shape === null) throw new Problem('job.failed', 'The part was measured without its shape.');
          return { ...reply, shape };
        },
        () => {
          choices = wanted;
          held = { ...held, mesh: true, measurement: true };
        },
      ),
    findPatches: (band, options = {}) => ask('findPatches', options, (bench) => bench.findPatches(band)),
    cut: (plane, options = {}) => ask('cut', options, (bench) => bench.cut(plane)),
    probe: (originMm, direction, options = {}) =>
      ask('probe', options, (bench) => bench.probe(originMm, direction)),
    bestPull: (options = {}) => ask('bestPull', options, (bench, progress) => bench.bestPull(progress)),
    findSelfTouching: (options = {}) =>
      ask('findSelfTouching', options, (bench, progress) => bench.findSelfTouching(progress)),
    castHalves: (wanted, options = {}) =>
      ask('castHalves', options, (bench, progress) => bench.castHalves(wanted, progress)),
    predictCure: (wanted, stage, options = {}) =>
      ask(
        'predictCure',
        options,
        (bench, progress) => bench.predictCure(wanted, stage, progress),
        () => {
          ovenRun = [wanted, stage];
          held = { ...held, ovenRun: true };
        },
      ),
    compareCure: (wanted, mostC, options = {}) =>
      ask('compareCure', options, (bench, progress) => bench.compareCure(wanted, mostC, progress)),
    heatCut: (question, options = {}) => ask('heatCut', options, (bench) => bench.heatCut(question)),
    heatAt: (treatment, pointMm, options = {}) =>
      ask('heatAt', options, (bench) => bench.heatAt(treatment, pointMm)),
    fitCure: (wanted, log, options = {}) =>
      ask('fitCure', options, (bench, progress) => bench.fitCure(wanted, log, progress)),
    saveHalf: (half, wanted, options = {}) =>
      ask('saveHalf', options, (bench, progress) => bench.saveHalf(half, wanted, progress)),
    repairedWalls: (repairs, options = {}) =>
      ask('repairedWalls', options, (bench) => bench.repairedWalls(repairs)),
    rimOf: (packed, part, pours, options = {}) =>
      ask('rimOf', options, (bench) => bench.rimOf(packed, part, pours)),
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
      for (const job of [...waiting, ...(running === null ? [] : [running])]) {
        settle(job, () => job.reject(canceled()));
      }
      waiting = [];
      running = null;
      endWorker();
    },
  };
}
