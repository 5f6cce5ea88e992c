/**
 * An input is one row of its step's table. The schema, the type, the default, the lines of `--inputs`, the sentences of
 * `--set` and the form's field all come from that row.
 */
import * as z from 'zod/mini';

interface Described {
  readonly label: string;
  /** Unit shown after the field; '' when dimensionless. */
  readonly unit: string;
  /** One plain sentence: what it is and where the maker gets it. */
  readonly meaning: string;
  /** Heading of the fold that the form keeps it in; without one it is in the step's first view. */
  readonly fold?: string;
}

export interface NumberSpec extends Described {
  readonly kind: 'number';
  /** null: nothing is given in advance, and it may stay so. */
  readonly default: number | null;
  readonly min: number;
  readonly max: number;
  /** Decimals shown. */
  readonly decimals: number;
  /** Whole numbers only. */
  readonly whole?: boolean;
}

export interface ChoiceSpec<Value extends string = string> extends Described {
  readonly kind: 'choice';
  readonly default: Value;
  readonly choices: readonly { readonly value: Value; readonly label: string }[];
}

/** Lists, groups and vectors: described, edited by their own controls. */
export interface OtherSpec extends Described {
  readonly kind: 'other';
  /** The default, or words for it. */
  readonly default: unknown;
}

export type InputSpec = NumberSpec | ChoiceSpec | OtherSpec;
export type InputSpecs = Readonly<Record<string, InputSpec>>;

/** How a form shows a plain field: as one of a few possibilities, or as a short text. */
interface PlainWords {
  readonly label: string;
  readonly meaning: string;
  readonly choices?: readonly { readonly value: string; readonly label: string }[];
}

/** A field of a list's entry that its own editor shows: an id, a name, a flag. */
interface PlainSpec {
  readonly kind: 'plain';
  readonly fold?: string;
  readonly shown?: PlainWords | undefined;
}

interface Typed<Schema extends z.ZodMiniType> {
  readonly schema: Schema;
  /** What a new project, or a new entry, has. */
  readonly start: z.infer<Schema>;
}

export type NumberRow = NumberSpec & { readonly default: number } & Typed<z.ZodMiniNumber>;
export type OptionalRow = NumberSpec & Typed<z.ZodMiniNullable<z.ZodMiniNumber>>;
export type ChoiceRow<Value extends string> = ChoiceSpec<Value> & Typed<z.ZodMiniType<Value>>;
export type HolderRow<Schema extends z.ZodMiniType> = OtherSpec & Typed<Schema> & { readonly within: Within };
type Row = (InputSpec | PlainSpec) & Typed<z.ZodMiniType> & { readonly within?: Within };
export type InputTable = Readonly<Record<string, Row>>;

/** The table of a list's entries, or of a group's fields. */
interface Within {
  readonly of: 'entries' | 'fields';
  readonly table: InputTable;
}

type Schemas<Table extends InputTable> = { -readonly [Key in keyof Table]: Table[Key]['schema'] };
export type SchemaOf<Table extends InputTable> = z.ZodMiniObject<Schemas<Table>>;
export type InputsOf<Table extends InputTable> = z.infer<SchemaOf<Table>>;

/** Least, most, and the decimals shown. */
type Range = readonly [min: number, max: number, decimals: number];

interface NumberWords {
  readonly meaning: string;
  /** Whole numbers only. */
  readonly whole?: true;
}

function numberSpec<Default extends number | null>(
  label: string,
  unit: string,
  value: Default,
  [min, max, decimals]: Range,
  words: NumberWords,
) {
  return { kind: 'number', label, unit, default: value, min, max, decimals, ...words } as const;
}

function numberSchema({ min, max, whole }: Pick<NumberSpec, 'min' | 'max' | 'whole'>): z.ZodMiniNumber {
  const range = z.number().check(z.minimum(min), z.maximum(max));
  return whole === true ? range.check(z.multipleOf(1)) : range;
}

/** A number that always has a value. */
export function number(
  label: string,
  unit: string,
  value: number,
  range: Range,
  words: NumberWords,
): NumberRow {
  const spec = numberSpec(label, unit, value, range, words);
  return { ...spec, schema: numberSchema(spec), start: value };
}

/** A number that is null until the maker gives it; `usual` is what it is likely to be, for the list of inputs. */
export function optional<Usual extends number | null>(
  label: string,
  unit: string,
  usual: Usual,
  range: Range,
  words: NumberWords,
): OptionalRow & { readonly default: Usual } {
  const spec = numberSpec(label, unit, usual, range, words);
  return { ...spec, schema: z.nullable(numberSchema(spec)), start: null };
}

/** One of a few named possibilities, each with its words for the maker. */
export function choice<Value extends string>(
  label: string,
  start: NoInfer<Value>,
  { meaning, choices }: { readonly meaning: string; readonly choices: Readonly<Record<Value, string>> },
): ChoiceRow<Value> {
  const values = Object.keys(choices) as Value[];
  const named = values.map((value) => ({ value, label: choices[value] }));
  const schema: z.ZodMiniType<Value> = z.enum(values);
  return { kind: 'choice', label, unit: '', meaning, default: start, choices: named, schema, start };
}

/** A field of an entry that has no line of its own in the list of inputs. */
export function plain<Schema extends z.ZodMiniType>(
  schema: Schema,
  start: z.infer<Schema>,
  shown?: PlainWords,
) {
  return { kind: 'plain', schema, start, shown } as const;
}

/** An input with a control of its own. */
export function other<Schema extends z.ZodMiniType>(
  label: string,
  schema: Schema,
  start: z.infer<Schema>,
  meaning: string,
) {
  return { kind: 'other', label, unit: '', meaning, default: start, schema, start } as const;
}

interface HolderWords {
  readonly meaning: string;
  readonly unit?: string;
  /** Words for what a new project has, where the thing itself would be long. */
  readonly startWords?: string;
}

/** A list whose entries have fields of their own; the path of a field is `<step>.<list>.<position>.<field>`. */
export function list<Table extends InputTable>(
  label: string,
  table: Table,
  start: InputsOf<Table>[],
  { startWords, unit = '', meaning }: HolderWords,
): HolderRow<z.ZodMiniArray<SchemaOf<Table>>> {
  const within: Within = { of: 'entries', table };
  const schema = z.array(schemaOf(table));
  return {
    kind: 'other',
    label,
    unit,
    meaning,
    default: startWords ?? start,
    within,
    schema,
    start,
  } as const;
}

/** A group of fields; the path of a field is `<step>.<group>.<field>`. */
export function group<Table extends InputTable>(
  label: string,
  table: Table,
  { startWords, unit = '', meaning }: HolderWords,
): HolderRow<SchemaOf<Table>> {
  const within: Within = { of: 'fields', table };
  const [schema, start] = [schemaOf(table), startOf(table)];
  return {
    kind: 'other',
    label,
    unit,
    meaning,
    default: startWords ?? start,
    within,
    schema,
    start,
  } as const;
}

/** A field that a shorter entry (from a command line or a library) may leave out: it then has the row's start. */
export function mayBeLeftOut<Spec extends Typed<z.ZodMiniType>>(
  row: Spec,
): Omit<Spec, 'schema'> & { readonly schema: z.ZodMiniPrefault<Spec['schema']> } {
  return { ...row, schema: z.prefault(row.schema, row.start) };
}

/** Rows that the form keeps under one heading, folded away. */
export function folded<Table extends InputTable>(fold: string, table: Table): Table {
  return mapped(table, (row) => ({ ...row, fold })) as Table;
}

function mapped<Table extends InputTable, Value>(table: Table, value: (row: Row) => Value) {
  return Object.fromEntries(Object.entries(table).map(([key, row]) => [key, value(row)])) as Record<
    keyof Table,
    Value
  >;
}

export function schemaOf<Table extends InputTable>(table: Table): SchemaOf<Table> {
  return z.object(mapped(table, ({ schema }) => schema) as Schemas<Table>);
}

/** What a new project has. */
export function startOf<Table extends InputTable>(table: Table): InputsOf<Table> {
  return mapped(table, ({ start }) => start) as InputsOf<Table>;
}

/** The rows that are described, by field; below a prefix, by path. */
export function specsBelow(table: InputTable, prefix = ''): InputSpecs {
  return Object.fromEntries(
    Object.entries(table).flatMap(([key, row]) => (row.kind === 'plain' ? [] : [[`${prefix}${key}`, row]])),
  );
}
