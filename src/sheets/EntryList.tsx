import type { ReactNode } from 'react';
import type { InputsOf, InputTable } from '../steps/kit/inputTable';
import { Button } from '../ui/Button';
import { Disclosure } from '../ui/Disclosure';
import { TextField } from '../ui/TextField';
import { InputRows } from './InputRows';

interface Entry {
  readonly id: string;
  readonly name: string;
}

export interface EntryListProps<Table extends InputTable> {
  readonly table: Table;
  readonly entries: readonly (InputsOf<Table> & Entry)[];
  /** A new entry, under an id of its own. */
  readonly newEntry: (id: string) => InputsOf<Table> & Entry;
  /** What one of them is, e.g. "Add a coat". */
  readonly addWords: string;
  /** On the closed line of an entry. */
  readonly remarkOf: (entry: InputsOf<Table> & Entry) => string;
  readonly disabled: boolean;
  readonly onChange: (entries: (InputsOf<Table> & Entry)[]) => void;
  readonly children?: ReactNode;
}

/** A list of entries with names: each folded under its line, and one button that adds another. */
export function EntryList<Table extends InputTable>(props: EntryListProps<Table>) {
  const { table, entries, newEntry, addWords, remarkOf, disabled, onChange } = props;
  const change = (id: string, fields: object) =>
    onChange(entries.map((entry) => (entry.id === id ? { ...entry, ...fields } : entry)));
  const add = () => {
    const used = new Set(entries.map(({ id }) => id));
    let number = entries.length + 1;
    while (used.has(`entry-${number}`)) number++;
    onChange([...entries, newEntry(`entry-${number}`)]);
  };
  return (
    <>
      {entries.map((entry) => (
        <Disclosure key={entry.id} title={entry.name} remark={remarkOf(entry)}>
          <TextField
            label="Name"
            value={entry.name}
            disabled={disabled}
            check={(text) =>
              text.trim() === '' || text.length > 80 ? 'Give it a name of 80 letters at most.' : null
            }
            onChange={(name) => change(entry.id, { name })}
          />
          <InputRows
            table={table}
            values={entry}
            disabled={disabled}
            onChange={(fields) => change(entry.id, fields)}
          />
          <Button disabled={disabled} onClick={() => onChange(entries.filter(({ id }) => id !== entry.id))}>
            Remove {entry.name}
          </Button>
        </Disclosure>
      ))}
      <div className="button-row">
        <Button disabled={disabled} onClick={add}>
          {addWords}
        </Button>
      </div>
    </>
  );
}
