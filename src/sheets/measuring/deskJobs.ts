import { wasDropped } from '../../jobs/client';
import type { JobOptions, Progress } from '../../jobs/protocol';

/** A job of the desk that is under its progress bar. */
export interface DeskJob extends Required<JobOptions> {
  /** True when the desk has begun another job instead. */
  readonly replaced: () => boolean;
  /** Tells of what went wrong, unless the job was dropped. */
  readonly fail: (error: unknown) => void;
  readonly end: () => void;
}

/** What is told of them. */
export interface JobState {
  readonly progress: Progress | null;
  /** Nothing is measured and nothing is being done about it: canceled or failed. */
  readonly stopped: boolean;
  /** A sentence on what went wrong and what to do. */
  readonly problem: string | null;
}

export interface DeskJobs {
  /** Starts a job of the maker's or of the desk's own; an earlier one is canceled. */
  begin(doing: string): DeskJob;
  isIdle(): boolean;
  cancel(): void;
}

/** The long jobs of a desk, one at a time. */
export function createDeskJobs(tell: (change: Partial<JobState>) => void): DeskJobs {
  let controller: AbortController | null = null;
  return {
    begin(doing) {
      controller?.abort();
      const own = new AbortController();
      controller = own;
      tell({ problem: null, stopped: false, progress: { doing, share: 0 } });
      return {
        signal: own.signal,
        onProgress: (progress) => {
          if (controller === own) tell({ progress });
        },
        replaced: () => controller !== own,
        fail: (error) => {
          if (!wasDropped(error)) tell({ problem: sentenceOf(error) });
        },
        end: () => {
          if (controller !== own) return;
          controller = null;
          tell({ progress: null });
        },
      };
    },
    isIdle: () => controller === null,
    cancel: () => controller?.abort(),
  };
}

/** What is left of a failed job as a sentence for the page. */
export function sentenceOf(error: unknown): string {
  return error instanceof Error ? error.message : `Something unexpected went wrong: ${String(error)}`;
}
