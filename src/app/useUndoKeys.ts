import { useEffect } from 'react';
import type { Workbook } from '../workbook';

/** Ctrl or Cmd with Z undoes, with Shift or Y redoes; text being typed keeps its own undo. */
export function useUndoKeys(workbook: Workbook): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const target = event.target as HTMLElement;
      if (target instanceof HTMLInputElement && target.type === 'text') return;
      const key = event.key.toLowerCase();
      if (key === 'y' || (key === 'z' && event.shiftKey)) workbook.redo();
      else if (key === 'z') workbook.undo();
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [workbook]);
}
