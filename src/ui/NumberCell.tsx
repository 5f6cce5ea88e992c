import { useId } from 'react';
import type { NumberLimits } from './readEntry';
import { useNumberEntry } from './useNumberEntry';

export interface NumberCellProps {
  /** For screen readers; the column heading says it to the eye. */
  readonly label: string;
  readonly limits: NumberLimits;
  readonly value: number | null;
  readonly mayBeEmpty?: boolean;
  readonly disabled?: boolean;
  readonly onChange: (value: number | null) => void;
}

/** A number entry without a line of its own, for tables and lists. */
export function NumberCell({
  label,
  limits,
  value,
  mayBeEmpty = false,
  disabled,
  onChange,
}: NumberCellProps) {
  const errorId = useId();
  const { error, inputProps } = useNumberEntry({ limits, value, mayBeEmpty, onChange });
  return (
    <span className="number-cell">
      <span className={`field ${error ? 'field-wrong' : ''} ${disabled ? 'field-off' : ''}`}>
        <input
          {...inputProps}
          aria-label={label}
          disabled={disabled}
          aria-describedby={error ? errorId : undefined}
        />
        {limits.unit ? <span className="unit">{limits.unit}</span> : null}
      </span>
      {error ? (
        <span id={errorId} className="field-error" role="alert">
          {error}
        </span>
      ) : null}
    </span>
  );
}
