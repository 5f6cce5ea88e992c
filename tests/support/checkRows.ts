/**
 * Rows of somebody else's numbers, and the one rule by which an answer passes. A published row holds its numbers as the
 * source prints them, digits and all; every other row holds plain numbers.
 */
import { expect } from 'vitest';

export type RowResult = number | readonly number[] | readonly (readonly number[])[];
type Printed = string | readonly string[];

export interface CheckRow {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected?: Readonly<Record<string, RowResult>>;
  /** In place of `expected`: e.g. "181.8" or "1.739e9". */
  readonly printed?: Readonly<Record<string, Printed>>;
  /** An entry may be off by the largest of these; `rel` is of the largest entry, `lastDigits` of its last printed place. */
  readonly tolerance: { readonly rel?: number; readonly abs?: number; readonly lastDigits?: number };
  readonly source: string;
  /** Where it can be read, or the work and the place in it. */
  readonly address?: string;
  readonly work?: string;
  readonly status: string;
}

export interface RowEntry {
  readonly value: number;
  /** How far an answer may be off. */
  readonly allowed: number;
  /** One unit of the last printed place; null when it was not printed by anybody. */
  readonly lastPlace: number | null;
}

/** 0.1 for "181.8", 1e6 for "1.739e9". */
export function lastPlaceOf(printed: string): number {
  const parts = /^-?\d+(?:\.(\d+))?(?:e(-?\d+))?$/u.exec(printed);
  if (parts === null) throw new Error(`"${printed}" is no printed number`);
  return 10 ** (Number(parts[2] ?? 0) - (parts[1]?.length ?? 0));
}

const flat = (result: RowResult): readonly number[] =>
  typeof result === 'number' ? [result] : result.flatMap((entry) => entry);

/** Entries of each result that a row asks for, by key. */
export function entriesOf(row: CheckRow): ReadonlyMap<string, readonly RowEntry[]> {
  const { rel = 0, abs = 0, lastDigits = 0 } = row.tolerance;
  const entries = (values: readonly number[], places: readonly (number | null)[]) => {
    const scale = Math.max(...values.map(Math.abs));
    return values.map((value, i) => {
      const lastPlace = places[i]!;
      return { value, lastPlace, allowed: Math.max(abs, rel * scale, lastDigits * (lastPlace ?? 0)) };
    });
  };
  const plain = Object.entries(row.expected ?? {}).map(([key, result]) => {
    const values = flat(result);
    return [
      key,
      entries(
        values,
        values.map(() => null),
      ),
    ] as const;
  });
  const printed = Object.entries(row.printed ?? {}).map(([key, text]) => {
    const texts = typeof text === 'string' ? [text] : text;
    return [key, entries(texts.map(Number), texts.map(lastPlaceOf))] as const;
  });
  return new Map([...plain, ...printed]);
}

/** The answer to a row, by the row's own keys; answers that the row does not ask for are left alone. */
export function expectRow(row: CheckRow, answer: Readonly<Record<string, RowResult>> | undefined): void {
  const wanted = entriesOf(row);
  expect(wanted.size, 'results that the row asks for').toBeGreaterThan(0);
  for (const [key, entries] of wanted) {
    const result = answer?.[key];
    expect(result, `no answer for ${key}`).toBeDefined();
    const got = flat(result!);
    expect(got.length, `${key}: number of entries`).toBe(entries.length);
    entries.forEach(({ value, allowed }, i) => {
      const off = Math.abs(got[i]! - value);
      // A float's own rounding on top, for answers that lie just at the edge of the printed digits.
      expect(off, `${key}[${i}]: got ${got[i]}, expected ${value}; ${row.source}`).toBeLessThanOrEqual(
        allowed + 1e-12 * Math.abs(value),
      );
    });
  }
}

/** A number of the row's inputs; a row without it fails its test. */
export function inputOf({ id, inputs }: CheckRow, key: string): number {
  const value = inputs[key];
  if (typeof value !== 'number') throw new Error(`row ${id} has no ${key}`);
  return value;
}
