import { useId, useState, type ReactNode } from 'react';

export interface RowProps {
  readonly label: ReactNode;
  /** Id of the input that the label names; without it the label is plain text. */
  readonly inputId?: string;
  /** A quiet line under the label. */
  readonly note?: ReactNode;
  readonly value: ReactNode;
  /** What the question mark opens. */
  readonly help?: ReactNode;
  /** For screen readers: what the question mark is about. */
  readonly helpLabel: string;
  /** Shown under the line, e.g. what is wrong with the entry. */
  readonly below?: ReactNode;
}

/** One ruled line: what it is, its value, and a question mark that opens the meaning or the working. */
export function Row({ label, inputId, note, value, help, helpLabel, below }: RowProps) {
  const [open, setOpen] = useState(false);
  const helpId = useId();
  const noteLine = note ? <span className="row-note">{note}</span> : null;
  return (
    <div className="row">
      <div className="row-line">
        <div className="row-label">
          {inputId ? <label htmlFor={inputId}>{label}</label> : label}
          {noteLine}
        </div>
        <div className="row-value">{value}</div>
        {help ? (
          <button
            type="button"
            className="help"
            aria-expanded={open}
            aria-controls={helpId}
            aria-label={helpLabel}
            onClick={() => setOpen(!open)}
          >
            <span aria-hidden>?</span>
          </button>
        ) : null}
      </div>
      {below}
      {help ? (
        <div id={helpId} className="working" hidden={!open}>
          {help}
        </div>
      ) : null}
    </div>
  );
}
