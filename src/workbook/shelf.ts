/**
 * The shop's shelf: one entry in storage, apart from the projects. Every change reads what is saved now and writes it
 * back under a lock, since other tabs change it too.
 */
import type { MoveAside } from './keptAside';
import { materialLibraryKey, shelfKey } from './keys';
import { decodeLibrary, rollOf } from './materialLibrary';
import { refused, type Outcome } from './outcome';
import { writeOutcomeOf } from './records';
import { sameValues, shelfCardsSchema, type ShelfCard } from './shelfCards';
import { decodeShelf, encodeShelf } from './shelfText';
import type { StoragePort } from './storagePort';

export interface ShelfOptions {
  readonly storage: StoragePort;
  readonly moveAside: MoveAside;
  /** Runs an action while no other tab changes the shelf; null when one does. */
  readonly alone: <Result>(action: () => Result) => Promise<Result | null>;
  readonly newId: () => string;
  /** ISO 8601, UTC. */
  readonly now: () => string;
  /** The cards as they are now, by kind and name. */
  readonly onCards: (cards: readonly ShelfCard[]) => void;
  /** Told in a plain sentence when something saved could not be read. */
  readonly onTrouble: (note: string) => void;
}

export type Shelf = ReturnType<typeof createShelf>;
export type ChangeCards = (cards: readonly ShelfCard[]) => Outcome<{ cards: readonly ShelfCard[] }>;

const cannotChange = 'The shelf cannot be changed, because it cannot be read; see the note above.';

export function createShelf({ storage, moveAside, alone, newId, now, onCards, onTrouble }: ShelfOptions) {
  /** What to do with a text that is no shelf or library of this app; the cards to go on with, null to leave it alone. */
  function unreadable(
    what: string,
    key: string,
    loaded: { readonly outcome: 'newer'; readonly format: number } | { outcome: 'damaged'; reason: string },
  ): readonly never[] | null {
    if (loaded.outcome === 'newer') {
      onTrouble(
        `${what} was saved by a newer version of the workbook (format ${loaded.format}). It is left as it is; update the app to use it.`,
      );
      return null;
    }
    const moved = moveAside(key);
    onTrouble(
      `${what} cannot be read: ${loaded.reason}. ${moved ? 'It is kept aside and can be saved to disk.' : 'It stays where it is, because there is no room to keep it aside; free some space.'}`,
    );
    return moved ? [] : null;
  }

  /** The saved cards; none when damaged (then kept aside), null when they are to be left alone. */
  function read(): readonly ShelfCard[] | null {
    const text = storage.getItem(shelfKey);
    if (text === null) return [];
    const loaded = decodeShelf(text);
    return loaded.outcome === 'ok' ? loaded.cards : unreadable('The shelf', shelfKey, loaded);
  }

  /** Why it was not written; null when it was. */
  function write(cards: readonly ShelfCard[]): string | null {
    try {
      storage.setItem(shelfKey, encodeShelf(cards));
      return null;
    } catch (error) {
      return writeOutcomeOf(error) === 'full'
        ? 'There is no room to save the shelf; delete a project or a kept-aside file first. What was saved before is untouched.'
        : 'The browser did not let the shelf be saved. What was saved before is untouched.';
    }
  }

  function refresh(): void {
    onCards(read() ?? []);
  }

  /** The library of an app before the shelf becomes rolls. It goes only after they are saved. */
  function takeInLibrary(): void {
    const text = storage.getItem(materialLibraryKey);
    const cards = text === null ? null : read();
    if (text === null || cards === null) return;
    const loaded = decodeLibrary(text);
    if (loaded.outcome !== 'ok') {
      unreadable('The material library', materialLibraryKey, loaded);
      return;
    }
    const isThere = (roll: ShelfCard) =>
      cards.some((card) => card.name === roll.name && sameValues(card.values, roll.values));
    const rolls = loaded.cards.map((card) => rollOf(card, newId(), now())).filter((roll) => !isThere(roll));
    const whole = sorted([...cards, ...rolls]);
    const trouble = shelfCardsSchema.safeParse(whole).success
      ? write(whole)
      : 'The shelf takes no more cards: the material library stays where it is.';
    if (trouble === null) storage.removeItem(materialLibraryKey);
    else onTrouble(trouble);
  }

  async function change(to: ChangeCards): Promise<Outcome> {
    const outcome = await alone((): Outcome => {
      const former = read();
      if (former === null) return refused(cannotChange);
      const changed = to(former);
      if (!changed.done) return changed;
      const cards = sorted(changed.cards);
      const trouble = write(cards);
      if (trouble !== null) return refused(trouble);
      onCards(cards);
      return { done: true };
    });
    return outcome ?? refused('Another tab is changing the shelf at this moment. Try again.');
  }

  return {
    refresh,
    start(): void {
      takeInLibrary();
      refresh();
    },
    read,
    change,
  };
}

const sorted = (cards: readonly ShelfCard[]): readonly ShelfCard[] =>
  cards.toSorted(
    (a, b) => a.kind.localeCompare(b.kind) || a.name.localeCompare(b.name) || a.id.localeCompare(b.id),
  );
