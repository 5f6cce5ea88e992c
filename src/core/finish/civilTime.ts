/** Days and minutes of a calendar on the wall: no time zones, no clock. */

export interface CivilDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** Days from 1 January 1970, of the Gregorian calendar (Hinnant, Low-level date algorithms, 2014). */
export function dayNumber({ year, month, day }: CivilDate): number {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const ofEra = shifted - era * 400;
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  return era * 146_097 + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719_468;
}

export function dateOfDay(number: number): CivilDate {
  const shifted = number + 719_468;
  const era = Math.floor(shifted / 146_097);
  const ofEra = shifted - era * 146_097;
  const year = Math.floor(
    (ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) / 365,
  );
  const ofYear = ofEra - (365 * year + Math.floor(year / 4) - Math.floor(year / 100));
  const fifth = Math.floor((5 * ofYear + 2) / 153);
  const month = fifth < 10 ? fifth + 3 : fifth - 9;
  return {
    year: year + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: ofYear - Math.floor((153 * fifth + 2) / 5) + 1,
  };
}

/** 0 Monday to 6 Sunday; 1 January 1970 was a Thursday. */
export const weekday = (number: number): number => (((number + 3) % 7) + 7) % 7;

/** "2026-05-04"; null for anything that is no date. */
export function readDate(text: string): CivilDate | null {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(text);
  if (found === null) return null;
  const date = { year: Number(found[1]), month: Number(found[2]), day: Number(found[3]) };
  const back = dateOfDay(dayNumber(date));
  return back.month === date.month && back.day === date.day ? date : null;
}

const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** "2026-05-04" */
export const dateText = ({ year, month, day }: CivilDate): string =>
  `${String(year).padStart(4, '0')}-${twoDigits(month)}-${twoDigits(day)}`;

/** "09:30" of minutes after midnight. */
export const clockText = (minutes: number): string =>
  `${twoDigits(Math.floor(minutes / 60))}:${twoDigits(Math.round(minutes % 60))}`;
