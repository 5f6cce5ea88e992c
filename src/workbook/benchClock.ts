/**
 * The clock that timers and the oven run count by: the clock on the wall, checked by the page's own clock, which nobody
 * can set.
 *
 * - Forward, the wall clock is believed: behind a closed lid the page's clock may stand, and the stone sets all the same.
 * - Back, it is not: time goes on by the page's clock, and what the wall clock was set back by is made up for from then on.
 * - A wall clock that has caught up again (it was put right) is followed as it is.
 *
 * Over a reload the page's clock starts anew. From the last reading that was saved, time then never goes back; how long
 * the page was away cannot be known when the clock was set back meanwhile, and counts as nothing.
 */
import * as z from 'zod/mini';

const ms = z.number().check(z.minimum(0));

export const savedReadingSchema = z.object({
  /** Bench time, milliseconds since 1970. */
  nowMs: ms,
  /** What the wall clock showed then. */
  wallMs: ms,
});
export type SavedReading = z.infer<typeof savedReadingSchema>;

export interface ClockReading extends SavedReading {
  /** The page's clock at that moment; null when that was in an earlier page. */
  readonly pageMs: number | null;
}

/** Clocks are corrected by small steps all the time, and the two are not read at the same instant. */
const slackMs = 2000;

export function nextReading(former: ClockReading | null, wallMs: number, pageMs: number): ClockReading {
  if (former === null) return { nowMs: wallMs, wallMs, pageMs };
  const passedMs = former.pageMs === null ? 0 : Math.max(0, pageMs - former.pageMs);
  const leastMs = former.nowMs + passedMs;
  const madeUpMs = wallMs + former.nowMs - former.wallMs;
  const believedMs = [wallMs, madeUpMs].find((oneMs) => oneMs >= leastMs - slackMs) ?? leastMs;
  return { nowMs: Math.max(former.nowMs, believedMs), wallMs, pageMs };
}

/** By how much the wall clock was set back and has not been put right since; 0 within the slack. */
export function setBackMs({ nowMs, wallMs }: SavedReading): number {
  return nowMs - wallMs > slackMs ? nowMs - wallMs : 0;
}
