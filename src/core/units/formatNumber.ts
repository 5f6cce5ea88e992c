/**
 * Numbers as the page and the paper show them: fixed decimals, a decimal point, a narrow no-break space between
 * groups of three digits from 10 000 on, and a true minus sign. The runtime's own formatter is not used: its
 * answer depends on the machine's language, and it lacks units of the trade.
 */

const narrowSpace = '\u202f';
const minusSign = '\u2212';

/** What stands in place of a number that cannot be known yet. */
export const notKnown = 'not known';

/** `value` with `decimals` places. Throws on NaN and infinity: those are defects, never something to show. */
export function formatNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`cannot show ${String(value)} as a number`);
  const fixed = wholePlaces(Math.abs(value), decimals);
  const [whole = '0', fraction] = fixed.split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(?:\d{3})+$)/gu, narrowSpace) : whole;
  const sign = value < 0 && /[1-9]/u.test(fixed) ? minusSign : '';
  return sign + grouped + (fraction === undefined ? '' : `.${fraction}`);
}

/** toFixed turns to exponents at 1e21, where the whole number is exact anyway. */
function wholePlaces(size: number, decimals: number): string {
  return size < 1e21 ? size.toFixed(decimals) : BigInt(size).toString();
}

/** The unit as it stands after a number: a degree sign directly, everything else after a narrow space. */
export function withUnit(text: string, unit: string): string {
  if (unit === '') return text;
  return unit === '°' ? text + unit : text + narrowSpace + unit;
}

/** `value` with its unit, or "not known" for null. */
export function formatQuantity(value: number | null, decimals: number, unit: string): string {
  return value === null ? notKnown : withUnit(formatNumber(value, decimals), unit);
}
