/** A figure's value as text, the same on the page, on paper and in the terminal. */
import type { Figure } from '../figure';
import { formatNumber, formatQuantity, notKnown, withUnit } from './formatNumber';

/** e.g. "0.90 mm", "120.0 × 64.0 × 18.5 mm", "not known"; the band, when there is one, is not part of it. */
export function formatFigure(figure: Pick<Figure, 'value' | 'unit' | 'decimals'>): string {
  const { value, unit, decimals } = figure;
  if (value === null) return notKnown;
  if (typeof value === 'string') return withUnit(value, unit);
  if (typeof value === 'number') return formatQuantity(value, decimals, unit);
  return withUnit(value.map((one) => formatNumber(one, decimals)).join(' × '), unit);
}

/** "0.20 to 0.27 mm", or '' for a figure without a band or with one too narrow to be seen. */
export function formatBand(figure: Pick<Figure, 'band' | 'unit' | 'decimals'>): string {
  if (figure.band === undefined) return '';
  const [low, high] = figure.band.map((end) => formatNumber(end, figure.decimals));
  return low === high ? '' : withUnit(`${low} to ${high}`, figure.unit);
}
