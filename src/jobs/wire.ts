/**
 * Carries a `BenchWorker` over a message channel: failures cross as code and message (comlink alone would lose the
 * code of a `Problem`), flat arrays cross by transfer, progress is thinned out before it crosses.
 */
import { expose, proxy, wrap, type Endpoint } from 'comlink';
import { Problem } from '../core/problem';
import type { OnProgress } from '../pipeline/told';
import { failureOf } from './failureOf';
import type { BenchWorker, JobFailure } from './protocol';
import { transferred } from './transferred';

/** Progress more often than this would only keep the page's thread busy. */
const progressEveryMs = 100;

type Sent =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly failure: JobFailure };

type Method = keyof BenchWorker;
/** One call for all: which method, and what it is given. Progress goes beside it, since only it must be a proxy. */
interface Wired {
  call(method: Method, given: readonly unknown[], progress: OnProgress): Promise<Sent>;
}

const withProgress: ReadonlySet<Method> = new Set(['importFile', 'tell', 'ask']);

/** Passes on the first call, then at most one per `everyMs`; a new `doing` or the end always passes. */
export function thinned(progress: OnProgress, everyMs = progressEveryMs): OnProgress {
  let toldAtMs = -Infinity;
  let toldDoing = '';
  return (doing, share) => {
    const nowMs = performance.now();
    if (nowMs - toldAtMs < everyMs && doing === toldDoing && share < 1) return;
    toldAtMs = nowMs;
    toldDoing = doing;
    progress(doing, share);
  };
}

/** Offers `bench` on the worker's side of `endpoint`. */
export function exposeBench(bench: BenchWorker, endpoint?: Endpoint): void {
  const wired: Wired = {
    async call(method, given, progress) {
      try {
        const work = bench[method] as (...all: readonly unknown[]) => Promise<unknown>;
        const all = withProgress.has(method) ? [...given, thinned(progress)] : given;
        return transferred({ ok: true as const, value: await work.apply(bench, [...all]) });
      } catch (error) {
        return { ok: false, failure: failureOf(error) };
      }
    },
  };
  expose(wired, endpoint);
}

const toNobody: OnProgress = () => undefined;

/** The bench behind `endpoint`, seen from the page's side. Rejects with `Problem` only. */
export function wrapBench(endpoint: Endpoint): BenchWorker {
  const wired = wrap<Wired>(endpoint);
  async function call<Reply>(method: Method, given: readonly unknown[], progress = toNobody): Promise<Reply> {
    const sent = await wired.call(method, given, proxy(progress));
    if (!sent.ok) throw new Problem(sent.failure.code, sent.failure.message);
    return sent.value as Reply;
  }
  return {
    importFile: (file, fileName, meshName, progress) =>
      call('importFile', [file, fileName, meshName], progress),
    packOpenMesh: () => call('packOpenMesh', []),
    openMesh: (packed, meshName) => call('openMesh', [packed, meshName]),
    tell: (name, question, progress) => call('tell', [name, question], progress),
    ask: (name, question, given, progress) => call('ask', [name, question, given], progress),
  };
}
