/** The cards of the shop's shelf, and the frozen copies of them that projects keep. */
import * as z from 'zod/mini';
import { valueOrigins, type ValueOrigin } from '../steps/shared/origins';
import { longestName, nameSchema } from './names';
import { cardKinds, kindsOfCards, rowAt, type CardKind } from './shelfKinds';

export interface CardValue {
  readonly value: number | string;
  readonly origin: ValueOrigin;
}

/** By the path of the input that it fills; what the card does not tell is left out. */
export type CardValues = Readonly<Record<string, CardValue | undefined>>;

/** A time that a roll lay outside of the freezer. */
export interface RollSession {
  readonly id: string;
  /** ISO 8601, UTC; when it was entered. */
  readonly at: string;
  readonly hoursH: number;
  /** What it was taken out for: enclosure and part, as they were named then. */
  readonly project: string;
}

export interface ShelfCard {
  readonly id: string;
  readonly kind: CardKind;
  readonly name: string;
  readonly note: string;
  /** ISO 8601, UTC. */
  readonly changedAt: string;
  readonly values: CardValues;
  /** Of a roll, over all projects; empty for the other kinds. */
  readonly log: readonly RollSession[];
}

/** What a project keeps of a card that it was given: it stays as it was when the card does not. */
export interface CardCopy {
  readonly cardId: string;
  readonly kind: CardKind;
  readonly name: string;
  /** ISO 8601, UTC. */
  readonly takenAt: string;
  /** The entry of its list that it fills; null where it fills inputs that a project has once. */
  readonly entryId: string | null;
  readonly values: CardValues;
}

const idSchema = z.string().check(z.regex(/^[A-Za-z0-9_-]{1,64}$/));
/** Rolls that are written down every day for years. */
const mostSessions = 5000;

const sessionSchema = z.object({
  id: idSchema,
  at: z.iso.datetime(),
  hoursH: z.number().check(z.minimum(0.01), z.maximum(10_000)),
  project: z.string().check(z.maxLength(2 * longestName + 4)),
});

function valueSchema(path: string) {
  const row = rowAt(path);
  const takes = (value: unknown) =>
    (typeof value === 'number' || typeof value === 'string') && row.schema.safeParse(value).success;
  return z.optional(z.object({ value: z.custom<number | string>(takes), origin: z.enum(valueOrigins) }));
}

/** Refuses a value that the kind has no input for, so that nothing is dropped without a word. */
const valuesOfKind = (kind: CardKind) =>
  z.strictObject(Object.fromEntries(kindsOfCards[kind].fills.map((path) => [path, valueSchema(path)])));

const cardOfKind = (kind: CardKind) =>
  z.object({
    id: idSchema,
    kind: z.literal(kind),
    name: nameSchema,
    note: z.string().check(z.maxLength(2000)),
    changedAt: z.iso.datetime(),
    values: valuesOfKind(kind),
    log: z.array(sessionSchema).check(z.maxLength(kind === 'roll' ? mostSessions : 0)),
  });

const copyOfKind = (kind: CardKind) =>
  z.object({
    cardId: idSchema,
    kind: z.literal(kind),
    name: nameSchema,
    takenAt: z.iso.datetime(),
    entryId: kindsOfCards[kind].list === null ? z.null() : z.string().check(z.minLength(1)),
    values: valuesOfKind(kind),
  });

/** By kind, so that what is wrong is named by its field. */
const byKind = <Schema extends ReturnType<typeof cardOfKind> | ReturnType<typeof copyOfKind>>(
  of: (kind: CardKind) => Schema,
) => {
  const [first, ...others] = cardKinds;
  return z.discriminatedUnion('kind', [of(first), ...others.map(of)]);
};

export const shelfCardSchema = byKind(cardOfKind);
export const shelfCardsSchema = z.array(shelfCardSchema).check(z.maxLength(1000));
export const cardCopiesSchema = z.array(byKind(copyOfKind)).check(z.maxLength(200));

const hoursOutPath = 'plies.materials.N.hoursOutH';
const outTimePath = 'plies.materials.N.allowedOutTimeH';

const numberAt = (values: CardValues, path: string): number | null => {
  const value = values[path]?.value;
  return typeof value === 'number' ? value : null;
};

/** Hours out of the freezer: those before the log began, and those of the log. */
export function hoursOutOf({ values, log }: Pick<ShelfCard, 'values' | 'log'>): number {
  return log.reduce((sum, { hoursH }) => sum + hoursH, numberAt(values, hoursOutPath) ?? 0);
}

/** What is left of the out-time that the supplier allows; null while nobody has read it. */
export function outTimeLeftH(card: Pick<ShelfCard, 'values' | 'log'>): number | null {
  const allowedH = numberAt(card.values, outTimePath);
  return allowedH === null ? null : allowedH - hoursOutOf(card);
}

/** What a project is given of a card: its values, a roll's hours with those of its log. */
export function valuesToTake(card: ShelfCard): CardValues {
  if (card.log.length === 0) return card.values;
  return { ...card.values, [hoursOutPath]: { value: hoursOutOf(card), origin: 'measured' } };
}

export function sameValues(one: CardValues, other: CardValues): boolean {
  const paths = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...paths].every(
    (path) => one[path]?.value === other[path]?.value && one[path]?.origin === other[path]?.origin,
  );
}

/** Whether a card has become another since the project took its copy. */
export function isChangedSince(copy: CardCopy, card: ShelfCard): boolean {
  return copy.name !== card.name || !sameValues(copy.values, valuesToTake(card));
}
