/**
 * Timers of the bench, one entry in storage per project, apart from the document: undo must not stop a timer, and a
 * timer is worth nothing the day after. Ends are kept as wall-clock times, so that they hold over a reload.
 */
import * as z from 'zod/mini';
import { timersKey } from './keys';
import { refused, type Outcome } from './outcome';
import type { StoragePort } from './storagePort';

/** A week: longer than anything on the bench takes. */
export const longestTimerS = 604_800;

const seconds = z.number().check(z.minimum(0), z.maximum(longestTimerS));
const timerSchema = z.object({
  /** Which of the offered times it was set to. */
  what: z.string().check(z.maxLength(60)),
  lengthS: seconds,
  /** Milliseconds since 1970; null while it does not run. */
  endsAtMs: z.nullable(z.number()),
  /** Left while it does not run. */
  leftS: seconds,
  /** The sound of its end was stopped by the maker. */
  heard: z.boolean(),
});
export type BenchTimer = z.infer<typeof timerSchema>;

const timersSchema = z.array(timerSchema).check(z.maxLength(8));

/** The timers of a project; none when nothing readable is saved. */
export function readTimers(storage: StoragePort, projectId: string): readonly BenchTimer[] {
  const text = storage.getItem(timersKey(projectId));
  if (text === null) return [];
  try {
    const read = timersSchema.safeParse(JSON.parse(text));
    return read.success ? read.data : [];
  } catch {
    return [];
  }
}

export function writeTimers(storage: StoragePort, projectId: string, timers: readonly BenchTimer[]): Outcome {
  try {
    storage.setItem(timersKey(projectId), JSON.stringify(timers));
    return { done: true };
  } catch {
    return refused(
      'The browser did not let the timers be saved: they run, but only as long as this page is open.',
    );
  }
}
