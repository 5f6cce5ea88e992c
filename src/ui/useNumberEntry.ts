import { useEffect, useRef, useState, type ChangeEvent, type KeyboardEvent } from 'react';
import { entryText, readEntry, type NumberLimits } from './readEntry';

/** A pause in typing after which the entry counts, so that one number is one step of undo. */
const typingPauseMs = 700;

export interface NumberEntryChoices {
  readonly limits: NumberLimits;
  /** In `limits.unit`; null is an empty field. */
  readonly value: number | null;
  readonly mayBeEmpty: boolean;
  readonly onChange: (value: number | null) => void;
}

/**
 * The typing side of a number: text is read strictly, a wrong entry gives `error` and is not passed on, a good one
 * is passed on after a pause, on Enter or when the field is left.
 */
export function useNumberEntry({ limits, value, mayBeEmpty, onChange }: NumberEntryChoices) {
  const [text, setText] = useState(entryText(value, limits.decimals));
  const [error, setError] = useState<string | null>(null);
  const pause = useRef<ReturnType<typeof setTimeout>>(undefined);

  // A value from outside (undo, another field, the file) replaces what stands here.
  useEffect(() => {
    clearTimeout(pause.current);
    setText(entryText(value, limits.decimals));
    setError(null);
  }, [value, limits.decimals]);
  useEffect(() => () => clearTimeout(pause.current), []);

  const settle = (typed: string) => {
    clearTimeout(pause.current);
    const read = readEntry(typed, limits, mayBeEmpty);
    setError(read.ok ? null : read.message);
    if (read.ok && read.value !== value) onChange(read.value);
  };
  // The pause must settle against the newest value, not the one of the render in which it began.
  const settleNow = useRef(settle);
  settleNow.current = settle;

  return {
    error,
    inputProps: {
      className: 'number',
      type: 'text',
      inputMode: 'decimal',
      autoComplete: 'off',
      spellCheck: false,
      value: text,
      'aria-invalid': error !== null,
      onChange: (event: ChangeEvent<HTMLInputElement>) => {
        const typed = event.target.value;
        setText(typed);
        clearTimeout(pause.current);
        pause.current = setTimeout(() => settleNow.current(typed), typingPauseMs);
      },
      onBlur: () => settle(text),
      onKeyDown: (event: KeyboardEvent) => {
        if (event.key === 'Enter') settle(text);
      },
    },
  } as const;
}
