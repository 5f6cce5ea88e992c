import { useKeyedState } from '../ui/useKeyedState';

export interface RecordEntryProps {
  /** What is entered, for screen readers; the column heading says it to the eye. */
  readonly label: string;
  readonly value: string;
  readonly width: 'short' | 'note';
  readonly disabled: boolean;
  readonly onChange: (value: string) => void;
}

/** A free text on a line of the checklist, kept when the field is left; on paper it is the room to write in. */
export function RecordEntry({ label, value, width, disabled, onChange }: RecordEntryProps) {
  const [text, setText] = useKeyedState(value, () => value);
  return (
    <input
      className={`record-entry record-entry-${width}`}
      type="text"
      autoComplete="off"
      aria-label={label}
      value={text}
      disabled={disabled}
      onChange={(event) => setText(event.target.value)}
      onBlur={() => {
        const kept = text.trim();
        setText(kept);
        if (kept !== value) onChange(kept);
      }}
    />
  );
}
