/** Storage use in words: the browser counts two bytes for each unit of text. */
import { formatNumber } from '../../core/units/formatNumber';

/** e.g. "0.42 MB". */
export function sizeText(units: number): string {
  const megabytes = (2 * units) / 1e6;
  return `${formatNumber(megabytes, megabytes < 0.1 ? 3 : 2)} MB`;
}
