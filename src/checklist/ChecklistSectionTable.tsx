import { DataTable } from '../ui/DataTable';
import { VerdictMark } from '../ui/VerdictMark';
import type { ChecklistLine, ChecklistSection, LineRecord } from './model';
import { RecordEntry } from './RecordEntry';

export type OnRecord = (lineId: string, change: Partial<LineRecord>) => void;

export interface ChecklistSectionTableProps {
  /** Repeated over every page that the section runs on. */
  readonly sheetTitle: string;
  readonly number: number;
  readonly section: ChecklistSection;
  readonly disabled: boolean;
  readonly onRecord: OnRecord;
}

/** One section: what to know before it, then its lines to tick, measure and sign. */
export function ChecklistSectionTable(props: ChecklistSectionTableProps) {
  const { section, number, sheetTitle } = props;
  return (
    <section className="check-section" aria-label={section.title}>
      <h2>
        {number} · {section.title}
      </h2>
      {section.warnings.length + section.cautions.length > 0 ? (
        <ul className="check-before">
          {section.warnings.map((warning) => (
            <li key={warning.reason}>
              <VerdictMark word={warning.word} sizePx={20} decorative />
              <span>
                <strong>{warning.word}:</strong> {warning.reason} {warning.fix}
              </span>
            </li>
          ))}
          {section.cautions.map((caution) => (
            <li key={caution.id}>
              <span className="caution-sign" aria-hidden>
                !
              </span>
              <span>
                <strong>Take care:</strong> {caution.text}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {section.table ? (
        <DataTable
          caption={section.table.caption}
          columns={section.table.columns.map((header, at) => ({
            id: header,
            header,
            cell: (cells: readonly string[]) => cells[at] ?? '',
          }))}
          rows={section.table.rows}
          rowKey={(_cells, index) => String(index)}
        />
      ) : null}
      <table className="check-table">
        <colgroup>
          <col className="check-done" />
          <col />
          <col className="check-measured" />
          <col className="check-initials" />
        </colgroup>
        <thead>
          <tr className="paper-row">
            <td colSpan={4}>
              {sheetTitle} · {number} · {section.title}
            </td>
          </tr>
          <tr>
            <th scope="col">Done</th>
            <th scope="col">What</th>
            <th scope="col">Measured</th>
            <th scope="col">Initials</th>
          </tr>
        </thead>
        <tbody>
          {section.lines.map((line) => (
            <LineRow key={line.id} line={line} disabled={props.disabled} onRecord={props.onRecord} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface LineRowProps {
  readonly line: ChecklistLine;
  readonly disabled: boolean;
  readonly onRecord: OnRecord;
}

function LineRow({ line, disabled, onRecord }: LineRowProps) {
  const { id, text, measure, record } = line;
  return (
    <tr>
      <td>
        <label className="tick">
          <input
            type="checkbox"
            checked={record.done}
            disabled={disabled}
            aria-label={`Done: ${text}`}
            onChange={(event) => onRecord(id, { done: event.target.checked })}
          />
        </label>
      </td>
      <td>{text}</td>
      <td>
        {measure ? (
          <span className="measured-entry">
            <span className="narrow-label" aria-hidden>
              Measured
            </span>
            <RecordEntry
              label={`${measure.label} in ${measure.unit}: ${text}`}
              value={record.measured}
              width="wide"
              disabled={disabled}
              onChange={(measured) => onRecord(id, { measured })}
            />
            <span className="unit">{measure.unit}</span>
          </span>
        ) : null}
      </td>
      <td>
        <span className="narrow-label" aria-hidden>
          Initials
        </span>
        <RecordEntry
          label={`Initials: ${text}`}
          value={record.initials}
          width="short"
          disabled={disabled}
          onChange={(initials) => onRecord(id, { initials })}
        />
      </td>
    </tr>
  );
}
