/** The oven run on paper: air, coldest laminate with its band, and when it may be opened. */
import type { Curve } from '../../core/cure/curve';
import { formatNumber } from '../../core/units/formatNumber';
import type { Drawing, Mark, Point } from './drawing';

export interface OvenCurveNumbers {
  readonly air: Curve;
  readonly coldest: Curve;
  /** The same place if the stone behaves otherwise. */
  readonly others: readonly Curve[];
  readonly heatedS: number;
  /** From the start; null while it is not known. */
  readonly openAtS: number | null;
  readonly demoldC: number;
  readonly targetsC: readonly number[];
}

const [widthMm, heightMm] = [80, 43];
const plot = { left: 8, right: 78, top: 3, bottom: 33 } as const;
const steps = 60;

const hours = (seconds: number) => {
  const minutes = Math.round(seconds / 60);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
};

/** Straight between its points; its ends go on level. */
function valueAt({ timesS, valuesC }: Curve, timeS: number): number {
  const after = timesS.findIndex((one) => one >= timeS);
  if (after === -1) return valuesC.at(-1) ?? 0;
  if (after === 0) return valuesC[0] ?? 0;
  const [fromS, toS] = [timesS[after - 1] ?? 0, timesS[after] ?? 0];
  const [fromC, toC] = [valuesC[after - 1] ?? 0, valuesC[after] ?? 0];
  return toS === fromS ? toC : fromC + ((toC - fromC) * (timeS - fromS)) / (toS - fromS);
}

export function ovenCurve(numbers: OvenCurveNumbers): Drawing {
  const { air, coldest, others, heatedS, openAtS, demoldC, targetsC } = numbers;
  const untilS = 1.05 * (openAtS ?? 1.2 * heatedS);
  const timesS = Array.from({ length: steps + 1 }, (_, at) => (untilS * at) / steps);
  const highC = Math.max(...targetsC, ...air.valuesC) + 5;
  const lowC = Math.min(20, ...coldest.valuesC);
  const x = (timeS: number) => plot.left + ((plot.right - plot.left) * timeS) / untilS;
  const y = (valueC: number) => plot.bottom - ((plot.bottom - plot.top) * (valueC - lowC)) / (highC - lowC);
  const along = (curve: Curve): readonly Point[] =>
    timesS.map((timeS) => [x(timeS), y(valueAt(curve, timeS))]);
  const all = [coldest, ...others];
  const edge = (pick: (...values: number[]) => number): Point[] =>
    timesS.map((timeS) => [x(timeS), y(pick(...all.map((curve) => valueAt(curve, timeS))))]);
  const level = (valueC: number): readonly Mark[] => [
    {
      kind: 'line',
      stroke: 'guide',
      points: [
        [plot.left, y(valueC)],
        [plot.right, y(valueC)],
      ],
    },
    { kind: 'text', at: [plot.left - 1, y(valueC) + 1], text: formatNumber(valueC, 0), anchor: 'end' },
  ];
  const moment = (timeS: number, words: string, anchor: 'start' | 'end', lower = 0): Mark => ({
    kind: 'text',
    at: [x(timeS), plot.bottom + 4.5 + lower],
    text: words,
    anchor,
  });
  const marks: readonly Mark[] = [
    { kind: 'face', points: [...edge(Math.max), ...edge(Math.min).toReversed()], fill: 'band' },
    ...[...new Set([...targetsC, demoldC])].flatMap(level),
    { kind: 'line', stroke: 'dial', points: along(air) },
    { kind: 'line', stroke: 'laminate', points: along(coldest) },
    {
      kind: 'line',
      stroke: 'outline',
      points: [
        [plot.left, plot.bottom],
        [plot.right, plot.bottom],
      ],
    },
    moment(0, '0:00', 'start'),
    moment(heatedS, `off at ${hours(heatedS)}`, 'end'),
    ...(openAtS === null ? [] : [moment(openAtS, `open at ${hours(openAtS)}`, 'end', 4)]),
  ];
  return {
    title: 'Oven air and coldest laminate, °C over h:min',
    told: `The oven heats for ${hours(heatedS)}; ${openAtS === null ? 'when it may be opened is not known' : `it may be opened at ${hours(openAtS)}, laminate under ${formatNumber(demoldC, 0)} °C`}.`,
    widthMm,
    heightMm,
    scale: null,
    marks,
  };
}
