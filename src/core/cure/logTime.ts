/** Times of a log: plain numbers in seconds, minutes or hours, or clock times with or without a date. */
import { cellNumber } from './logCells';

export type LogTimeUnit = 's' | 'min' | 'h' | 'clock';

export const secondsPer = { s: 1, min: 60, h: 3600 } as const;

const clockPattern = /(?:^|[T\s])(\d{1,2}):(\d{2})(?::(\d{2}(?:[.,]\d+)?))?\s*(am|pm)?/iu;
/** Year first, day first with points, or month first with strokes: only the days between two lines matter. */
const datePatterns = [
  { pattern: /(\d{4})-(\d{1,2})-(\d{1,2})/u, order: [0, 1, 2] },
  { pattern: /(\d{1,2})\.(\d{1,2})\.(\d{4})/u, order: [2, 1, 0] },
  { pattern: /(\d{1,2})\/(\d{1,2})\/(\d{4})/u, order: [2, 0, 1] },
] as const;

const daySeconds = 86_400;

/** Seconds of a clock cell since midnight, or since 1970 where it holds a date; null when it holds no clock time. */
export function clockSeconds(cell: string): number | null {
  const clock = clockPattern.exec(cell);
  if (clock === null) return null;
  const [, hours, minutes, seconds = '0', half] = clock;
  let hour = Number(hours);
  if (half !== undefined) hour = (hour % 12) + (half.toLowerCase() === 'pm' ? 12 : 0);
  const inDay = 3600 * hour + 60 * Number(minutes) + Number(seconds.replace(',', '.'));
  return inDay + (dayOf(cell) ?? 0) * daySeconds;
}

function dayOf(cell: string): number | null {
  for (const { pattern, order } of datePatterns) {
    const found = pattern.exec(cell);
    if (found === null) continue;
    const [year, month, day] = order.map((at) => Number(found[at + 1]));
    return Date.UTC(year!, month! - 1, day) / 86_400_000;
  }
  return null;
}

/** The unit a heading names; null when it names none. */
export function timeUnitIn(heading: string): 's' | 'min' | 'h' | null {
  const words = heading.toLowerCase().match(/[a-z]+/gu) ?? [];
  if (words.some((word) => ['s', 'sec', 'secs', 'second', 'seconds'].includes(word))) return 's';
  if (words.some((word) => ['min', 'mins', 'minute', 'minutes'].includes(word))) return 'min';
  return words.some((word) => ['h', 'hr', 'hrs', 'hour', 'hours'].includes(word)) ? 'h' : null;
}

/** A cure lasts from half an hour to two days; of the units that give that, the finest. */
export function guessTimeUnit(span: number): 's' | 'min' | 'h' {
  const fits = (['s', 'min', 'h'] as const).filter((unit) => {
    const seconds = span * secondsPer[unit];
    return seconds >= 1800 && seconds <= 2 * daySeconds;
  });
  return fits[0] ?? 's';
}

/** Raw times of a column; null where a cell holds none. Clock times that start over at midnight go on. */
export function rawTimes(cells: readonly string[], parting: string, clock: boolean): (number | null)[] {
  if (!clock) return cells.map((cell) => cellNumber(cell, parting));
  let days = 0;
  let before = -Infinity;
  return cells.map((cell) => {
    const at = clockSeconds(cell);
    if (at === null) return null;
    // A day has passed only where the clock falls by half of one; a small step back is a fault of the log.
    if (at + days * daySeconds < before - daySeconds / 2) days++;
    before = at + days * daySeconds;
    return before;
  });
}
