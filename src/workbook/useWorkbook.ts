/** React bindings: the workbook comes by context, pages select what they show. */
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { Project } from './project';
import type { WorkbookState } from './state';
import type { Workbook } from './workbookApi';

export const WorkbookContext = createContext<Workbook | null>(null);

/** The actions. */
export function useWorkbook(): Workbook {
  const workbook = useContext(WorkbookContext);
  if (workbook === null) throw new Error('useWorkbook needs a WorkbookContext provider above it');
  return workbook;
}

/** One selected value of the state; the selector must return the same reference while nothing changed. */
export function useWorkbookState<Value>(select: (state: WorkbookState) => Value): Value {
  return useStore(useWorkbook().store, select);
}

const projectOf = (state: WorkbookState): Project | null => state.project;

/** The open project, or null. */
export function useProject(): Project | null {
  return useWorkbookState(projectOf);
}

/** Whether the undo and redo buttons have something to do; both are off while another tab edits. */
export function useUndoState(): { canUndo: boolean; canRedo: boolean } {
  const { temporal } = useWorkbook().store;
  const past = useStore(temporal, (state) => state.pastStates.length > 0);
  const future = useStore(temporal, (state) => state.futureStates.length > 0);
  const editable = useWorkbookState((state) => state.editor === 'here');
  return { canUndo: editable && past, canRedo: editable && future };
}
