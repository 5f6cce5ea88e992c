/** Number inputs of the mold step from one table of specs: the schema, the defaults and the paths cannot disagree. */
import * as z from 'zod/mini';
import type { InputSpecs, NumberSpec } from '../inputSpec';
import { numberIn } from '../part/inputs';

type Table<Key extends string> = Readonly<Record<Key, NumberSpec>>;

const keysOf = <Key extends string>(table: Table<Key>) => Object.keys(table) as Key[];

function mapped<Key extends string, Value>(
  table: Table<Key>,
  value: (spec: NumberSpec) => Value,
): Record<Key, Value> {
  return Object.fromEntries(keysOf(table).map((key) => [key, value(table[key])])) as Record<Key, Value>;
}

export function numberFields<Key extends string>(
  table: Table<Key>,
): Record<Key, ReturnType<typeof numberIn>> {
  return mapped(table, numberIn);
}

export function numberDefaults<Key extends string>(table: Table<Key>): Record<Key, number> {
  return mapped(table, ({ label, default: value }) => {
    if (value === null) throw new Error(`${label} has no default`);
    return value;
  });
}

/** Fields that are null until the maker gives them. */
export function optionalNumberFields<Key extends string>(table: Table<Key>) {
  return mapped(table, (spec) => z.nullable(numberIn(spec)));
}

export function notGiven<Key extends string>(table: Table<Key>): Record<Key, number | null> {
  return mapped(table, () => null);
}

/** The table by input paths. */
export function pathsOf(prefix: string, table: InputSpecs): InputSpecs {
  return Object.fromEntries(Object.entries(table).map(([key, spec]) => [`${prefix}.${key}`, spec]));
}
