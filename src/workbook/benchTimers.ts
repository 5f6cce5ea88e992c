/**
 * Timers of the bench, one entry in storage per project, apart from the document: undo must not stop a timer, and a
 * timer is worth nothing the day after. Ends are times of the bench clock, so that they hold over a reload.
 */
import * as z from 'zod/mini';
import type { BenchKind } from './benchStore';
import { timersKey } from './keys';

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

export const noTimers: readonly BenchTimer[] = [];

export const timersKind: BenchKind<readonly BenchTimer[]> = {
  called: 'The record of the timers',
  keyOf: timersKey,
  schema: z.array(timerSchema).check(z.maxLength(8)),
  none: noTimers,
  notSaved:
    'The browser did not let the timers be saved: they run, but only while this project is open here.',
};
