import { useEffect, useId, useRef, useState, type ReactNode } from 'react';
import { Button } from './Button';

export interface MenuProps {
  readonly label: string;
  /** Buttons; any click in the panel closes it. */
  readonly children: ReactNode;
}

/** A button that opens a small panel of buttons; Escape or a click elsewhere closes it. */
export function Menu({ label, children }: MenuProps) {
  const [open, setOpen] = useState(false);
  const root = useRef<HTMLDivElement>(null);
  const panelId = useId();
  useEffect(() => {
    if (!open) return undefined;
    const closeOutside = (event: Event) => {
      if (!root.current?.contains(event.target as Node)) setOpen(false);
    };
    const closeByKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      setOpen(false);
      root.current?.querySelector('button')?.focus();
    };
    document.addEventListener('pointerdown', closeOutside);
    document.addEventListener('focusin', closeOutside);
    document.addEventListener('keydown', closeByKey);
    return () => {
      document.removeEventListener('pointerdown', closeOutside);
      document.removeEventListener('focusin', closeOutside);
      document.removeEventListener('keydown', closeByKey);
    };
  }, [open]);
  return (
    <div className="menu" ref={root}>
      <Button aria-expanded={open} aria-controls={panelId} onClick={() => setOpen(!open)}>
        {label} <span aria-hidden>{open ? '▴' : '▾'}</span>
      </Button>
      <div
        id={panelId}
        className="menu-panel"
        hidden={!open}
        onClickCapture={(event) => {
          if ((event.target as HTMLElement).closest('button')) setOpen(false);
        }}
      >
        {children}
      </div>
    </div>
  );
}
