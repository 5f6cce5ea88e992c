/** What a maker does on the shelf: cards put there, changed, deleted and put back; hours of a roll; the shelf as a file. */
import { explain } from './inputEdit';
import { refused } from './outcome';
import {
  shelfCardSchema,
  shelfCardsSchema,
  sameValues,
  type RollSession,
  type ShelfCard,
} from './shelfCards';
import type { Shelf } from './shelf';
import { decodeShelf, encodeShelf } from './shelfText';
import type { WorkbookStore } from './state';
import type { ShelfActions } from './workbookApi';

export interface ShelfActionsParts {
  readonly shelf: Shelf;
  readonly store: WorkbookStore;
  readonly newId: () => string;
  /** ISO 8601, UTC. */
  readonly now: () => string;
}

const shelfFileExtension = '.shelf.json';

const cardGone = refused('This card is no longer on the shelf: it was deleted in another tab.');

function withNew(cards: readonly ShelfCard[], fresh: readonly ShelfCard[]) {
  const whole = [...cards, ...fresh];
  return shelfCardsSchema.safeParse(whole).success
    ? ({ done: true, cards: whole } as const)
    : refused('The shelf takes no more cards; delete some that you no longer need.');
}

export function createShelfActions(parts: ShelfActionsParts): ShelfActions {
  return { ...adding(parts), ...deleting(parts), ...changing(parts), ...files(parts) };
}

type Adding = Pick<ShelfActions, 'addCard' | 'putCopyOnShelf'>;

const adding = ({ shelf, newId, now }: ShelfActionsParts): Adding => ({
  async addCard({ kind, name, note = '', values = {} }) {
    const card: ShelfCard = { id: newId(), kind, name: name.trim(), note, changedAt: now(), values, log: [] };
    const wrong = whyNoCard(card);
    if (wrong !== null) return refused(wrong);
    const outcome = await shelf.change((cards) => withNew(cards, [card]));
    return outcome.done ? { done: true, card } : outcome;
  },

  putCopyOnShelf({ cardId, kind, name, values }) {
    const card: ShelfCard = { id: cardId, kind, name, note: '', changedAt: now(), values, log: [] };
    return shelf.change((cards) =>
      cards.some(({ id }) => id === cardId)
        ? refused('This card is on the shelf already.')
        : withNew(cards, [card]),
    );
  },
});

type Deleting = Pick<ShelfActions, 'deleteCard' | 'undeleteCard'>;

const deleting = ({ shelf, store }: ShelfActionsParts): Deleting => ({
  async deleteCard(id) {
    let deleted: ShelfCard | undefined;
    const outcome = await shelf.change((cards) => {
      deleted = cards.find((card) => card.id === id);
      return deleted === undefined
        ? cardGone
        : { done: true, cards: cards.filter((card) => card !== deleted) };
    });
    if (!outcome.done || deleted === undefined) return outcome;
    const { deletedCards } = store.getState();
    store.setState({ deletedCards: [deleted, ...deletedCards] });
    return outcome;
  },

  async undeleteCard(id) {
    const card = store.getState().deletedCards.find((one) => one.id === id);
    if (card === undefined) return refused('There is no delete to undo.');
    const outcome = await shelf.change((cards) =>
      cards.some((one) => one.id === id) ? { done: true, cards } : withNew(cards, [card]),
    );
    if (outcome.done)
      store.setState(({ deletedCards }) => ({ deletedCards: deletedCards.filter((one) => one !== card) }));
    return outcome;
  },
});

type Changing = Pick<ShelfActions, 'changeCard' | 'logHours' | 'removeSession'>;

function changing({ shelf, newId, now }: ShelfActionsParts): Changing {
  const changeCard: ShelfActions['changeCard'] = (id, recipe) =>
    shelf.change((cards) => {
      const former = cards.find((card) => card.id === id);
      if (former === undefined) return cardGone;
      const changed = { ...recipe(former), id, kind: former.kind, changedAt: now() };
      const wrong = whyNoCard(changed);
      if (wrong !== null) return refused(wrong);
      return { done: true, cards: cards.map((card) => (card === former ? changed : card)) };
    });
  return {
    changeCard,
    logHours(id, hoursH, project) {
      const session: RollSession = { id: newId(), at: now(), hoursH, project };
      return changeCard(id, (card) => ({ ...card, log: [...card.log, session] }));
    },
    removeSession: (id, sessionId) =>
      changeCard(id, (card) => ({ ...card, log: card.log.filter((one) => one.id !== sessionId) })),
  };
}

type Files = Pick<ShelfActions, 'exportShelf' | 'importShelf'>;

const files = ({ shelf, newId }: ShelfActionsParts): Files => ({
  exportShelf() {
    const cards = shelf.read();
    if (cards === null) return refused('The shelf cannot be read; see the note above.');
    return { done: true, file: { fileName: `My shelf${shelfFileExtension}`, text: encodeShelf(cards) } };
  },

  async importShelf(text) {
    const loaded = decodeShelf(text);
    if (loaded.outcome === 'newer')
      return refused(
        `This shelf was saved by a newer version of the workbook (format ${loaded.format}). Update the app to open it.`,
      );
    if (loaded.outcome === 'damaged')
      return refused(`This file cannot be put on the shelf: ${loaded.reason}. Nothing was changed.`);
    let added = 0;
    const outcome = await shelf.change((cards) => {
      const fresh = loaded.cards.flatMap((card) => notYetAmong(cards, card, newId));
      added = fresh.length;
      return withNew(cards, fresh);
    });
    return outcome.done ? { done: true, added } : outcome;
  },
});

/** A card of a file beside those there are: what is there already stays, another of the same id gets an id of its own. */
function notYetAmong(
  cards: readonly ShelfCard[],
  card: ShelfCard,
  newId: () => string,
): readonly ShelfCard[] {
  const own = cards.find(({ id }) => id === card.id);
  if (own === undefined) return [card];
  const isSame =
    own.name === card.name &&
    own.note === card.note &&
    sameValues(own.values, card.values) &&
    sameLog(own, card);
  return isSame ? [] : [{ ...card, id: newId() }];
}

const sameLog = ({ log }: ShelfCard, other: ShelfCard) =>
  log.length === other.log.length && log.every(({ id }, at) => id === other.log[at]?.id);

/** Why something cannot stand on the shelf, for the maker; null when it can. */
function whyNoCard(card: ShelfCard): string | null {
  const issue = shelfCardSchema.safeParse(card).error?.issues[0];
  if (issue === undefined) return null;
  const [what, path] = issue.path.map(String);
  if (what === 'name') return 'A card needs a name of at most 120 characters.';
  if (what === 'note') return 'This note is too long for a card: 2000 characters are the most.';
  if (what === 'log') return 'Hours out of the freezer must be a number from 0.01 to 10000.';
  return explain((path ?? '').replace('.N.', '.0.').split('.'));
}
