import { BlankLine } from './CardSection';
import type { Action, FactTable, LineRecord, PhasePage } from './model';
import { noteId, signId } from './printModel';
import { RecordEntry } from './RecordEntry';

export type OnRecord = (lineId: string, change: Partial<LineRecord>) => void;

export interface PhaseSectionProps {
  readonly phase: PhasePage;
  readonly disabled: boolean;
  readonly onRecord: OnRecord;
}

/** One phase of the work: its caution, its facts, then one line for each action, signed once. */
export function PhaseSection({ phase, disabled, onRecord }: PhaseSectionProps) {
  const { id, title, caution, stops, table, actions, signedBy, note } = phase;
  return (
    <section className={`phase phase-${id}`} aria-label={title}>
      <div className="phase-start">
        <h2>{title}</h2>
        {stops.map((reason) => (
          <p key={reason} className="phase-stop">
            <strong>STOP</strong> {reason}
          </p>
        ))}
        <p className="phase-caution">
          <strong>CAUTION</strong> {caution}
        </p>
      </div>
      {table === null ? null : <PhaseTable table={table} />}
      <ol className="actions">
        {actions.map((action) => (
          <ActionLine key={action.id} action={action} disabled={disabled} onRecord={onRecord} />
        ))}
      </ol>
      <div className="phase-sign">
        <label>
          <span>Note</span>
          <RecordEntry
            label={`Note on ${title}`}
            value={note}
            width="note"
            disabled={disabled}
            onChange={(measured) => onRecord(noteId(id), { measured })}
          />
        </label>
        <label>
          <span>Done by</span>
          <RecordEntry
            label={`${title} done by`}
            value={signedBy}
            width="short"
            disabled={disabled}
            onChange={(initials) => onRecord(signId(id), { initials })}
          />
        </label>
      </div>
    </section>
  );
}

function PhaseTable({ table: { caption, columns, rows } }: { readonly table: FactTable }) {
  return (
    <div className="phase-table">
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, row) => (
            <tr key={row}>
              {cells.map((cell, at) => (
                <td key={columns[at]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface ActionLineProps {
  readonly action: Action;
  readonly disabled: boolean;
  readonly onRecord: OnRecord;
}

function ActionLine({ action, disabled, onRecord }: ActionLineProps) {
  const { id, text, blanks, done } = action;
  const onCard = blanks.filter((blank) => blank.isOnCard);
  return (
    <li className="action">
      <label className="action-line">
        <input
          type="checkbox"
          checked={done}
          disabled={disabled}
          onChange={(event) => onRecord(id, { done: event.target.checked })}
        />
        <span>
          {text}
          {onCard.length === 0 ? null : ` → ${onCard.map(({ number }) => number).join(', ')} on the card`}
        </span>
      </label>
      {blanks
        .filter((blank) => !blank.isOnCard)
        .map((blank) => (
          <BlankLine key={blank.id} blank={blank} />
        ))}
    </li>
  );
}
