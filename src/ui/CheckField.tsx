import type { ReactNode } from 'react';

export interface CheckFieldProps {
  readonly children: ReactNode;
  readonly checked: boolean;
  /** For screen readers, when the words beside the box don't say which thing they are about. */
  readonly label?: string;
  readonly disabled?: boolean;
  readonly onChange: (checked: boolean) => void;
}

/** A box to tick with its words beside it, all of glove size. */
export function CheckField({ children, checked, label, disabled, onChange }: CheckFieldProps) {
  return (
    <label className="check-field">
      <input
        type="checkbox"
        checked={checked}
        aria-label={label}
        disabled={disabled}
        onChange={(event) => onChange(event.target.checked)}
      />
      <span>{children}</span>
    </label>
  );
}
