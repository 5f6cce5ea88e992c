/**
 * Strict reading of a number that a person typed. A wrong number at the bench costs a mold, so what could be read
 * in two ways is refused with a sentence instead of guessed at.
 */

export type ParsedNumber =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly message: string };

/** Spellings of a unit that a keyboard without the proper sign gives. */
const unitSpellings: Readonly<Record<string, readonly string[]>> = {
  'g/m²': ['g/m2', 'gsm'],
  'g/cm³': ['g/cm3', 'g/cc'],
  'mm²': ['mm2'],
  'mm³': ['mm3'],
  'cm²': ['cm2'],
  '°': ['deg', 'degrees'],
  '% of area': ['%'],
  in: ['"', 'inch', 'inches'],
};

const refuse = (message: string): ParsedNumber => ({ ok: false, message });

/** Takes the unit off the end. Returns the bare number text, or null when something else stands there. */
function withoutUnit(text: string, unit: string): string | null {
  const bare = /^[-+\d.,\s]*(?:[eE][-+]?\d+)?/u.exec(text)?.[0] ?? '';
  const rest = text.slice(bare.length).trim();
  if (rest === '') return bare.trim();
  const known = [unit, ...(unitSpellings[unit] ?? [])];
  return unit !== '' && known.some((one) => one.toLowerCase() === rest.toLowerCase()) ? bare.trim() : null;
}

/** Digit groups parted by spaces become plain digits; anything but groups of three is null. */
function withoutGroups(text: string): string | null {
  if (!/\s/u.test(text)) return text;
  return /^[-+]?\d{1,3}(?:\s\d{3})+(?:[.,]\d+)?$/u.test(text) ? text.replace(/\s/gu, '') : null;
}

/**
 * Reads a number with a decimal point or a decimal comma ("0.25", "0,25"), an optional sign (also the printed "−"),
 * spaces between groups of three digits, an exponent, and the field's own unit after it.
 *
 * Refused: empty text, two separators ("1.234,5"), a lone comma that could part thousands ("1,234"), a unit that
 * the field does not have, and numbers beyond the floating-point range.
 */
export function parseNumber(text: string, unit = ''): ParsedNumber {
  const trimmed = text.trim().replace(/−/gu, '-');
  if (trimmed === '') return refuse('Enter a number.');
  const bare = withoutUnit(trimmed, unit);
  if (bare === null || bare === '')
    return refuse(
      `“${text.trim()}” is not a number${unit === '' ? '' : ` in ${unit}`}. Write digits, as in 0.25.`,
    );
  const separators = bare.match(/[.,]/gu) ?? [];
  if (separators.length > 1)
    return refuse(`“${bare}” has more than one separator. Write one decimal point and no thousands mark.`);
  if (/^[-+]?[1-9]\d{0,2},\d{3}$/u.test(bare)) {
    const point = bare.replace(',', '.');
    const whole = bare.replace(',', '');
    return refuse(`“${bare}” can be read in two ways. Write ${point} or ${whole}.`);
  }
  const digits = withoutGroups(bare)?.replace(',', '.');
  if (digits === undefined || !/^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$/u.test(digits))
    return refuse(`“${text.trim()}” is not a number. Write digits, as in 0.25.`);
  const value = Number(digits);
  if (!Number.isFinite(value)) return refuse(`“${text.trim()}” is too large to work with.`);
  return { ok: true, value: value === 0 ? 0 : value };
}
