/** Cards in a project: filling its inputs from one, keeping the frozen copy, and where its entries come from. */
import { originOfEntry, type Origins, type ValueOrigin } from '../steps/shared/origins';
import { inputTables, type ProjectInputs } from '../steps/inputs/project';
import { startOf, type InputTable } from '../steps/kit/inputTable';
import { editInputs } from './inputEdit';
import { isJsonObject, type JsonObject } from './json';
import { longestName, trimmedName } from './names';
import { refused, type Outcome } from './outcome';
import type { Project } from './project';
import { valuesToTake, type CardCopy, type CardValues, type ShelfCard } from './shelfCards';
import { kindsOfCards, notSaid, rowAt, type CardKind, type KindOfCard } from './shelfKinds';

type Cards = Pick<Project, 'inputs' | 'cards'>;

/** One thing in a project that a card can fill: an entry of its kind's list, or the inputs that a project has once. */
export interface CardPlace {
  /** null where the kind fills no list. */
  readonly entryId: string | null;
  /** Position in the list; 0 where there is none. */
  readonly position: number;
  /** What it is called in the project; '' where it has no name there. */
  readonly name: string;
  /** The copy that it was filled from. */
  readonly copy: CardCopy | null;
}

function entriesOf(inputs: ProjectInputs, kind: CardKind): readonly JsonObject[] {
  const { list } = kindsOfCards[kind];
  const entries = list === null ? [] : valueAt(inputs, list);
  return Array.isArray(entries) ? entries.filter(isJsonObject) : [];
}

function valueAt(inputs: ProjectInputs, path: string): unknown {
  let node: unknown = inputs;
  for (const key of path.split('.')) node = (node as JsonObject | undefined)?.[key];
  return node;
}

const pathAt = (path: string, position: number) => path.replace('.N.', `.${position}.`);

export function placesOf({ inputs, cards }: Cards, kind: CardKind): readonly CardPlace[] {
  const copyOf = (entryId: string | null) =>
    cards.find((copy) => copy.kind === kind && copy.entryId === entryId) ?? null;
  if (kindsOfCards[kind].list === null) return [{ entryId: null, position: 0, name: '', copy: copyOf(null) }];
  return entriesOf(inputs, kind).map(({ id, name }, position) => ({
    entryId: String(id),
    position,
    name: typeof name === 'string' ? name : '',
    copy: copyOf(String(id)),
  }));
}

/** Without those of entries that were taken out of their list since. */
export function copiesInUse(project: Cards): readonly CardCopy[] {
  return project.cards.filter((copy) => placesOf(project, copy.kind).some((place) => place.copy === copy));
}

/** Where the entries come from that are still as their card gave them. */
export function originsOf(project: Cards): Origins {
  const origins = new Map<string, ValueOrigin>();
  for (const kind of new Set(project.cards.map((copy) => copy.kind)))
    for (const { position, copy } of placesOf(project, kind))
      for (const [path, given] of Object.entries(copy?.values ?? {})) {
        const at = pathAt(path, position);
        if (given !== undefined && valueAt(project.inputs, at) === given.value) origins.set(at, given.origin);
      }
  return origins;
}

/** What a new card has when it is made from what stands in a project. */
export function valuesFrom(project: Cards, kind: CardKind, { position, copy }: CardPlace): CardValues {
  const { fills, measured } = kindsOfCards[kind];
  const values: Record<string, CardValues[string]> = {};
  for (const path of fills) {
    const value = valueAt(project.inputs, pathAt(path, position));
    if ((typeof value !== 'number' && typeof value !== 'string') || value === '' || value === notSaid)
      continue;
    const taken = copy?.values[path];
    values[path] =
      taken?.value === value
        ? taken
        : { value, origin: originOfEntry(value === rowAt(path).start, measured.includes(path)) };
  }
  return values;
}

/**
 * The project filled from a card: what the card does not tell goes back to what a new project has, since what stood
 * there was of another roll, stone or oven. `entryId` null adds an entry where the kind fills a list.
 */
export function withCardPicked(
  project: Cards,
  card: ShelfCard,
  entryId: string | null,
  takenAt: string,
): Outcome<Cards> {
  const { kind, name } = card;
  const { list, fills } = kindsOfCards[kind];
  const places = placesOf(project, kind);
  const given = places.findIndex((place) => place.entryId === entryId);
  if (entryId !== null && given < 0) return refused('What this card would fill is no longer in the project.');
  const position = given < 0 ? places.length : given;
  const filledId = list === null ? null : (entryId ?? freeId(places));
  const values = valuesToTake(card);
  const edited = editInputs(project.inputs, (draft) => {
    if (list !== null) {
      const entries = valueAt(draft, list) as Record<string, unknown>[];
      if (given < 0) entries.push({ ...newEntry(list), id: filledId });
      const entry = entries[position];
      if (entry !== undefined && 'name' in entry) entry['name'] = name;
    }
    for (const path of fills) {
      const keys = pathAt(path, position).split('.');
      const field = keys.pop() ?? '';
      const holder = valueAt(draft, keys.join('.')) as Record<string, unknown>;
      holder[field] = values[path]?.value ?? rowAt(path).start;
    }
  });
  if (!edited.done) return edited;
  const copy: CardCopy = { cardId: card.id, kind, name, takenAt, entryId: filledId, values };
  const kept = copiesInUse(project).filter((one) => !(one.kind === kind && one.entryId === filledId));
  return { done: true, inputs: edited.inputs, cards: [...kept, copy] };
}

function newEntry(list: NonNullable<KindOfCard['list']>): JsonObject {
  const [step = '', key = ''] = list.split('.');
  const table = (inputTables as Readonly<Record<string, InputTable>>)[step]?.[key]?.within?.table;
  return startOf(table ?? {});
}

function freeId(places: readonly CardPlace[]): string {
  let number = places.length + 1;
  while (places.some(({ entryId }) => entryId === `card-${number}`)) number += 1;
  return `card-${number}`;
}

/** What a card is called that is made from a place in a project. */
export function nameForCard({ copy, name }: CardPlace, otherwise: string): string {
  return trimmedName(copy?.name ?? name).slice(0, longestName) || otherwise;
}
