/** The whole job as activities, and when each is done. */
import {
  missedWindows,
  schedule,
  type Activity,
  type Scheduled,
  type WorkingHours,
} from '../../core/finish/calendar';
import { clockText, dateOfDay, dateText, dayNumber, readDate } from '../../core/finish/civilTime';
import { sandingLadder } from '../../core/finish/sanding';
import { programOnDial } from '../../core/cure/ovenProgram';
import { Problem } from '../../core/problem';
import type { FinishInputs } from '../inputs/finish';
import type { ProjectInputs } from '../inputs/project';
import type { ReportBefore } from '../shared/context';
import { programOf } from '../shared/process';
import { stoneInUse } from '../stone/stoneInUse';

export interface Job {
  readonly scheduled: readonly Scheduled[];
  /** Number of its first day (core/finish/civilTime). */
  readonly startDay: number;
  /** The maker gave the day; without one it is a Monday. */
  readonly isDated: boolean;
  readonly missed: readonly Scheduled[];
}

/** A Monday. */
const someMonday = dayNumber({ year: 2024, month: 1, day: 1 });
/** Until a drying log or an entry tells (common practice for halves of a hand's size). */
const usualDryingH = 48;

const days: Readonly<Record<FinishInputs['workdays'], readonly number[]>> = {
  'Monday to Friday': [0, 1, 2, 3, 4],
  'Saturday and Sunday': [5, 6],
  'every day': [0, 1, 2, 3, 4, 5, 6],
};

/** @throws Problem in the maker's words where there is no such day, no hour, or no end */
export function jobOf(inputs: ProjectInputs, before: readonly ReportBefore[]): Job {
  const { finish } = inputs;
  const date = finish.startDate === null ? null : readDate(finish.startDate);
  if (finish.startDate !== null && date === null)
    throw new Problem(
      'finish.date',
      `${finish.startDate} is no day of the calendar. Enter it as year, month and day, for example 2026-05-04.`,
    );
  const startDay = date === null ? someMonday : dayNumber(date);
  const hours: WorkingHours = {
    fromMin: 60 * finish.dayFromH,
    toMin: 60 * finish.dayToH,
    weekdays: days[finish.workdays],
  };
  const scheduled = schedule([...moldWork(inputs, before), ...coatWork(finish)], startDay, hours);
  return { scheduled, startDay, isDated: date !== null, missed: missedWindows(scheduled) };
}

const activity = (
  id: string,
  name: string,
  workH: number,
  waitH: number,
  startWithinH: number | null = null,
): Activity => ({
  id,
  name,
  workMin: Math.round(60 * workH),
  waitMin: Math.round(60 * waitH),
  startWithinMin: startWithinH === null ? null : Math.round(60 * startWithinH),
});

function moldWork(inputs: ProjectInputs, before: readonly ReportBefore[]): readonly Activity[] {
  const { finish, mold } = inputs;
  const stone = stoneInUse(mold);
  const boxH = stone.demoldMin.value / 60;
  return [
    activity('print', 'Print the pattern', 0.5, finish.printH),
    activity('negative', 'Pour the negative', 1, boxH),
    activity('positive', 'Pour the positive', 1, boxH),
    activity(
      'drying',
      'Open the box; the halves dry',
      0.5,
      finish.dryingH ?? hoursToDry(before) ?? usualDryingH,
    ),
    activity('sealer', 'Seal the halves', 0.5, waitOf(before, 'mold.sealerWaitMin')),
    activity('release', 'Release on the halves', 0.5, waitOf(before, 'mold.releaseWaitMin')),
    activity('layup', 'Lay the plies and close the mold', finish.layupH, 0),
    activity('cure', 'Oven: cure', 0.5, ovenH(inputs) + (numberOf(before, 'cure.demoldAfterS') ?? 0) / 3600),
    activity('trim', 'Demold and trim', finish.trimH, 0),
  ];
}

/** Each coat may follow within its window; sanding comes after the last one is dry. */
function coatWork({ coats, firstGrit, lastGrit, coatH, sandH }: FinishInputs): readonly Activity[] {
  if (coats.length === 0) return [];
  const coated = coats.flatMap((coat, kind) =>
    Array.from({ length: coat.count }, (_, k) => {
      const isLast = k === coat.count - 1;
      const within = k === 0 ? null : coat.recoatToH;
      return activity(
        `coat.${kind + 1}.${k + 1}`,
        `${coat.name}, coat ${k + 1} of ${coat.count}`,
        coatH,
        isLast ? coat.dryH : coat.recoatFromH,
        within,
      );
    }),
  );
  const papers = sandingLadder(firstGrit, lastGrit);
  return [
    ...coated,
    activity('sanding', `Sand, ${papers.map(({ grit }) => grit).join(', ')}`, papers.length * sandH, 0),
  ];
}

function numberOf(before: readonly ReportBefore[], id: string): number | null {
  for (const { report } of before)
    for (const figure of report.figures)
      if (figure.id === id && typeof figure.value === 'number') return figure.value;
  return null;
}

const waitOf = (before: readonly ReportBefore[], id: string): number => (numberOf(before, id) ?? 0) / 60;

function hoursToDry(before: readonly ReportBefore[]): number | null {
  const found = ['negative', 'positive'].flatMap((half) => numberOf(before, `mold.${half}.hoursToDry`) ?? []);
  return found.length === 0 ? null : Math.max(...found);
}

function ovenH(inputs: ProjectInputs): number {
  try {
    return programOnDial(programOf(inputs)).heatedS / 3600;
  } catch (error) {
    // The cure step says what is wrong with the program.
    if (!(error instanceof Problem)) throw error;
    return 0;
  }
}

/** Minutes of the job as the maker reads them. */
export const dayAndTime = ({ startDay, isDated }: Job, minutes: number): string => {
  const day = Math.floor(minutes / 1440);
  const time = clockText(minutes - 1440 * day);
  return isDated ? `${dateText(dateOfDay(startDay + day))} ${time}` : `day ${day + 1}, ${time}`;
};

/** null where it cannot be planned; the report says why. */
export function plannedJob(inputs: ProjectInputs, before: readonly ReportBefore[]): Job | null {
  try {
    return jobOf(inputs, before);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return null;
  }
}
