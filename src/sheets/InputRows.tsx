import { Fragment, type ReactNode } from 'react';
import type { InputsOf, InputTable } from '../steps/kit/inputTable';
import { ChoiceField } from '../ui/ChoiceField';
import { Disclosure } from '../ui/Disclosure';
import { NumberField } from '../ui/NumberField';
import { TextField } from '../ui/TextField';

export interface InputRowsProps<Table extends InputTable> {
  readonly table: Table;
  readonly values: InputsOf<Table>;
  /** The fold whose rows are shown; left out, those of the first view. */
  readonly fold?: string;
  /** Of these rows only, where a form shows them in several places. */
  readonly fields?: readonly (keyof Table)[];
  /** Controls of their own; null leaves the row out, e.g. where another answer makes it idle. */
  readonly own?: Partial<Readonly<Record<keyof Table, ReactNode>>>;
  /** Said in a field that may be empty and is, e.g. "not measured". */
  readonly emptyWord?: string;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<InputsOf<Table>>) => void;
}

/** The fields of a form, straight from the table of inputs. Lists and groups are shown by controls of their own. */
export function InputRows<Table extends InputTable>(props: InputRowsProps<Table>) {
  const { table, fold, fields, own = {}, emptyWord = '', disabled } = props;
  const values: Readonly<Record<string, unknown>> = props.values;
  const change = (name: string, value: unknown) =>
    props.onChange({ [name]: value } as Partial<InputsOf<Table>>);
  const shown = Object.entries(table).filter(
    ([name, row]) => row.fold === fold && (fields === undefined || fields.includes(name)),
  );
  return shown.map(([name, row]) => {
    if (Object.hasOwn(own, name)) return <Fragment key={name}>{own[name as keyof typeof own]}</Fragment>;
    if (row.kind === 'number') {
      const mayBeEmpty = row.start === null;
      return (
        <NumberField
          key={name}
          spec={row}
          value={values[name] as number | null}
          {...(mayBeEmpty ? { emptyWord } : {})}
          disabled={disabled}
          onChange={(value) => {
            if (value !== null || mayBeEmpty) change(name, value);
          }}
        />
      );
    }
    const words = row.kind === 'choice' ? row : row.kind === 'plain' ? row.shown : undefined;
    if (words === undefined) return null;
    const { label, meaning, choices } = words;
    const field = { label, disabled, onChange: (value: string) => change(name, value) };
    const value = values[name] as string;
    return choices === undefined ? (
      <TextField key={name} value={value} check={wrongText(row)} {...field} />
    ) : (
      <ChoiceField key={name} meaning={meaning} choices={choices} value={value} {...field} />
    );
  });
}

/** What is wrong with a text, for the field. */
const wrongText = (row: InputTable[string]) => (text: string) =>
  row.schema.safeParse(text).success ? null : 'This text is too long here.';

export interface InputFoldProps<Table extends InputTable> extends InputRowsProps<Table> {
  readonly fold: string;
  /** What stands inside, in a few words. */
  readonly remark: string;
  /** Controls after the rows. */
  readonly children?: ReactNode;
}

/** The rows of one fold, folded away under its name. */
export function InputFold<Table extends InputTable>({ remark, children, ...rows }: InputFoldProps<Table>) {
  return (
    <Disclosure title={rows.fold} remark={remark}>
      <InputRows {...rows} />
      {children}
    </Disclosure>
  );
}
