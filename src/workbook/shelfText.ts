/** The saved text of the shelf: an envelope with a format number and a checksum around its cards. */
import { checksumAgrees, checksumReason, withChecksum } from './checksum';
import { isJsonObject } from './json';
import { shelfCardsSchema, type ShelfCard } from './shelfCards';

const shelfKind = 'mold-layup-shelf';
/** The format that this app writes. */
export const shelfFormat = 1;

export type ShelfOutcome =
  | { readonly outcome: 'ok'; readonly cards: readonly ShelfCard[] }
  /** Written by a later version of this app; to be left alone. */
  | { readonly outcome: 'newer'; readonly format: number }
  | { readonly outcome: 'damaged'; readonly reason: string };

const damaged = (reason: string): ShelfOutcome => ({ outcome: 'damaged', reason });

export function encodeShelf(cards: readonly ShelfCard[]): string {
  return JSON.stringify(withChecksum({ kind: shelfKind, format: shelfFormat, cards }));
}

/** Reads a saved text; never throws. */
export function decodeShelf(text: string): ShelfOutcome {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/u, ''));
  } catch {
    return damaged('the text breaks off or was changed');
  }
  if (!isJsonObject(value) || value['kind'] !== shelfKind)
    return damaged('it is not a shelf of this workbook');
  if (!checksumAgrees(value)) return damaged(checksumReason);
  const { format } = value;
  if (typeof format !== 'number' || !Number.isInteger(format) || format < 1)
    return damaged('its format number is missing');
  if (format > shelfFormat) return { outcome: 'newer', format };
  const cards = shelfCardsSchema.safeParse(value['cards']);
  if (!cards.success) {
    const paths = cards.error.issues.map(({ path }) => path.join('.') || 'the whole list');
    return damaged(`not as it should be: ${[...new Set(paths)].slice(0, 5).join(', ')}`);
  }
  const ids = new Set(cards.data.map(({ id }) => id));
  return ids.size === cards.data.length
    ? { outcome: 'ok', cards: cards.data }
    : damaged('two of its cards have one id');
}
