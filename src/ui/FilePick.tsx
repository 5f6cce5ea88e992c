import { useRef, type ReactNode } from 'react';
import { Button, type ButtonProps } from './Button';

export interface FilePickProps {
  readonly accept: string;
  readonly kind?: ButtonProps['kind'];
  readonly disabled?: boolean;
  /** Name of the hidden file input, for assistive technology and tests. */
  readonly inputLabel: string;
  readonly children: ReactNode;
  readonly onFile: (file: File) => void;
}

/** A button that opens the system's file picker; the same file can be picked twice. */
export function FilePick({
  accept,
  kind = 'plain',
  disabled = false,
  inputLabel,
  children,
  onFile,
}: FilePickProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button kind={kind} disabled={disabled} onClick={() => input.current?.click()}>
        {children}
      </Button>
      <input
        ref={input}
        type="file"
        hidden
        accept={accept}
        aria-label={inputLabel}
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file) onFile(file);
        }}
      />
    </>
  );
}
