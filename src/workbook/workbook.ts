/** Puts the workbook together behind the one surface that pages use. */
import { createBench } from './bench';
import { createCore } from './core';
import { createEditing } from './editing';
import { createFirstStart } from './firstStart';
import { createOpening } from './opening';
import { createProjectFiles } from './projectFiles';
import { createProjectList } from './projectList';
import { createShelfActions } from './shelfActions';
import { measureUsage } from './usage';
import type { Workbook, WorkbookPorts } from './workbookApi';

/** Reads the list at once; call `start` for the first start, `dispose` at the end. */
export function createWorkbook(ports: WorkbookPorts): Workbook {
  const core = createCore(ports);
  const { store, history, meshes, now, takeChange } = core;
  const bench = createBench(core);
  const opening = createOpening(core, bench);
  const { setNames, ...editing } = createEditing({ store, history, meshes, now, onChanged: takeChange });

  core.records.dropLeftovers();
  core.meshes.suspectAll();
  core.refreshList();
  core.shelf.start();
  core.flush();
  const putAway = (): void => {
    core.flush();
    bench.keepClock();
  };
  const stopListening = [ports.onHidden(putAway), ports.onOtherTabWrote(opening.onOtherTabWrote)];

  return {
    store,
    ...createFirstStart(core),
    ...createProjectList(core, opening, setNames),
    openProject: opening.openProject,
    closeProject: opening.closeProject,
    ...editing,
    ...createProjectFiles(core),
    ...bench.actions,
    shelf: createShelfActions({ shelf: core.shelf, store, newId: ports.newId, now }),
    dismissNotes: () => store.setState({ notes: [] }),
    usage: () => measureUsage(core.storage),
    flush: core.flush,
    dispose() {
      opening.leave();
      core.flush();
      core.locks.releaseIdle(() => false);
      for (const stop of stopListening) stop();
    },
  };
}
