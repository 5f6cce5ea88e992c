/** A temperature over time: linear between points; two points at the same time are a step. */
import { Problem } from '../problem';

export interface Curve {
  /** Seconds, never falling. */
  readonly timesS: readonly number[];
  readonly valuesC: readonly number[];
}

/**
 * A checked curve from [time s, temperature °C] points.
 * @throws Problem `cure.curve`
 */
export function curveOf(points: readonly (readonly [number, number])[]): Curve {
  if (points.length < 2)
    throw new Problem('cure.curve', 'A temperature curve needs at least two points in time.');
  points.forEach(([timeS, valueC], i) => {
    const before = points[i - 1]?.[0] ?? timeS;
    if (!Number.isFinite(timeS) || !Number.isFinite(valueC) || timeS < before)
      throw new Problem(
        'cure.curve',
        `Point ${i + 1} of the temperature curve needs a temperature and a time that is not before the point above it.`,
      );
  });
  return { timesS: points.map(([timeS]) => timeS), valuesC: points.map(([, valueC]) => valueC) };
}

/** Index of the last point at or before `timeS`; 0 before the first. */
function lastPointAt({ timesS }: Curve, timeS: number): number {
  let [low, high] = [0, timesS.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if (timesS[middle]! <= timeS) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Value at a time; after a step its later value. Before the first and past the last point it stays as there. */
export function valueAt(curve: Curve, timeS: number): number {
  const { timesS, valuesC } = curve;
  const at = lastPointAt(curve, timeS);
  const from = timesS[at]!;
  const until = timesS[at + 1];
  if (until === undefined || timeS <= from) return valuesC[at]!;
  return valuesC[at]! + ((timeS - from) / (until - from)) * (valuesC[at + 1]! - valuesC[at]!);
}

export function highestC(curve: Curve): number {
  return curve.valuesC.reduce((high, value) => Math.max(high, value), -Infinity);
}

export const endOf = (curve: Curve): number => curve.timesS[curve.timesS.length - 1]!;

/** When the curve first stands at or over `levelC`, not before `fromS`; null when it never does. */
export function firstReachS(curve: Curve, levelC: number, fromS: number = -Infinity): number | null {
  const { timesS, valuesC } = curve;
  if (fromS > -Infinity && valueAt(curve, fromS) >= levelC) return Math.max(fromS, timesS[0]!);
  for (let i = 0; i < timesS.length; i++) {
    if (timesS[i]! < fromS || valuesC[i]! < levelC) continue;
    const before = valuesC[i - 1];
    if (before === undefined || before >= levelC) return timesS[i]!;
    const span = timesS[i]! - timesS[i - 1]!;
    return Math.max(fromS, timesS[i - 1]! + (span * (levelC - before)) / (valuesC[i]! - before));
  }
  return null;
}

/** Seconds that the curve spends at or over `levelC`. */
export function timeOverS({ timesS, valuesC }: Curve, levelC: number): number {
  let sum = 0;
  for (let i = 1; i < timesS.length; i++) {
    const span = timesS[i]! - timesS[i - 1]!;
    const [low, high] = [Math.min(valuesC[i - 1]!, valuesC[i]!), Math.max(valuesC[i - 1]!, valuesC[i]!)];
    if (low >= levelC) sum += span;
    else if (high > levelC) sum += (span * (high - levelC)) / (high - low);
  }
  return sum;
}

/** The curve up to a time: its last point lies there, between the two that stand round it. */
export function upTo(curve: Curve, untilS: number): Curve {
  const { timesS, valuesC } = curve;
  const count = timesS.findIndex((timeS) => timeS > untilS);
  if (count <= 0) return curve;
  return {
    timesS: [...timesS.slice(0, count), untilS],
    valuesC: [...valuesC.slice(0, count), valueAt(curve, untilS)],
  };
}

/** Mean between two times, `untilS` after `fromS`. */
export function meanBetween(curve: Curve, fromS: number, untilS: number): number {
  const { timesS, valuesC } = curve;
  let sum = 0;
  let atS = fromS;
  let value = valueAt(curve, fromS);
  for (let i = lastPointAt(curve, fromS) + 1; i < timesS.length && timesS[i]! < untilS; i++) {
    const next = timesS[i]!;
    // Of two points at one time the first ends the span before the step, the second starts the span after it.
    sum += (next - atS) * (value + valuesC[i]!) * 0.5;
    atS = next;
    value = valuesC[i]!;
  }
  const end = valueBefore(curve, untilS);
  return (sum + (untilS - atS) * (value + end) * 0.5) / (untilS - fromS);
}

/** Value at a time; before a step its earlier value. */
function valueBefore(curve: Curve, timeS: number): number {
  const { timesS, valuesC } = curve;
  const at = timesS.indexOf(timeS, Math.max(0, lastPointAt(curve, timeS) - 8));
  return at === -1 ? valueAt(curve, timeS) : valuesC[at]!;
}
