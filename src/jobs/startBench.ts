import { missingPartWords } from '../core/missingPart';
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

const notTheModel = 'The model is not at fault, and nothing that was saved is lost.';

/** @throws Problem `job.noWorker` */
function newWorker(): Worker {
  try {
    return new Worker(new URL('./entry.ts', import.meta.url), { type: 'module', name: 'bench' });
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    throw new Problem(
      'job.noWorker',
      `This browser does not let the workbook start its measuring: web workers are blocked or missing (${detail}). Allow them for this page in the browser's settings or its content blocker, or use a current browser, and load the page again. ${notTheModel}`,
    );
  }
}

/** Why a worker has ended of which nothing was ever heard. */
function notStarted(detail: string): Problem {
  return detail === ''
    ? new Problem(
        'job.missingPart',
        `The measuring could not be started. ${missingPartWords} If that does not help, the browser blocks web workers: allow them for this page. ${notTheModel}`,
      )
    : new Problem(
        'job.noWorker',
        `The measuring could not be started in this browser (${detail}). Use a current browser. ${notTheModel}`,
      );
}

function crashedWith(detail: string): Problem {
  const said = detail === '' ? '' : ` (${detail})`;
  return new Problem(
    'job.crashed',
    `The measuring stopped in the middle of its work${said}. Too little memory is the usual cause: close other tabs, or export the model with fewer triangles, and try again. Nothing that was saved is lost.`,
  );
}

/**
 * The bench in a worker of its own.
 * @throws Problem `job.noWorker`
 */
export function startBenchWorker(): StartedBench {
  const worker = newWorker();
  let wasHeard = false;
  worker.addEventListener('message', () => (wasHeard = true), { once: true });
  const crashed = new Promise<Problem>((resolve) => {
    const stop = (event: Event) => {
      const detail = event instanceof ErrorEvent ? event.message : '';
      resolve(wasHeard ? crashedWith(detail) : notStarted(detail));
    };
    worker.addEventListener('error', stop);
    worker.addEventListener('messageerror', stop);
  });
  return { bench: wrapBench(worker), crashed, terminate: () => worker.terminate() };
}
