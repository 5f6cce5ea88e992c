/** A figure's value as text, the same on the page, on paper and in the terminal. */
import { formatNumber, formatQuantity, notKnown, withUnit } from './formatNumber';

/** What of a figure is shown. */
interface ShownFigure {
  readonly value: number | string | readonly number[] | null;
  readonly unit: string;
  readonly decimals: number;
  readonly band?: readonly [number, number];
}

/**
 * Decimals to show: no more than the band supports. The last digit shown is worth at least a twentieth of the way from the
 * value to the nearer end of its band, and at most half of it (one or two uncertain digits, as is usual for measured
 * values; the limits are our own). A value on the very end of its band is judged by the width.
 */
export function shownDecimals({ value, band, decimals }: Omit<ShownFigure, 'unit'>): number {
  if (band === undefined || typeof value !== 'number') return decimals;
  const nearer = Math.min(Math.abs(value - band[0]), Math.abs(band[1] - value));
  const reach = nearer > 0 ? nearer : (band[1] - band[0]) / 2;
  if (!(reach > 0)) return decimals;
  return Math.max(0, Math.min(decimals, Math.ceil(-Math.log10(reach / 2))));
}

/** e.g. "0.90 mm", "120.0 × 64.0 × 18.5 mm", "not known"; the band, when there is one, is not part of it. */
export function formatFigure(figure: ShownFigure): string {
  const { value, unit, decimals } = figure;
  if (value === null) return notKnown;
  if (typeof value === 'string') return withUnit(value, unit);
  if (typeof value === 'number') return formatQuantity(value, shownDecimals(figure), unit);
  return withUnit(value.map((one) => formatNumber(one, decimals)).join(' × '), unit);
}

/** "0.20 to 0.27 mm", or '' for a figure without a band or with one too narrow to be seen. */
export function formatBand(figure: ShownFigure): string {
  if (figure.band === undefined) return '';
  const decimals = shownDecimals(figure);
  const [low, high] = figure.band.map((end) => formatNumber(end, decimals));
  return low === high ? '' : withUnit(`${low} to ${high}`, figure.unit);
}
