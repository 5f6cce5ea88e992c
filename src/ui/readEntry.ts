import { formatNumber } from '../core/units/formatNumber';
import { parseNumber } from '../core/units/parseNumber';

/** What a number entry must keep to. */
export interface NumberLimits {
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly decimals: number;
  readonly whole?: boolean;
}

export type ReadEntry =
  { readonly ok: true; readonly value: number | null } | { readonly ok: false; readonly message: string };

/** A limit with no more decimals than it has. */
const showLimit = (limit: number) =>
  Number.isInteger(limit) ? formatNumber(limit, 0) : formatNumber(limit, 4).replace(/0+$/u, '');

/** Reads a typed number against its limits; empty is null where the entry may be left empty. */
export function readEntry(text: string, limits: NumberLimits, mayBeEmpty: boolean): ReadEntry {
  if (mayBeEmpty && text.trim() === '') return { ok: true, value: null };
  const parsed = parseNumber(text, limits.unit);
  if (!parsed.ok) return parsed;
  const { value } = parsed;
  const unit = limits.unit === '' ? '' : ` ${limits.unit}`;
  if (limits.whole && !Number.isInteger(value)) return { ok: false, message: 'Enter a whole number.' };
  if (value < limits.min)
    return { ok: false, message: `Too small: at least ${showLimit(limits.min)}${unit}.` };
  if (value > limits.max)
    return { ok: false, message: `Too large: at most ${showLimit(limits.max)}${unit}.` };
  return { ok: true, value };
}

/** The value as it stands in the field: the usual decimals, or more when the maker typed more. */
export function entryText(value: number | null, decimals: number): string {
  if (value === null) return '';
  const exact = String(value);
  const typedDecimals = /^-?\d+(?:\.(\d+))?$/u.exec(exact)?.[1]?.length ?? 0;
  return /e/iu.test(exact) ? exact : value.toFixed(Math.max(decimals, Math.min(typedDecimals, 6)));
}
