/** The whole job on the days of one maker: work in working hours, waiting round the clock. */
import { Problem } from '../problem';
import { weekday } from './civilTime';

export interface Activity {
  readonly id: string;
  readonly name: string;
  /** Needs the maker: done in working hours, not broken over the end of a day unless longer than one. */
  readonly workMin: number;
  /** After the work, round the clock: setting, drying, an oven run, a coat. */
  readonly waitMin: number;
  /** The work starts no later than this after the end of the work before; null where it may rest. */
  readonly startWithinMin: number | null;
}

export interface WorkingHours {
  readonly fromMin: number;
  readonly toMin: number;
  /** 0 Monday to 6 Sunday. */
  readonly weekdays: readonly number[];
}

export interface Scheduled {
  readonly id: string;
  readonly name: string;
  /** Minutes from the midnight that began the start day. */
  readonly startMin: number;
  readonly workEndMin: number;
  /** The waiting is over. */
  readonly endMin: number;
  /** The work had to start by then; null where it need not. */
  readonly latestMin: number | null;
}

const day = 24 * 60;
/** Ten years: nobody waits longer for a working hour. */
const mostDays = 3660;

/**
 * One after the other, as early as working hours allow. Work that fits into a working day is not broken by its end.
 * @param startDay number of the first day (core/finish/civilTime)
 * @throws Problem `finish.hours` for working hours without any, `finish.tooLong` for a job beyond ten years
 */
export function schedule(
  activities: readonly Activity[],
  startDay: number,
  hours: WorkingHours,
): readonly Scheduled[] {
  if (!(hours.toMin > hours.fromMin) || !hours.weekdays.some((one) => one >= 0 && one <= 6))
    throw new Problem(
      'finish.hours',
      'No working hours are left: the end of the day must come after its start, on one weekday at least.',
    );
  let at = 0;
  let lastWorkEnd = 0;
  return activities.map(({ id, name, workMin, waitMin, startWithinMin }) => {
    const startMin = workMin > 0 ? nextStart(at, workMin, startDay, hours) : at;
    const workEndMin = workMin > 0 ? workedUntil(startMin, workMin, startDay, hours) : at;
    const latestMin = startWithinMin === null ? null : lastWorkEnd + startWithinMin;
    at = workEndMin + waitMin;
    lastWorkEnd = workEndMin;
    return { id, name, startMin, workEndMin, endMin: at, latestMin };
  });
}

const isWorkday = (dayOffset: number, startDay: number, { weekdays }: WorkingHours): boolean =>
  weekdays.includes(weekday(startDay + dayOffset));

function nextStart(from: number, workMin: number, startDay: number, hours: WorkingHours): number {
  const needed = Math.min(workMin, hours.toMin - hours.fromMin);
  for (let at = Math.floor(from / day); at < mostDays; at++) {
    if (!isWorkday(at, startDay, hours)) continue;
    const start = Math.max(from, at * day + hours.fromMin);
    if (start + needed <= at * day + hours.toMin) return start;
  }
  throw tooLong();
}

function workedUntil(start: number, workMin: number, startDay: number, hours: WorkingHours): number {
  let left = workMin;
  let at = start;
  for (let on = Math.floor(start / day); on < mostDays; on++) {
    if (!isWorkday(on, startDay, hours)) continue;
    at = Math.max(start, on * day + hours.fromMin);
    const room = on * day + hours.toMin - at;
    if (left <= room) return at + left;
    left -= room;
  }
  throw tooLong();
}

const tooLong = () =>
  new Problem(
    'finish.tooLong',
    'The job would end more than ten years from its start. Look at the hours of its parts: one of them is far too long.',
  );

/** Parts that begin later than they may: a coat whose recoat window has closed, over a night or a weekend. */
export const missedWindows = (scheduled: readonly Scheduled[]): readonly Scheduled[] =>
  scheduled.filter(({ startMin, latestMin }) => latestMin !== null && startMin > latestMin);
