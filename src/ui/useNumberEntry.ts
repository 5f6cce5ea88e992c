import { useEffect, useRef, type ChangeEvent, type KeyboardEvent } from 'react';
import { entryText, readEntry, type NumberLimits } from './readEntry';
import { useKeyedState } from './useKeyedState';

/** A pause in typing after which the entry counts, so that one number is one step of undo. */
const typingPauseMs = 700;

export interface NumberEntryChoices {
  readonly limits: NumberLimits;
  /** In `limits.unit`; null is an empty field. */
  readonly value: number | null;
  readonly mayBeEmpty: boolean;
  readonly onChange: (value: number | null) => void;
}

interface Entry {
  readonly text: string;
  readonly error: string | null;
  /** Typed, but not read yet. */
  readonly open: boolean;
}

/**
 * The typing side of a number: text is read strictly, a wrong entry gives `error` and is not passed on, a good one
 * is passed on after a pause, on Enter or when the field is left. A value from outside (undo, another field, the
 * file) replaces what stands here.
 */
export function useNumberEntry({ limits, value, mayBeEmpty, onChange }: NumberEntryChoices) {
  const { decimals } = limits;
  const [entry, setEntry] = useKeyedState<Entry>(value, () => ({
    text: entryText(value, decimals),
    error: null,
    open: false,
  }));
  const { text, error, open } = entry;

  const settle = (typed: string) => {
    const read = readEntry(typed, limits, mayBeEmpty);
    setEntry({
      text: read.ok ? entryText(read.value, decimals) : typed,
      error: read.ok ? null : read.message,
      open: false,
    });
    if (read.ok && read.value !== value) onChange(read.value);
  };
  // The pause settles against the newest value, not the one of the render in which it began.
  const settleNow = useRef(settle);
  useEffect(() => {
    settleNow.current = settle;
  });
  useEffect(() => {
    if (!open) return undefined;
    const pause = setTimeout(() => settleNow.current(text), typingPauseMs);
    return () => clearTimeout(pause);
  }, [open, text]);

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
      onChange: (event: ChangeEvent<HTMLInputElement>) =>
        setEntry({ text: event.target.value, error, open: true }),
      onBlur: () => settle(text),
      onKeyDown: (event: KeyboardEvent) => {
        if (event.key === 'Enter') settle(text);
      },
    },
  } as const;
}
