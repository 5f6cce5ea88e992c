/** Small helpers that every step report builds its figures and percentages with. */
import type { Figure, FigureStatus } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { SourceKey } from '../../core/sources';

export interface FigureSpec {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly decimals: number;
  readonly status?: FigureStatus;
  readonly source?: SourceKey;
  /** Paths of the inputs that it shows as they were entered. */
  readonly entries?: readonly string[];
}

/** A figure with its working; status "computed" and no source unless the spec says otherwise. */
export function figure(spec: FigureSpec, value: Figure['value'], ...working: readonly string[]): Figure {
  const { id, label, unit, decimals, status = 'computed', source = null, entries } = spec;
  const shown = { id, label, value, unit, decimals, working, status, source };
  return entries === undefined ? shown : { ...shown, entries };
}

/** A figure that cannot be known yet, with the reason as its working. */
export function unknownFigure(spec: FigureSpec, why: string): Figure {
  return figure(spec, null, why);
}

/** A figure with its plausible ends, in either order. */
export function withBand(one: Figure, end: number, otherEnd: number): Figure {
  return { ...one, band: [Math.min(end, otherEnd), Math.max(end, otherEnd)] };
}

/** A figure that may be off by a share of itself either way; 0 leaves it without a band. */
export function withScatter(one: Figure, share: number): Figure {
  if (share === 0 || typeof one.value !== 'number') return one;
  return withBand(one, (1 - share) * one.value, (1 + share) * one.value);
}

/** 0.1234 as 12.34; null stays null. */
export function percent(share: number | null): number | null {
  return share === null ? null : share * 100;
}

/** "3 facets", "1 facet". */
export function count(number: number, one: string, many = `${one}s`): string {
  return `${formatNumber(number, 0)} ${number === 1 ? one : many}`;
}
