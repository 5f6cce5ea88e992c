import { useId } from 'react';
import { useKeyedState } from './useKeyedState';

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly disabled?: boolean;
  /** Returns what is wrong with the text, or null; a wrong text is not passed on. */
  readonly check?: (text: string) => string | null;
  readonly onChange: (text: string) => void;
}

/** A short text, passed on when the field is left or Enter is pressed. */
export function TextField({ label, value, disabled = false, check, onChange }: TextFieldProps) {
  const [text, setText] = useKeyedState(value, () => value);
  const id = useId();
  const error = check?.(text) ?? null;
  const commit = () => {
    if (error === null && text !== value) onChange(text);
  };
  return (
    <div className="text-field">
      <label htmlFor={id}>{label}</label>
      <div className={`field ${error ? 'field-wrong' : ''} ${disabled ? 'field-off' : ''}`}>
        <input
          id={id}
          type="text"
          value={text}
          disabled={disabled}
          aria-invalid={error !== null}
          aria-describedby={error ? `${id}-error` : undefined}
          autoComplete="off"
          onChange={(event) => setText(event.target.value)}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
          }}
        />
      </div>
      {error ? (
        <p id={`${id}-error`} className="field-error">
          {error}
        </p>
      ) : null}
    </div>
  );
}
