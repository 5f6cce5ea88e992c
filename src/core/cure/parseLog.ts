/** A thermocouple log from a text file: a time column and one or more temperatures, units found or guessed and said. */
import { keepWithin } from '../counts';
import { Problem } from '../problem';
import { curveOf, type Curve } from './curve';
import { cellNumber, logCells } from './logCells';
import { clockSeconds, guessTimeUnit, rawTimes, secondsPer, timeUnitIn, type LogTimeUnit } from './logTime';
import {
  guessTemperatureUnit,
  isOther,
  readable,
  temperatureUnitIn,
  toCelsius,
  type LogTemperatureUnit,
} from './logUnits';

export interface LogGap {
  readonly fromS: number;
  readonly untilS: number;
}

export interface LogColumn {
  readonly name: string;
  readonly unit: LogTemperatureUnit;
  /** false: the heading names no unit, and it was guessed from the readings. */
  readonly unitSaid: boolean;
  /** From the log's first line on; readings that are none are left out. */
  readonly curve: Curve;
  readonly lostReadings: number;
  readonly gaps: readonly LogGap[];
}

export interface OvenLog {
  readonly timeUnit: LogTimeUnit;
  readonly timeUnitSaid: boolean;
  readonly columns: readonly LogColumn[];
  /** Plain sentences on what was guessed or left out. */
  readonly notes: readonly string[];
}

/** What the maker knows better than the file. */
export interface LogChoices {
  readonly timeUnit?: 's' | 'min' | 'h';
  readonly temperatureUnit?: LogTemperatureUnit;
}

const leastRows = 3;
const mostLetters = 30_000_000;
/** A pause longer than this many usual spacings, and than two minutes, is a gap. */
const gapSpacings = 5;
const leastGapS = 120;
const timeWords = /time|elapsed|zeit|temps|tiempo/iu;

/**
 * @throws Problem `log.empty`, `log.tooLarge`, `log.columns`, `log.notCsv`, `log.decimals`, `log.noTime`, `log.timeBackward`,
 * `log.noTemperature`, `log.tooShort`
 */
export function parseLog(text: string, choices: LogChoices = {}): OvenLog {
  if (text.trim() === '') throw new Problem('log.empty', 'This log is empty: nothing was recorded.');
  if (text.length > mostLetters)
    throw new Problem(
      'log.tooLarge',
      'This log is larger than 30 million letters. Thin it out and read it again.',
    );
  const { parting, headings, rows } = table(text);
  const time = timeColumn(headings, rows, parting);
  const times = rawTimes(
    rows.map((row) => row[time.at] ?? ''),
    parting,
    time.clock,
  );
  const { seconds, unit, said } = inSeconds(times, headings[time.at]!, time.clock, choices.timeUnit ?? null);
  const notes: string[] = [];
  if (!said) notes.push(`The time column names no unit; taken as ${unit}.`);
  const columns = headings.flatMap((name, at) => {
    if (at === time.at || isOther(name)) return [];
    const column = temperatureColumn(
      name,
      rows.map((row) => row[at] ?? ''),
      seconds,
      parting,
      choices,
    );
    return column === null ? [] : [column];
  });
  if (columns.length === 0)
    throw new Problem(
      'log.noTemperature',
      'No column of this log reads like a temperature. Export time and temperatures as text.',
    );
  for (const { name, unit: temperatureUnit, unitSaid, lostReadings, gaps } of columns) {
    if (!unitSaid) notes.push(`“${name}” names no unit; taken as ${temperatureUnit}.`);
    if (lostReadings > 0) notes.push(`“${name}” has ${lostReadings} lines without a usable reading.`);
    if (gaps.length > 0)
      notes.push(
        `“${name}” has ${gaps.length === 1 ? '1 gap' : `${gaps.length} gaps`}, bridged by straight lines.`,
      );
  }
  return { timeUnit: unit, timeUnitSaid: said, columns, notes };
}

interface LogTable {
  readonly parting: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Headings are the last line of words before the first lines of numbers; what stands above them is left out. */
function table(text: string): LogTable {
  const { parting, rows } = logCells(text);
  const isData = (row: readonly string[]) =>
    row.length > 1 &&
    row.filter((cell) => cellNumber(cell, parting) !== null || clockSeconds(cell) !== null).length >= 2;
  const first = rows.findIndex((row, i) => isData(row) && rows.slice(i, i + leastRows).every(isData));
  if (first === -1)
    throw new Problem(
      'log.notCsv',
      'This is not a log that can be read: it needs lines with a time and at least one temperature, parted by commas, semicolons or tabs.',
    );
  const width = rows[first]!.length;
  keepWithin(
    'logColumns',
    width,
    'log.columns',
    `This log has ${width} columns. Export the time and the thermocouples that were used.`,
  );
  const above = rows[first - 1];
  const isWords = above?.some((cell) => /\p{L}/u.test(cell)) ?? false;
  const filled = rows[first]!.filter((cell) => cell !== '').length;
  const isHeading = above?.some((cell) => timeWords.test(cell) || /temp|°/iu.test(cell)) ?? false;
  if (parting === ',' && isHeading && above!.length > 1 && filled > above!.length)
    throw new Problem(
      'log.decimals',
      `The lines of this log have ${filled} numbers under ${above!.length} headings: its decimal commas can’t be told from the commas between columns. Export it with decimal points, or with semicolons between the columns.`,
    );
  const named = above !== undefined && above.length === width && isWords;
  const headings = Array.from({ length: width }, (_, at) =>
    named && above[at] !== '' ? above[at]! : `column ${at + 1}`,
  );
  return { parting, headings, rows: rows.slice(first) };
}

/** The column of times: clock times first, then a heading that says so, then the first column that never falls. */
function timeColumn(headings: readonly string[], rows: LogTable['rows'], parting: string) {
  const mostly = (at: number, fits: (cell: string) => boolean) =>
    rows.filter((row) => fits(row[at] ?? '')).length > 0.9 * rows.length;
  const clock = headings.findIndex((_, at) => mostly(at, (cell) => clockSeconds(cell) !== null));
  if (clock !== -1) return { at: clock, clock: true };
  const numbers = (at: number) => mostly(at, (cell) => cellNumber(cell, parting) !== null);
  const named = headings.findIndex((name, at) => timeWords.test(name) && numbers(at));
  if (named !== -1) return { at: named, clock: false };
  const rising = headings.findIndex((_, at) => {
    const values = rows.flatMap((row) => cellNumber(row[at] ?? '', parting) ?? []);
    return numbers(at) && values.every((value, i) => i === 0 || value > values[i - 1]!);
  });
  if (rising === -1)
    throw new Problem(
      'log.noTime',
      'No column of this log reads like a time: none rises from line to line. Export it with times.',
    );
  return { at: rising, clock: false };
}

/** Seconds since the first line; null where a line has no time. */
function inSeconds(
  times: readonly (number | null)[],
  heading: string,
  clock: boolean,
  chosen: 's' | 'min' | 'h' | null,
) {
  const known = times.filter((at): at is number => at !== null);
  const from = known[0] ?? 0;
  known.forEach((at, i) => {
    if (i > 0 && at < known[i - 1]!)
      throw new Problem(
        'log.timeBackward',
        `The times of this log run backward at its line ${i + 1} of readings. Sort it or cut it there.`,
      );
  });
  const named = clock ? null : (chosen ?? timeUnitIn(heading));
  const unit: LogTimeUnit = clock ? 'clock' : (named ?? guessTimeUnit(known.at(-1)! - from));
  const factor = unit === 'clock' ? 1 : secondsPer[unit];
  return {
    seconds: times.map((at) => (at === null ? null : (at - from) * factor)),
    unit,
    said: clock || named !== null,
  };
}

function temperatureColumn(
  name: string,
  cells: readonly string[],
  seconds: readonly (number | null)[],
  parting: string,
  { temperatureUnit }: LogChoices,
): LogColumn | null {
  const readings = cells.map((cell) => cellNumber(cell, parting));
  const raw = readings.filter((value): value is number => value !== null);
  if (raw.length < leastRows || raw.length < 0.2 * cells.length) return null;
  const said = temperatureUnit ?? temperatureUnitIn(name);
  const plausible = raw.filter((value) => Math.abs(value) < 800);
  const unit =
    said ??
    guessTemperatureUnit(
      plausible[0] ?? 0,
      plausible.reduce((a, b) => Math.max(a, b), -Infinity),
    );
  const points: [number, number][] = [];
  readings.forEach((value, i) => {
    const at = seconds[i] ?? null;
    if (value === null || at === null || points.at(-1)?.[0] === at) return;
    const celsius = toCelsius(value, unit);
    if (readable(celsius)) points.push([at, celsius]);
  });
  if (points.length < leastRows)
    throw new Problem(
      'log.tooShort',
      `“${name}” has fewer than three usable readings. Check the thermocouple and the unit.`,
    );
  return {
    name,
    unit,
    unitSaid: said !== null,
    curve: curveOf(points),
    lostReadings: cells.length - points.length,
    gaps: gapsOf(points.map(([at]) => at)),
  };
}

function gapsOf(timesS: readonly number[]): LogGap[] {
  const spacings = timesS.slice(1).map((at, i) => at - timesS[i]!);
  const usual = spacings.toSorted((a, b) => a - b)[Math.floor(spacings.length / 2)]!;
  const long = Math.max(leastGapS, gapSpacings * usual);
  return spacings.flatMap((span, i) => (span > long ? [{ fromS: timesS[i]!, untilS: timesS[i + 1]! }] : []));
}
