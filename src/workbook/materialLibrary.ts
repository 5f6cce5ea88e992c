/** The library of material cards that apps before the shelf saved for all projects: read once, to become rolls on the shelf. */
import * as z from 'zod/mini';
import { materialSchema, type Material } from '../steps/inputs/material';
import { originOfEntry } from '../steps/shared/origins';
import { checksumAgrees, checksumReason } from './checksum';
import { isJsonObject } from './json';
import { longestName, trimmedName } from './names';
import type { CardValues, ShelfCard } from './shelfCards';
import { kindsOfCards, rowAt } from './shelfKinds';

export type LibraryOutcome =
  | { readonly outcome: 'ok'; readonly cards: readonly Material[] }
  /** Written by a later version of this app; to be left alone. */
  | { readonly outcome: 'newer'; readonly format: number }
  | { readonly outcome: 'damaged'; readonly reason: string };

const libraryFormat = 1;

/** Reads a saved text; never throws. */
export function decodeLibrary(text: string): LibraryOutcome {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { outcome: 'damaged', reason: 'the text breaks off or was changed' };
  }
  if (!isJsonObject(value) || value['kind'] !== 'mold-layup-materials')
    return { outcome: 'damaged', reason: 'it is not a material library' };
  if (!checksumAgrees(value)) return { outcome: 'damaged', reason: checksumReason };
  const { format } = value;
  if (typeof format !== 'number' || !Number.isInteger(format) || format < 1)
    return { outcome: 'damaged', reason: 'its format number is missing' };
  if (format > libraryFormat) return { outcome: 'newer', format };
  const cards = z.array(materialSchema).safeParse(value['cards']);
  if (cards.success) return { outcome: 'ok', cards: cards.data };
  const paths = cards.error.issues.map(({ path }) => path.join('.') || 'the whole list');
  return {
    outcome: 'damaged',
    reason: `not as it should be: ${[...new Set(paths)].slice(0, 5).join(', ')}`,
  };
}

/** A card of the library as a roll; a name that is too long for a card stands whole in its note. */
export function rollOf(material: Material, id: string, changedAt: string): ShelfCard {
  const { fills, measured } = kindsOfCards.roll;
  const given = fills.flatMap((path) => {
    const value = material[path.slice(path.lastIndexOf('.') + 1) as keyof Material];
    if (value === null || value === '') return [];
    const origin = originOfEntry(value === rowAt(path).start, measured.includes(path));
    return [[path, { value, origin }] as const];
  });
  const values: CardValues = Object.fromEntries(given);
  const name = trimmedName(material.name);
  const note = name.length > longestName ? name.slice(0, 2000) : '';
  return {
    id,
    kind: 'roll',
    name: name.slice(0, longestName).trim() || 'Roll',
    note,
    changedAt,
    values,
    log: [],
  };
}
