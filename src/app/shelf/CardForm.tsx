import { InputRows } from '../../sheets/InputRows';
import type { InputTable } from '../../steps/kit/inputTable';
import { valueOrigins, type ValueOrigin } from '../../steps/shared/origins';
import { TextField } from '../../ui/TextField';
import { longestName } from '../../workbook';
import type { CardValues, ShelfCard } from '../../workbook/shelfCards';
import { cardTableOf, kindsOfCards } from '../../workbook/shelfKinds';
import { kindWords, originWords } from './shelfWords';

export interface CardFormProps {
  readonly card: ShelfCard;
  readonly onChange: (recipe: (card: ShelfCard) => ShelfCard) => void;
}

/** The card's fields, each with where its value is from; a field left empty is not on the card. */
export function CardForm({ card, onChange }: CardFormProps) {
  const { fills, measured } = kindsOfCards[card.kind];
  const table = cardTableOf(card.kind);
  const values = Object.fromEntries(
    fills.map((path) => [path, card.values[path]?.value ?? table[path]?.start ?? null]),
  );
  const setValue = (path: string, value: unknown) =>
    onChange((former) => ({
      ...former,
      values: withValue(former.values, path, value, measured.includes(path)),
    }));
  const setOrigin = (path: string, origin: ValueOrigin) =>
    onChange((former) => {
      const given = former.values[path];
      return given === undefined
        ? former
        : { ...former, values: { ...former.values, [path]: { ...given, origin } } };
    });
  return (
    <div className="card-form">
      <TextField
        label={kindWords[card.kind].name}
        value={card.name}
        check={(text) =>
          text.trim() === '' || text.length > longestName ? `1 to ${longestName} characters.` : null
        }
        onChange={(name) => onChange((former) => ({ ...former, name: name.trim() }))}
      />
      <TextField
        label="Note"
        value={card.note}
        check={(text) => (text.length > 2000 ? 'At most 2000 characters.' : null)}
        onChange={(note) => onChange((former) => ({ ...former, note }))}
      />
      {fills.map((path) => (
        <div key={path} className="card-value">
          <InputRows<InputTable>
            table={table}
            values={values}
            fields={[path]}
            emptyWord="none"
            disabled={false}
            onChange={(change) => setValue(path, change[path])}
          />
          <OriginSelect
            what={labelOf(table, path)}
            origin={card.values[path]?.origin ?? null}
            onChange={(origin) => setOrigin(path, origin)}
          />
        </div>
      ))}
    </div>
  );
}

function labelOf(table: InputTable, path: string): string {
  const row = table[path];
  return row === undefined ? path : row.kind === 'plain' ? (row.shown?.label ?? path) : row.label;
}

/** A value that is entered anew is taken for measured where only the maker can know it, else for the supplier's. */
function withValue(values: CardValues, path: string, value: unknown, isOwn: boolean): CardValues {
  const { [path]: former, ...others } = values;
  if ((typeof value !== 'number' && typeof value !== 'string') || value === '') return others;
  return { ...others, [path]: { value, origin: former?.origin ?? (isOwn ? 'measured' : 'supplier') } };
}

interface OriginSelectProps {
  readonly what: string;
  /** null: the card has no value there. */
  readonly origin: ValueOrigin | null;
  readonly onChange: (origin: ValueOrigin) => void;
}

function OriginSelect({ what, origin, onChange }: OriginSelectProps) {
  if (origin === null) return <span className="card-origin" />;
  return (
    <select
      className="select card-origin"
      aria-label={`Where it is from: ${what}`}
      value={origin}
      onChange={(event) => onChange(event.target.value as ValueOrigin)}
    >
      {valueOrigins.toReversed().map((one) => (
        <option key={one} value={one}>
          {originWords[one]}
        </option>
      ))}
    </select>
  );
}
