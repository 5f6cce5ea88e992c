/** Numbers in the sentences of this step. */
import { formatNumber } from '../../core/units/formatNumber';

export const mm = (value: number, decimals = 2) => `${formatNumber(value, decimals)} mm`;
export const newtons = (value: number) => `${formatNumber(value, 0)} N`;
export const kilopascals = (value: number) => `${formatNumber(value, 0)} kPa`;
export const areaPercent = (share: number) => `${formatNumber(100 * share, 1)} %`;

/** "900 to 1100 N", or one number when both ends read the same. */
export function between(low: number, high: number, decimals: number, unit: string): string {
  const [from, to] = [
    formatNumber(Math.min(low, high), decimals),
    formatNumber(Math.max(low, high), decimals),
  ];
  return from === to ? `${from} ${unit}` : `${from} to ${to} ${unit}`;
}
