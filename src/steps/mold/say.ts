/** How the mold step writes quantities and figures. */
import type { Figure, FigureStatus } from '../../core/figure';
import type { NumberSpec } from '../kit/inputTable';
import { formatNumber } from '../../core/units/formatNumber';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import type { Answer } from '../stone/work';
import type { KnownNumber } from '../stone/stoneInUse';

export const mm = (value: number, decimals = 1) => `${formatNumber(value, decimals)} mm`;
export const ml = (value: number) => `${formatNumber(value, 1)} mL`;
export const grams = (value: number) => `${formatNumber(value, 0)} g`;
export const celsius = (value: number) => `${formatNumber(value, 0)} °C`;

/** A figure from an answer, or with the answer's reason. */
export function figureFrom<Value>(
  spec: FigureSpec,
  answer: Answer<Value>,
  make: (value: Value) => Figure,
): Figure {
  return answer.known ? make(answer.value) : unknownFigure(spec, answer.why);
}

/** A number of card, bag or measurement as it stands. */
export function knownFigure(spec: FigureSpec, number: KnownNumber, ...working: readonly string[]): Figure {
  const shown = figure(
    {
      ...spec,
      status: number.status,
      ...(number.source === null ? {} : { source: number.source }),
      ...(number.entry === null ? {} : { entries: [number.entry] }),
    },
    number.value,
    `${number.how.charAt(0).toUpperCase()}${number.how.slice(1)}${number.band === null ? '' : '; your bag or a measurement replaces it'}.`,
    ...working,
  );
  return number.band === null ? shown : { ...shown, band: number.band };
}

/** A ready-made value that nobody has touched is the status it came with; any other is the maker's own. */
export function entryStatus(value: number, spec: NumberSpec, readyMade: FigureStatus): FigureStatus {
  return value === spec.default ? readyMade : 'your entry';
}

/** The least certain of several ways of knowing. */
export function leastCertain(...statuses: readonly FigureStatus[]): FigureStatus {
  const order: readonly FigureStatus[] = [
    'from memory',
    'common practice',
    'your entry',
    'supplier’s sheet',
    'computed',
    'published',
    'measured',
  ];
  return order.find((status) => statuses.includes(status)) ?? 'computed';
}
