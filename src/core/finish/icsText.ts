/** A calendar as iCalendar text (RFC 5545), in floating local time: it means the maker's own clock. */
import { dateOfDay } from './civilTime';
import type { Scheduled } from './calendar';

const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** RFC 5545, 3.3.5, form 1: local time without a zone. */
function localTime(startDay: number, minutes: number): string {
  const whole = Math.round(minutes);
  const { year, month, day } = dateOfDay(startDay + Math.floor(whole / 1440));
  const ofDay = ((whole % 1440) + 1440) % 1440;
  return `${String(year).padStart(4, '0')}${twoDigits(month)}${twoDigits(day)}T${twoDigits(Math.floor(ofDay / 60))}${twoDigits(ofDay % 60)}00`;
}

/** RFC 5545, 3.3.11: backslash, semicolon, comma and line ends are escaped; control characters may not stand there. */
export const escapedText = (text: string): string =>
  text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replaceAll(/\r\n|\r|\n/gu, '\\n')
    // oxlint-disable-next-line no-control-regex
    .replaceAll(/[\u0000-\u0008\u000B-\u001F\u007F]/gu, '');

/** RFC 5545, 3.1: no line over 75 octets without its end; what goes on begins with a blank. No character is cut in two. */
export function foldedLine(line: string): string {
  const most = 75;
  let folded = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character.codePointAt(0)!);
    if (octets + size > most) {
      folded += '\r\n ';
      octets = 1;
    }
    folded += character;
    octets += size;
  }
  return folded;
}

const octetsOf = (code: number): number => (code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4);

export interface IcsChoices {
  /** Of the job; stands before each entry. */
  readonly title: string;
  /** Makes the identifiers of this job's entries its own; the same job and activity give the same one. */
  readonly jobId: string;
  /** Number of the first day. */
  readonly startDay: number;
}

/** One event per activity with work, one for what then waits. Entries are stamped with the start of the job, so that the text is the same each time. */
export function icsText(scheduled: readonly Scheduled[], { title, jobId, startDay }: IcsChoices): string {
  const stamp = `${localTime(startDay, 0)}Z`;
  const event = (id: string, name: string, from: number, to: number, isFree: boolean): readonly string[] => [
    'BEGIN:VEVENT',
    `UID:${escapedUid(`${id}.${jobId}`)}@mold-layup-workbook.invalid`,
    `DTSTAMP:${stamp}`,
    `DTSTART:${localTime(startDay, from)}`,
    `DTEND:${localTime(startDay, Math.max(to, from + 1))}`,
    `SUMMARY:${escapedText(`${title}: ${name}`)}`,
    ...(isFree ? ['TRANSP:TRANSPARENT'] : []),
    'END:VEVENT',
  ];
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Mold and Layup Workbook//EN',
    'CALSCALE:GREGORIAN',
    ...scheduled.flatMap(({ id, name, startMin, workEndMin, endMin }) => [
      ...(workEndMin > startMin ? event(id, name, startMin, workEndMin, false) : []),
      ...(endMin > workEndMin ? event(`${id}.wait`, `${name}, waiting`, workEndMin, endMin, true) : []),
    ]),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${foldedLine(line)}\r\n`).join('');
}

const escapedUid = (text: string): string => text.replaceAll(/[^A-Za-z0-9.-]+/gu, '-');
