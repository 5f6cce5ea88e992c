/** A thermocouple log as it is kept with the run: thinned to what a chart can show, gaps left as they are. */
import type { Curve } from '../../../core/cure/curve';
import type { LaminatePlace } from '../../../core/cure/laminatePlace';
import { parseLog, type LogColumn } from '../../../core/cure/parseLog';
import type { OvenRun, OvenRunLog } from '../../../workbook';

/** Points kept per column; over a working day that is one every minute. */
const mostPoints = 600;
const mostColumns = 6;

/** @throws Problem `log.*` for a file that is no log */
export function keptLog(text: string, fileName: string): OvenRunLog {
  const { columns, notes } = parseLog(text);
  const kept = columns.slice(0, mostColumns);
  const laminate = coolest(kept);
  return {
    fileName,
    columns: kept.map(({ name, curve, gaps }) => ({ name, ...thinned(curve, gaps), gaps: [...gaps] })),
    remarks: [
      ...notes,
      ...(columns.length > mostColumns
        ? [`Only the first ${mostColumns} columns of temperatures are kept.`]
        : []),
    ],
    laminate,
    air: namedAir(kept, laminate),
    place: { kind: 'coldest' },
    startsAfterS: 0,
  };
}

function thinned(
  { timesS, valuesC }: Curve,
  gaps: LogColumn['gaps'],
): { timesS: number[]; valuesC: number[] } {
  const step = Math.max(1, Math.ceil(timesS.length / mostPoints));
  const ends = new Set(gaps.flatMap(({ fromS, untilS }) => [fromS, untilS]));
  const picks = timesS.flatMap((timeS, at) =>
    at % step === 0 || at === timesS.length - 1 || ends.has(timeS) ? [at] : [],
  );
  return { timesS: picks.map((at) => timesS[at] ?? 0), valuesC: picks.map((at) => valuesC[at] ?? 0) };
}

/** The laminate is the last to get warm: the column with the lowest mean is taken first, the maker corrects it. */
function coolest(columns: readonly LogColumn[]): number {
  const means = columns.map(
    ({ curve: { valuesC } }) => valuesC.reduce((sum, one) => sum + one, 0) / valuesC.length,
  );
  return Math.max(0, means.indexOf(Math.min(...means)));
}

/** A column whose heading says that it is the oven's; the maker corrects it. */
function namedAir(columns: readonly LogColumn[], laminate: number): number | null {
  const at = columns.findIndex(
    ({ name }, column) => column !== laminate && /\b(?:air|oven|chamber)\b/iu.test(name),
  );
  return at === -1 ? null : at;
}

/** Curve of a column on the clock of the oven. */
export function columnCurve({ columns, startsAfterS }: OvenRunLog, at: number): Curve | null {
  const column = columns[at];
  if (column === undefined) return null;
  return { timesS: column.timesS.map((timeS) => timeS + startsAfterS), valuesC: column.valuesC };
}

/** Curve of the oven's air; null where none was logged. */
export const airCurve = (log: OvenRunLog): Curve | null =>
  log.air === null ? null : columnCurve(log, log.air);

/** Where the prediction is wanted besides its coldest and hottest places. */
export function thermocoupleOf({ log }: OvenRun): LaminatePlace | null {
  return log === null || log.place.kind === 'coldest' ? null : log.place;
}
