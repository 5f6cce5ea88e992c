/**
 * The maker's own material cards, shared by all projects: one entry in storage, apart from the projects. A card is
 * known by its name, because ids are given anew in every project.
 */
import * as z from 'zod/mini';
import { materialSchema, type Material } from '../steps/inputs/material';
import { checksumAgrees, checksumReason, withChecksum } from './checksum';
import type { MoveAside } from './keptAside';
import { materialLibraryKey } from './keys';
import { isJsonObject } from './json';
import { refused, type Outcome } from './outcome';
import { writeOutcomeOf } from './records';
import type { StoragePort } from './storagePort';

const libraryKind = 'mold-layup-materials';
/** The format that this app writes. Fields that a card of an older app lacks are filled by the card's schema. */
export const libraryFormat = 1;

export type LibraryOutcome =
  | { readonly outcome: 'ok'; readonly cards: readonly Material[] }
  /** Written by a later version of this app; to be left alone. */
  | { readonly outcome: 'newer'; readonly format: number }
  | { readonly outcome: 'damaged'; readonly reason: string };

export function encodeLibrary(cards: readonly Material[]): string {
  return JSON.stringify(withChecksum({ kind: libraryKind, format: libraryFormat, cards }));
}

/** Reads a saved text; never throws. */
export function decodeLibrary(text: string): LibraryOutcome {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { outcome: 'damaged', reason: 'the text breaks off or was changed' };
  }
  if (!isJsonObject(value) || value['kind'] !== libraryKind)
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

export interface MaterialLibraryOptions {
  readonly storage: StoragePort;
  readonly moveAside: MoveAside;
  /** The cards as they are now, by name. */
  readonly onCards: (cards: readonly Material[]) => void;
  /** Told in a plain sentence when the library could not be read. */
  readonly onTrouble: (note: string) => void;
}

export function createMaterialLibrary({ storage, moveAside, onCards, onTrouble }: MaterialLibraryOptions) {
  /** The saved cards; none when damaged (then kept aside), null when a newer app wrote them. */
  function read(): readonly Material[] | null {
    const text = storage.getItem(materialLibraryKey);
    if (text === null) return [];
    const loaded = decodeLibrary(text);
    if (loaded.outcome === 'ok') return loaded.cards;
    if (loaded.outcome === 'newer') {
      onTrouble(
        `The material library was saved by a newer version of the workbook (format ${loaded.format}). It is left as it is; update the app to use it.`,
      );
      return null;
    }
    const moved = moveAside(materialLibraryKey);
    onTrouble(
      `The material library cannot be read: ${loaded.reason}. ${moved ? 'It is kept aside and can be saved to disk.' : 'It stays where it is, because there is no room to keep it aside; free some space.'}`,
    );
    return moved ? [] : null;
  }

  function refresh(): void {
    onCards(read() ?? []);
  }

  /** Reads what is saved now, since another tab may have written, and writes the changed cards in one go. */
  function change(to: (cards: readonly Material[]) => readonly Material[]): Outcome {
    const former = read();
    if (former === null)
      return refused(
        'The material library cannot be changed, because it cannot be read; see the note above.',
      );
    const cards = to(former).toSorted((a, b) => a.name.localeCompare(b.name));
    try {
      storage.setItem(materialLibraryKey, encodeLibrary(cards));
    } catch (error) {
      return refused(
        writeOutcomeOf(error) === 'full'
          ? 'There is no room to save the material library; delete a project or a kept-aside file first.'
          : 'The browser did not let the material library be saved.',
      );
    }
    onCards(cards);
    return { done: true };
  }

  return {
    refresh,

    /** Takes the place of the card of the same name, if there is one. */
    save: (card: Material): Outcome => {
      if (card.name.trim() === '') return refused('A card needs a name before it can go into the library.');
      return change((cards) => [...cards.filter(({ name }) => name !== card.name), card]);
    },

    remove: (name: string): Outcome => change((cards) => cards.filter((card) => card.name !== name)),
  };
}
