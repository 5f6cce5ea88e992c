import { useState, type DragEvent, type ReactNode } from 'react';

export interface DropAreaProps {
  readonly disabled: boolean;
  readonly onFile: (file: File) => void;
  readonly children: ReactNode;
}

/** Takes one dropped file anywhere on what it holds; the keyboard way is the button inside. */
export function DropArea({ disabled, onFile, children }: DropAreaProps) {
  const [over, setOver] = useState(false);
  const allow = (event: DragEvent) => {
    event.preventDefault();
    setOver(!disabled);
  };
  return (
    <div
      className={`drop-area ${over ? 'drop-area-over' : ''}`}
      onDragEnter={allow}
      onDragOver={allow}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        const file = event.dataTransfer.files[0];
        if (file && !disabled) onFile(file);
      }}
    >
      {children}
    </div>
  );
}
