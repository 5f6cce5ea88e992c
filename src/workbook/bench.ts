/** The oven run and the timers of the open project: written by its one editor, followed by every other tab. */
import { createBenchStore, type BenchKind } from './benchStore';
import { timersKind } from './benchTimers';
import type { WorkbookCore } from './core';
import { editable } from './editing';
import type { Outcome } from './outcome';
import { ovenRunKind } from './ovenRun';
import type { WorkbookState } from './state';
import type { Workbook } from './workbookApi';

export type Bench = ReturnType<typeof createBench>;

export function createBench({ store, storage, moveAside, addNote }: WorkbookCore) {
  const saved = createBenchStore({ storage, moveAside, onTrouble: addNote });

  function put<Value>(kind: BenchKind<Value>, value: Value, shown: Partial<WorkbookState>): Outcome {
    const open = editable(store);
    if (!open.done) return open;
    store.setState(shown);
    return saved.write(kind, open.project.id, value);
  }

  const actions: Pick<Workbook, 'setTimers' | 'setOvenRun'> = {
    setTimers: (timers) => put(timersKind, timers, { timers }),
    setOvenRun: (ovenRun) => put(ovenRunKind, ovenRun, { ovenRun }),
  };

  return {
    actions,

    /** Shows what is saved for a project; null when none is open. */
    show(projectId: string | null): void {
      store.setState(
        projectId === null
          ? { timers: timersKind.none, ovenRun: ovenRunKind.none }
          : { timers: saved.read(timersKind, projectId), ovenRun: saved.read(ovenRunKind, projectId) },
      );
    },

    /** Whether a storage key is that of an oven run or of timers of a project. */
    holds: (key: string, projectId: string): boolean =>
      key === timersKind.keyOf(projectId) || key === ovenRunKind.keyOf(projectId),
  };
}
