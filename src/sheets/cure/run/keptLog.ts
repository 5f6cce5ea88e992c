/** A thermocouple log as it is kept with the run: thinned to what a chart can show, gaps left as they are. */
import type { Curve } from '../../../core/cure/curve';
import { parseLog, type LogColumn } from '../../../core/cure/parseLog';
import type { OvenRunLog } from '../../../workbook';

/** Points kept per column; over a working day that is one every minute. */
const mostPoints = 600;
const mostColumns = 6;

/** @throws Problem `log.*` for a file that is no log */
export function keptLog(text: string, fileName: string): OvenRunLog {
  const { columns, notes } = parseLog(text);
  const kept = columns.slice(0, mostColumns);
  return {
    fileName,
    columns: kept.map(({ name, curve, gaps }) => ({ name, ...thinned(curve, gaps), gaps: [...gaps] })),
    remarks: [
      ...notes,
      ...(columns.length > mostColumns
        ? [`Only the first ${mostColumns} columns of temperatures are kept.`]
        : []),
    ],
    laminate: coolest(kept),
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

/** Curve of a column on the clock of the oven. */
export function columnCurve({ columns, startsAfterS }: OvenRunLog, at: number): Curve | null {
  const column = columns[at];
  if (column === undefined) return null;
  return { timesS: column.timesS.map((timeS) => timeS + startsAfterS), valuesC: column.valuesC };
}
