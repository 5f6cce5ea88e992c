import { useEffect, useId, useRef, type ReactNode } from 'react';

export interface DialogProps {
  readonly title: string;
  readonly children: ReactNode;
  /** Buttons at the foot. */
  readonly actions: ReactNode;
  /** Escape or any other way out without a choice. */
  readonly onClose: () => void;
}

/** A modal question; the browser's own dialog holds the focus and listens for Escape. Render it only while it is open. */
export function Dialog({ title, children, actions, onClose }: DialogProps) {
  const element = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const dialog = element.current;
    if (dialog && !dialog.open) dialog.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={element}
      className="dialog"
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <h2 id={titleId}>{title}</h2>
      <div className="dialog-body">{children}</div>
      <div className="button-row">{actions}</div>
    </dialog>
  );
}
