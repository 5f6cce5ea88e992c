import { useId, type ReactNode } from 'react';
import type { NumberLimits } from './readEntry';
import { Row } from './Row';
import { useNumberEntry } from './useNumberEntry';

export interface NumberFieldProps {
  readonly spec: NumberLimits & { readonly label: string; readonly meaning: string };
  /** In `spec.unit`; null shows an empty field. */
  readonly value: number | null;
  readonly note?: ReactNode;
  /** Empty is allowed and means null; said in the field as this word, e.g. "not measured". */
  readonly emptyWord?: string;
  readonly disabled?: boolean;
  /** Only ever called with a number inside the limits, or with null where empty is allowed. */
  readonly onChange: (value: number | null) => void;
}

/**
 * A number with its unit on a ruled line. A wrong entry shows why under the line and the last good value stays in
 * the project.
 */
export function NumberField({ spec, value, note, emptyWord, disabled, onChange }: NumberFieldProps) {
  const inputId = useId();
  const errorId = `${inputId}-error`;
  const { error, inputProps } = useNumberEntry({
    limits: spec,
    value,
    mayBeEmpty: emptyWord !== undefined,
    onChange,
  });
  return (
    <Row
      label={spec.label}
      inputId={inputId}
      note={note}
      helpLabel={`What "${spec.label}" means`}
      help={<p>{spec.meaning}</p>}
      value={
        <span className={`field ${error ? 'field-wrong' : ''} ${disabled ? 'field-off' : ''}`}>
          <input
            id={inputId}
            {...inputProps}
            placeholder={emptyWord}
            disabled={disabled}
            aria-describedby={error ? errorId : undefined}
          />
          {spec.unit ? <span className="unit">{spec.unit}</span> : null}
        </span>
      }
      below={
        error ? (
          <p id={errorId} className="field-error" role="alert">
            {error} The last good value stays in use.
          </p>
        ) : null
      }
    />
  );
}
