import { Problem } from '../core/problem';
import type { BenchWorker } from './protocol';
import { wrapBench } from './wire';

/** A bench that is ready for jobs, on whatever thread. */
export interface StartedBench {
  readonly bench: BenchWorker;
  /** Resolves when the worker ends by itself; never when it is terminated. */
  readonly crashed: Promise<Problem>;
  terminate(): void;
}

/** The bench in a worker of its own. */
export function startBenchWorker(): StartedBench {
  const worker = new Worker(new URL('./entry.ts', import.meta.url), { type: 'module', name: 'bench' });
  const crashed = new Promise<Problem>((resolve) => {
    const stop = (event: Event) => {
      const detail = event instanceof ErrorEvent && event.message !== '' ? ` (${event.message})` : '';
      resolve(
        new Problem(
          'job.crashed',
          `The measuring stopped in the middle of its work${detail}. Too little memory is the usual cause: close other tabs, or export the model with fewer triangles, and try again. Nothing that was saved is lost.`,
        ),
      );
    };
    worker.addEventListener('error', stop);
    worker.addEventListener('messageerror', stop);
  });
  return { bench: wrapBench(worker), crashed, terminate: () => worker.terminate() };
}
