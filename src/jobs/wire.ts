/**
 * Carries a `BenchWorker` over a message channel: failures cross as code and message (comlink alone would lose the
 * code of a `Problem`), flat arrays cross by transfer, progress is thinned out before it crosses.
 */
import { expose, proxy, wrap, type Endpoint } from 'comlink';
import { Problem } from '../core/problem';
import { failureOf } from './failureOf';
import type {
  BenchWorker,
  JobFailure,
  MeasureChoices,
  MeasureReply,
  OnProgress,
  PartShape,
} from './protocol';
import { transferred } from './transferred';

/** Progress more often than this would only keep the page's thread busy. */
const progressEveryMs = 100;

type Sent<Value> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly failure: JobFailure };

type Wired<Service> = {
  readonly [Name in keyof Service]: Service[Name] extends (...given: infer Given) => Promise<infer Reply>
    ? (...given: Given) => Promise<Sent<Reply>>
    : never;
};

/**
 * The shape goes as a reply of its own, asked for before the measurement: what a callback is told crosses a message port,
 * and browsers copy arrays there instead of handing them over.
 */
interface WiredBench extends Omit<Wired<BenchWorker>, 'measure'> {
  /** Of the next measurement; null when that ends without telling one. */
  nextShape(): Promise<PartShape | null>;
  measure(choices: MeasureChoices, progress: OnProgress): Promise<Sent<MeasureReply>>;
}

async function send<Reply>(work: () => Promise<Reply>): Promise<Sent<Reply>> {
  try {
    return transferred({ ok: true as const, value: await work() });
  } catch (error) {
    return { ok: false, failure: failureOf(error) };
  }
}

async function receive<Reply>(sent: Promise<Sent<Reply>>): Promise<Reply> {
  const reply = await sent;
  if (!reply.ok) throw new Problem(reply.failure.code, reply.failure.message);
  return reply.value;
}

/** Passes on the first call, then at most one per `everyMs`; a new `doing` or the end always passes. */
export function thinned(progress: OnProgress, everyMs = progressEveryMs): OnProgress {
  let toldAtMs = -Infinity;
  let toldDoing = '';
  return (step) => {
    const nowMs = performance.now();
    if (nowMs - toldAtMs < everyMs && step.doing === toldDoing && step.share < 1) return;
    toldAtMs = nowMs;
    toldDoing = step.doing;
    progress(step);
  };
}

const toNobody = () => undefined;

/** Offers `bench` on the worker's side of `endpoint`. */
export function exposeBench(bench: BenchWorker, endpoint?: Endpoint): void {
  let tellShape: (shape: PartShape | null) => void = toNobody;
  const wired: WiredBench = {
    getReady: () => send(() => bench.getReady()),
    importFile: (file, fileName, progress) => send(() => bench.importFile(file, fileName, thinned(progress))),
    packOpenMesh: () => send(() => bench.packOpenMesh()),
    openMesh: (packed) => send(() => bench.openMesh(packed)),
    nextShape: () =>
      new Promise((resolve) => {
        tellShape = (shape) => resolve(shape && transferred(shape));
      }),
    measure: async (choices, progress) => {
      const tell = tellShape;
      const sent = await send(() => bench.measure(choices, thinned(progress), tell));
      tell(null);
      return sent;
    },
    findPatches: (band) => send(() => bench.findPatches(band)),
    cut: (plane) => send(() => bench.cut(plane)),
    probe: (originMm, direction) => send(() => bench.probe(originMm, direction)),
    bestPull: (progress) => send(() => bench.bestPull(thinned(progress))),
    findSelfTouching: (progress) => send(() => bench.findSelfTouching(thinned(progress))),
    castHalves: (choices, progress) => send(() => bench.castHalves(choices, thinned(progress))),
    predictCure: (choices, stage, progress) =>
      send(() => bench.predictCure(choices, stage, thinned(progress))),
    compareCure: (choices, mostC, progress) =>
      send(() => bench.compareCure(choices, mostC, thinned(progress))),
    heatCut: (question) => send(() => bench.heatCut(question)),
    heatAt: (treatment, pointMm) => send(() => bench.heatAt(treatment, pointMm)),
    fitCure: (choices, log, progress) => send(() => bench.fitCure(choices, log, thinned(progress))),
    saveHalf: (half, choices, progress) => send(() => bench.saveHalf(half, choices, thinned(progress))),
    repairedWalls: (repairs) => send(() => bench.repairedWalls(repairs)),
    rimOf: (packed, part, pours) => send(() => bench.rimOf(packed, part, pours)),
  };
  expose(wired, endpoint);
}

/** The bench behind `endpoint`, seen from the page's side. Rejects with `Problem` only. */
export function wrapBench(endpoint: Endpoint): BenchWorker {
  const wired = wrap<WiredBench>(endpoint);
  return {
    getReady: () => receive(wired.getReady()),
    importFile: (file, fileName, progress) => receive(wired.importFile(file, fileName, proxy(progress))),
    packOpenMesh: () => receive(wired.packOpenMesh()),
    openMesh: (packed) => receive(wired.openMesh(packed)),
    measure: async (choices, progress, onShape) => {
      const shape = wired.nextShape();
      const measured = wired.measure(choices, proxy(progress));
      const told = await shape;
      if (told !== null) onShape(told);
      return receive(measured);
    },
    findPatches: (band) => receive(wired.findPatches(band)),
    cut: (plane) => receive(wired.cut(plane)),
    probe: (originMm, direction) => receive(wired.probe(originMm, direction)),
    bestPull: (progress) => receive(wired.bestPull(proxy(progress))),
    findSelfTouching: (progress) => receive(wired.findSelfTouching(proxy(progress))),
    castHalves: (choices, progress) => receive(wired.castHalves(choices, proxy(progress))),
    predictCure: (choices, stage, progress) => receive(wired.predictCure(choices, stage, proxy(progress))),
    compareCure: (choices, mostC, progress) => receive(wired.compareCure(choices, mostC, proxy(progress))),
    heatCut: (question) => receive(wired.heatCut(question)),
    heatAt: (treatment, pointMm) => receive(wired.heatAt(treatment, pointMm)),
    fitCure: (choices, log, progress) => receive(wired.fitCure(choices, log, proxy(progress))),
    saveHalf: (half, choices, progress) => receive(wired.saveHalf(half, choices, proxy(progress))),
    repairedWalls: (repairs) => receive(wired.repairedWalls(repairs)),
    rimOf: (packed, part, pours) => receive(wired.rimOf(packed, part, pours)),
  };
}
